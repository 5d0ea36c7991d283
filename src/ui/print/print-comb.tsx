import type { MarkedSound } from '../../core/fit/mark-sounds';
import type { Harp } from '../../core/harp/harp';
import { COMB, combSize, type SoundRows } from '../../core/song/print-plan';
import type { ChordTone, NoteName } from '../../core/theory/chord';
import { degreeText } from '../../core/theory/note-names';
import { acrossOf, type CombPlace, combPlaces } from '../controls/map-layout';
import { soundName } from '../controls/sound-name';
import { useNames } from '../state/use-names';

/** What a comb is about. */
export interface Drawing {
  readonly title: string;
  readonly marks: readonly MarkedSound[];
  /** The tone a sound gives, or null. */
  readonly toneOf: (mark: MarkedSound) => ChordTone | null;
  /** Names every sound in reach, also those that give no tone. */
  readonly whole: boolean;
}

interface Props extends SoundRows {
  readonly harp: Harp;
  readonly tonic: NoteName;
  readonly drawing: Drawing;
  /** Height of a row. */
  readonly soundRow: number;
  /** Low notes on the right. */
  readonly mirrored: boolean;
  /** Hole numbers in large print. */
  readonly largeHoles: boolean;
  /** In a small drawing the note names would be too small to read. */
  readonly named: boolean;
}

/** What is drawn: every natural sound, and of the others those that give a tone, or all. */
export const drawnPlaces = ({ marks, toneOf, whole }: Drawing): readonly CombPlace[] =>
  combPlaces(marks).filter(
    ({ mark }) => mark.inReach && (whole || toneOf(mark) !== null || mark.sound.technique === 'natural'),
  );

/** How many rows a drawing needs. */
export const combRows = (drawing: Drawing): SoundRows => {
  const rows = drawnPlaces(drawing).map(({ row }) => row);
  return { above: Math.max(1, ...rows), below: Math.max(1, ...rows.map((row) => -row)) };
};

interface CellProps {
  readonly place: CombPlace;
  readonly tone: ChordTone | null;
  readonly name: NoteName;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly named: boolean;
}

/** Letters in a cell of a height; degrees of more than two signs are set smaller. */
const degreeSize = (text: string, height: number): number =>
  Math.min(12, height * 0.66) * (text.length > 2 ? 0.8 : 1);
const noteSize = (height: number): number => Math.min(9.3, height * 0.34);

interface ToneProps extends Omit<CellProps, 'place' | 'tone'> {
  readonly text: string;
}

const Tone = ({ text, name, x, y, height, named }: ToneProps) => {
  const size = named ? degreeSize(text, height * 0.66) : degreeSize(text, height);
  const note = noteSize(height);
  const middle = y + height / 2;
  const names = useNames();
  return (
    <>
      <text
        className="print-tone"
        style={{ fontSize: size }}
        x={x}
        y={named ? middle - height * 0.05 : middle + size * 0.36}
      >
        {text}
      </text>
      {named && (
        <text className="print-note" style={{ fontSize: note }} x={x} y={middle + note * 0.95}>
          {names.note(name)}
        </text>
      )}
    </>
  );
};

const Cell = ({ place, tone, name, x, y, height, named }: CellProps) => {
  const { technique } = place.mark.sound;
  const names = useNames();
  const over = technique === 'overbend' ? '○' : '';
  const middle = x + COMB.cell / 2;
  const note = noteSize(height);
  return (
    <g>
      <rect
        className={`print-cell ${technique}`}
        data-root={tone?.degree === 'R'}
        x={x + 1}
        y={y + 1}
        width={COMB.cell - 2}
        height={height - 2}
        rx={3}
      />
      {tone === null ? (
        named && (
          <text className="print-note" style={{ fontSize: note }} x={middle} y={y + height / 2 + note * 0.36}>
            {over}
            {names.note(name)}
          </text>
        )
      ) : (
        <Tone
          text={`${over}${degreeText(tone.degree)}`}
          name={name}
          x={middle}
          y={y}
          height={height}
          named={named}
        />
      )}
    </g>
  );
};

interface HolesProps extends Pick<Props, 'mirrored' | 'largeHoles'> {
  readonly holes: number;
  readonly y: number;
}

const Holes = ({ holes, y, mirrored, largeHoles }: HolesProps) => (
  <g className="print-holes" data-large={largeHoles}>
    <rect x={COMB.gutter} y={y} width={holes * COMB.cell} height={COMB.holes} rx={2.5} />
    {Array.from({ length: holes }, (_, i) => {
      const x = COMB.gutter + i * COMB.cell;
      return (
        // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
        <g key={i}>
          {i > 0 && <line x1={x} x2={x} y1={y} y2={y + COMB.holes} />}
          <text x={x + COMB.cell / 2} y={y + COMB.holes - (largeHoles ? 2.5 : 4.5)}>
            {mirrored ? holes - i : i + 1}
          </text>
        </g>
      );
    })}
  </g>
);

const sideText = (row: number): string => {
  if (row === 1) return 'blow';
  if (row === -1) return 'draw';
  return Math.abs(row) === 2 ? 'bends' : '';
};

/** The harp in black lines: everything blown above the holes, everything drawn below. */
export const PrintComb = (props: Props) => {
  const { harp, tonic, drawing, above, below, soundRow, named, mirrored, largeHoles } = props;
  const holes = harp.tuning.blow.length;
  const comb = COMB.edge + above * soundRow;
  const yOf = (row: number): number =>
    row > 0 ? comb - row * soundRow : comb + COMB.holes + (-row - 1) * soundRow;
  const { width, height } = combSize(holes, above + below, soundRow);
  const sides = [1, -1, 2, -2].filter((row) => row <= above && -row <= below);
  return (
    <svg
      className="print-comb"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`${drawing.title}, on the harp`}
    >
      {sides.map((row) => (
        <text key={row} className="print-side" x={0} y={yOf(row) + soundRow / 2 + 3}>
          {sideText(row)}
        </text>
      ))}
      <Holes holes={holes} y={comb} mirrored={mirrored} largeHoles={largeHoles} />
      {drawnPlaces(drawing).map((place) => {
        const tone = drawing.toneOf(place.mark);
        return (
          <Cell
            key={`${place.hole}/${place.row}`}
            place={place}
            tone={tone}
            name={tone?.name ?? soundName({ ...place.mark, chordTone: null, scaleTone: null }, tonic)}
            x={COMB.gutter + (acrossOf(place.hole, holes, mirrored) - 1) * COMB.cell}
            y={yOf(place.row)}
            height={soundRow}
            named={named}
          />
        );
      })}
    </svg>
  );
};
