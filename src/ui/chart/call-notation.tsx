import { type CSSProperties, useCallback, useRef } from 'react';
import type { TabStyle } from '../../core/harp/tab';
import { USUAL_DYNAMIC } from '../../core/phrase/dynamics';
import type { Phrase, PhraseNote } from '../../core/phrase/phrase';
import { noteText } from '../../core/phrase/print-phrase';
import { type RhythmSign, rhythmBars } from '../../core/phrase/rhythm-signs';
import { useSelected, useSession } from '../state/session-context';
import { useFrame } from '../state/use-frame';
import { flagsOf, NoteShape, RestShape, STEM } from './rhythm-sign';

/** Widths and heights of the drawing, in its own units. A letter of the holes is LETTER wide. */
const LETTER = 33;
const EDGE = 12;
const HEAD_Y = 117;
const HEIGHT = 126;
const NARROWEST = 40;
/** How much larger than their own units notes are drawn. */
const SCALE = 1.25;
const STEM_X = STEM.x * SCALE;
const STEM_TOP = HEAD_Y + STEM.top * SCALE;

interface Placed {
  readonly sign: RhythmSign;
  readonly text: string;
  /** Middle of its column. */
  readonly x: number;
  readonly mark: string;
}

const textOf = ({ note }: RhythmSign, style: TabStyle): string =>
  note === null ? '' : noteText(note, style);

/** What stands over a note: an accent, and its loudness where that changes. */
const markOf = ({ note }: RhythmSign, before: PhraseNote | null): string => {
  if (note === null) return '';
  const loud = note.dynamic ?? USUAL_DYNAMIC;
  const changed = loud !== (before?.dynamic ?? USUAL_DYNAMIC);
  return [...(changed ? [loud] : []), ...(note.accent ? ['>'] : [])].join(' ');
};

/** How wide a letter of the holes is, in widths of a figure. */
const widthOf = (letter: string): number => {
  if (/[/'○ ().]/.test(letter)) return 0.62;
  return /[~↑↓]/.test(letter) ? 1.15 : 1;
};

/** Signs from left to right: each has room for its hole, and longer notes have a little more. */
const place = (
  signs: readonly RhythmSign[],
  style: TabStyle,
  before: PhraseNote | null,
): { placed: readonly Placed[]; width: number } => {
  let x = EDGE;
  let note = before;
  const placed = signs.map((sign): Placed => {
    const text = textOf(sign, style);
    const letters = [...text].reduce((sum, letter) => sum + widthOf(letter), 0);
    const room = Math.max(NARROWEST, letters * LETTER + 16) + Math.log2(Math.max(1, sign.length / 120)) * 5;
    x += room;
    const mark = markOf(sign, note);
    note = sign.note ?? note;
    return { sign, text, x: x - room / 2, mark };
  });
  return { placed, width: x + EDGE };
};

interface Beam {
  readonly from: Placed;
  readonly to: Placed;
  readonly level: number;
}

/** Beams of a bar: one over each group, a second over what is shorter in it. */
const beamsOf = (placed: readonly Placed[]): readonly Beam[] =>
  placed.flatMap((note, i): readonly Beam[] => {
    const next = placed[i + 1];
    const { beam, value } = note.sign;
    if (beam === null || next === undefined || next.sign.beam !== beam) return [];
    const levels = Math.min(flagsOf(value), flagsOf(next.sign.value));
    return Array.from({ length: Math.max(1, levels) }, (_, level) => ({ from: note, to: next, level }));
  });

const Bar = ({ placed, width }: { readonly placed: readonly Placed[]; readonly width: number }) => (
  <svg
    className="call-bar"
    viewBox={`0 0 ${width} ${HEIGHT}`}
    style={{ '--width': width } as CSSProperties}
    aria-hidden="true"
    preserveAspectRatio="xMinYMax meet"
  >
    {placed.map(({ sign, text, x, mark }, i) => (
      <g key={sign.at} className="call-note" data-at={sign.at} data-until={sign.at + sign.length}>
        <text x={x} y={54}>
          {text}
        </text>
        {mark !== '' && (
          <text className="mark" x={x} y={6}>
            {mark}
          </text>
        )}
        <g transform={`translate(${x} ${HEAD_Y}) scale(${SCALE})`}>
          {sign.rest ? (
            <RestShape value={sign.value} />
          ) : (
            <NoteShape value={sign.value} beamed={sign.beam !== null} />
          )}
          {sign.dotted && <circle cx={13} cy={sign.rest ? -18 : -3} r={2.6} />}
          {sign.triplet && placed[i - 1]?.sign.triplet && placed[i + 1]?.sign.triplet && (
            <text className="three" y={STEM.top - 6}>
              3
            </text>
          )}
        </g>
      </g>
    ))}
    {beamsOf(placed).map(({ from, to, level }) => (
      <path
        key={`${from.sign.at}/${level}`}
        d={`M${from.x + STEM_X - 1.4} ${STEM_TOP + level * 11} H${to.x + STEM_X + 1.4} v7 H${from.x + STEM_X - 1.4} z`}
      />
    ))}
    {placed.map(({ sign, x }, i) => {
      const to = placed[i + 1]?.x ?? width;
      return sign.tied ? (
        <path
          key={sign.at}
          className="tie"
          d={`M${x + 5} ${HEAD_Y + 8} Q${(x + to) / 2} ${HEAD_Y + 17} ${to - 5} ${HEAD_Y + 8}`}
        />
      ) : null;
    })}
    <path className="bar-line" d={`M${width - 1} 70 V${HEIGHT}`} />
  </svg>
);

interface Props {
  readonly phrase: Phrase;
  /** Index of the section's bar it begins in, or null while it is not heard: its notes are lit as they sound. */
  readonly from: number | null;
}

/** A call as it is read: holes over note values, bar by bar. */
export const CallNotation = ({ phrase, from }: Props) => {
  const { live } = useSession();
  const style = useSelected((state) => state.settings.tabStyle);
  const bars = useSelected((state) => state.now.tune.chart.bars);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const box = useRef<HTMLDivElement>(null);
  const start = from === null ? null : (bars[from]?.at ?? 0);
  const draw = useCallback(() => {
    const playhead = live.playhead();
    const at = playhead === null || start === null ? -1 : playhead.ticks - start;
    for (const note of box.current?.querySelectorAll<SVGGElement>('.call-note') ?? []) {
      const { at: begins, until } = note.dataset;
      const on = at >= Number(begins) && at < Number(until) ? 'true' : 'false';
      if (note.dataset.on !== on) note.dataset.on = on;
    }
  }, [live, start]);
  useFrame(playing, draw);
  const drawn = rhythmBars(phrase).map((signs) => {
    const at = signs[0]?.at ?? 0;
    return place(signs, style, phrase.notes.findLast((note) => note.at < at) ?? null);
  });
  const total = drawn.reduce((sum, { width }) => sum + width, 0);
  return (
    <div className="call" aria-hidden="true" ref={box} style={{ '--total': total } as CSSProperties}>
      {drawn.map((bar, i) => (
        <Bar key={bar.placed[0]?.sign.at ?? i} {...bar} />
      ))}
    </div>
  );
};
