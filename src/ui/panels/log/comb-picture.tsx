import { HOLES } from '../../../core/harp/build-harp';
import { type CombBend, combProgress, type HitCount, LATE_WEEKS } from '../../../core/log/comb-progress';
import type { BendProgress } from '../../../core/log/progress';
import { signedCents } from '../../../core/theory/temperament';
import { acrossOf } from '../../controls/map-layout';
import { useNames } from '../../state/use-names';
import { bendName } from './bend-name';
import { Picture, percent } from './picture';

/** Of a place on the comb, in the units of the drawing: as small as its figures can be read on a phone. */
const WIDTH = 36;
const HEIGHT = 38;
const HOLE_HEIGHT = 22;
const GAP = 2;
/** Marks at both sides, so that nothing is drawn through the figures. */
const TICK = 6;

const rateOf = ({ hits, tries }: HitCount): number => (tries === 0 ? 0 : hits / tries);

interface PlaceProps {
  readonly bend: CombBend;
  readonly x: number;
  readonly y: number;
}

/** A bend: filled as high as it is hit, marks at its sides where it stood before, its hundredths and its cents. */
const Place = ({ bend: { lately, before }, x, y }: PlaceProps) => {
  const [width, height] = [WIDTH - GAP, HEIGHT - GAP];
  const level = (count: HitCount): number => y + height * (1 - rateOf(count));
  const middle = x + width / 2;
  return (
    <g>
      <rect className="place" x={x} y={y} width={width} height={height} />
      {lately.tries > 0 && (
        <rect className="spread" x={x} y={level(lately)} width={width} height={height * rateOf(lately)} />
      )}
      {before.tries > 0 && (
        <path className="line" d={`M${x},${level(before)}h${TICK}M${x + width},${level(before)}h${-TICK}`} />
      )}
      <text x={middle} y={y + 16} textAnchor="middle">
        {lately.tries === 0 ? '–' : Math.round(100 * rateOf(lately))}
      </text>
      {lately.cents !== null && (
        <text className="small" x={middle} y={y + 31} textAnchor="middle">
          {signedCents(lately.cents)}
        </text>
      )}
    </g>
  );
};

const countText = (count: HitCount): string =>
  count.tries === 0 ? 'none' : `${percent(rateOf(count))} of ${count.tries}`;

const rowsOf = (bends: readonly CombBend[]): readonly (readonly string[])[] =>
  bends.map(({ sound, lately, before }) => [
    bendName(sound),
    countText(lately),
    lately.cents === null ? 'too few' : signedCents(lately.cents),
    countText(before),
  ]);

interface Props {
  /** Bends of one harp, one at least. */
  readonly bends: readonly BendProgress[];
  readonly harp: string;
  readonly mirrored: boolean;
}

/** A harp's bends on its comb, blown above and drawn below: how often each is hit, and how far off. */
export const CombPicture = ({ bends, harp, mirrored }: Props) => {
  const names = useNames();
  const places = combProgress(bends);
  const above = Math.max(0, ...places.map(({ row }) => row - 1));
  const below = Math.max(0, ...places.map(({ row }) => -row - 1));
  const holes = Math.max(HOLES.fewest, ...places.map(({ hole }) => hole));
  const comb = above * HEIGHT;
  const xOf = (hole: number): number => (acrossOf(hole, holes, mirrored) - 1) * WIDTH + GAP / 2;
  const yOf = (row: number): number =>
    row > 0 ? comb - (row - 1) * HEIGHT : comb + HOLE_HEIGHT + (-row - 2) * HEIGHT + GAP;
  const tries = bends.reduce((sum, each) => sum + each.tries, 0);
  return (
    <Picture
      label={`Bends of the ${names.key(harp)} on the comb: ${places.length} with ${tries} tries; the last ${LATE_WEEKS} weeks against those before.`}
      width={holes * WIDTH}
      height={comb + HOLE_HEIGHT + below * HEIGHT + GAP}
      columns={['Bend', `Hit in ${LATE_WEEKS} weeks`, 'Cents', 'Before']}
      rows={rowsOf(places)}
    >
      <rect className="ground" y={comb} width={holes * WIDTH} height={HOLE_HEIGHT} />
      {Array.from({ length: holes }, (_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
        <text key={i} x={xOf(i + 1) + WIDTH / 2 - GAP / 2} y={comb + 16} textAnchor="middle">
          {i + 1}
        </text>
      ))}
      {places.map((bend) => (
        <Place key={bend.sound} bend={bend} x={xOf(bend.hole)} y={yOf(bend.row)} />
      ))}
    </Picture>
  );
};
