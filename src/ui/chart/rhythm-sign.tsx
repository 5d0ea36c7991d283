import type { NoteValue } from '../../core/phrase/rhythm-signs';

/**
 * Notes and rests as shapes, drawn by this project in units of a tenth of a staff space's width; the origin is the
 * middle of the note head, up is negative.
 */
export const STEM = { x: 6.2, top: -38 } as const;

const Flag = ({ at }: { readonly at: number }) => (
  <path d={`M${STEM.x} ${at} c1 7 10 9 9 22 c-1 -8 -5 -10 -9 -12 z`} />
);

const FLAGS: Readonly<Record<NoteValue, number>> = { whole: 0, half: 0, quarter: 0, eighth: 1, sixteenth: 2 };

/** How many beams or flags a value has. */
export const flagsOf = (value: NoteValue): number => FLAGS[value];

/** A note: head, stem, and flags unless beams take their place. */
export const NoteShape = ({ value, beamed }: { readonly value: NoteValue; readonly beamed: boolean }) => {
  const open = value === 'whole' || value === 'half';
  return (
    <>
      <ellipse
        className={open ? 'head open' : 'head'}
        rx={open ? 6 : 6.8}
        ry={open ? 4 : 4.8}
        transform="rotate(-22)"
      />
      {value !== 'whole' && <path className="stem" d={`M${STEM.x} -2 V${STEM.top}`} />}
      {!beamed &&
        Array.from({ length: flagsOf(value) }, (_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: flags are known by their place
          <Flag key={i} at={STEM.top + i * 9} />
        ))}
    </>
  );
};

const RESTS: Readonly<Record<NoteValue, string>> = {
  whole: 'M-8 -20 h16 v6 h-16 z',
  half: 'M-8 -20 h16 v6 h-16 z',
  quarter: 'M-3 -32 l7 9 c-5 4 -5 6 1 13 c-7 -2 -9 2 -3 9 c-10 -4 -10 -12 -2 -12 l-5 -7 c5 -4 6 -7 2 -12 z',
  eighth: 'M-6 -22 a4 4 0 1 1 4 4 c3 0 6 -2 7 -5 l2 0 l-6 22 h-3 l5 -17 c-2 2 -9 3 -9 -4 z',
  sixteenth:
    'M-6 -26 a4 4 0 1 1 4 4 c3 0 6 -2 7 -5 l2 0 l-8 27 h-3 l3 -11 c-2 2 -9 2 -8 -4 a4 4 0 0 1 4 -3 a4 4 0 0 1 4 4 c1 -1 2 -2 2 -3 l2 -7 c-2 2 -9 3 -9 -2 z',
};

/** A rest; a half rest sits on its line, a whole one hangs from it. */
export const RestShape = ({ value }: { readonly value: NoteValue }) => (
  <>
    {(value === 'whole' || value === 'half') && (
      <path className="stem" d={`M-12 ${value === 'whole' ? -20 : -14} h24`} />
    )}
    <path d={RESTS[value]} />
  </>
);
