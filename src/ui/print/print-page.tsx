import { feelOf } from '../../core/feels/feels';
import { markSounds } from '../../core/fit/mark-sounds';
import { scaleTab } from '../../core/fit/scale-tab';
import { positionTitle } from '../../core/harp/positions';
import type { Settings } from '../../core/settings/settings';
import { pickUpText } from '../../core/song/pick-up-text';
import { chordsByTime, type PrintPlan, planPrint } from '../../core/song/print-plan';
import { sectionsElsewhere, sectionWays, sectionWords } from '../../core/song/section-ahead';
import type { Tune } from '../../core/song/tune';
import type { Chord } from '../../core/theory/chord';
import type { NoteNames } from '../../core/theory/note-names';
import { keyName } from '../../core/theory/pitch';
import { SCALE_IDS, type Scale, scaleOf } from '../../core/theory/scales';
import { useNames } from '../state/use-names';
import { PrintChart, type PrintedLine } from './print-chart';
import { combRows, type Drawing, drawnPlaces, PrintComb } from './print-comb';
import { PrintScale, scaleHeading } from './print-scale';

interface Props {
  readonly settings: Settings;
  readonly tune: Tune;
  /** The line to play, to stand as tab under the bars. */
  readonly line?: PrintedLine | undefined;
}

const STANDARD_TUNING = 'richter';

const Head = ({ settings, tune, line }: Props) => {
  const { chart, harp, position } = tune;
  const names = useNames(chart.tonic);
  const elsewhere = sectionsElsewhere(chart, tune);
  return (
    <header>
      <h1>{chart.title}</h1>
      <p className="print-song">
        Song in {names.key(chart.tonic)}
        {chart.mode === 'minor' ? ' minor' : ''}, {names.key(keyName(harp.key, 'major'))} harp
        {harp.tuning.id === STANDARD_TUNING ? '' : ` (${harp.tuning.name})`}, {positionTitle(position)}
      </p>
      <p>
        {feelOf(settings.style.feel).name}, {chart.meter.name}, {Math.round(settings.tempo)} beats a minute
        {line !== undefined && <>. Under the bars: {line.name}</>}
        {chart.pickUp !== undefined && `. ${pickUpText(chart, names)}`}
      </p>
      {elsewhere.length > 0 && (
        <p>
          {elsewhere
            .map((each) => `${sectionWords(each, names)}: ${sectionWays(each, tune, names)}.`)
            .join(' ')}
        </p>
      )}
    </header>
  );
};

const scaleIn = ({ layer }: Settings, { chart }: Tune): Scale | null => {
  const id = SCALE_IDS.find((each) => each === layer);
  return id === undefined ? null : scaleOf(id, chart.tonic);
};

/** One drawing for each chord, and one for the scale, or for the harp alone where no scale is shown. */
const drawingsOf = (
  { settings, tune }: Props,
  chords: readonly Chord[],
  scale: Scale | null,
  names: NoteNames,
): readonly Drawing[] => {
  const { harp, chart } = tune;
  const { technique } = settings;
  const [first] = chords;
  if (first === undefined) return [];
  return [
    ...chords.map(
      (chord): Drawing => ({
        title: `Over ${names.chord(chord)}`,
        marks: markSounds({ harp, chord, tonic: chart.tonic, scale, technique }),
        toneOf: ({ chordTone }) => chordTone,
        whole: false,
      }),
    ),
    {
      title: scale === null ? 'All notes' : scaleHeading(scale, names),
      marks: markSounds({ harp, chord: first, tonic: chart.tonic, scale, technique }),
      toneOf: ({ scaleTone }) => scaleTone,
      whole: true,
    },
  ];
};

interface LegendProps {
  readonly drawings: readonly Drawing[];
  readonly undrawn: readonly Chord[];
}

const Legend = ({ drawings, undrawn }: LegendProps) => {
  const names = useNames();
  if (drawings.length === 0) {
    return <p className="print-legend">So long a chart leaves no room on the sheet to draw the harp.</p>;
  }
  const techniques = new Set(drawings.flatMap(drawnPlaces).map(({ mark }) => mark.sound.technique));
  return (
    <p className="print-legend">
      Over a chord, degrees count from its root R; in a scale, from its first note.
      {techniques.has('bend') && ' Dashed: bent by 1, 2 or 3 semitones.'}
      {techniques.has('overbend') && ' Dotted, ○: overbend.'}
      {undrawn.length > 0 && ` Not drawn: ${undrawn.map(names.chord).join(', ')}.`}
    </p>
  );
};

interface CombsProps {
  readonly tune: Tune;
  readonly drawings: readonly Drawing[];
  readonly plan: PrintPlan;
  readonly settings: Settings;
}

const Combs = ({ tune, drawings, plan, settings }: CombsProps) => {
  const { harp, chart } = tune;
  const { soundRow, named, combLines, combColumns } = plan;
  return (
    <section className="print-combs" data-columns={combColumns}>
      {combLines.flatMap(({ combs, above, below }) =>
        combs.map((index) => {
          const drawing = drawings[index];
          if (drawing === undefined) throw new RangeError(`The plan has drawing ${index}, the page does not`);
          return (
            <figure key={drawing.title}>
              <figcaption>{drawing.title}</figcaption>
              <PrintComb
                harp={harp}
                tonic={chart.tonic}
                drawing={drawing}
                above={above}
                below={below}
                soundRow={soundRow}
                named={named}
                mirrored={settings.mirrored}
                largeHoles={settings.largeHoles}
              />
            </figure>
          );
        }),
      )}
    </section>
  );
};

/** The song on one page of paper, in black on white: chart, harp and scale, everything told by text. */
export const PrintPage = (props: Props) => {
  const { settings, tune, line } = props;
  const names = useNames(tune.chart.tonic);
  const { chart, harp } = tune;
  const scale = scaleIn(settings, tune);
  const chords = chordsByTime(chart);
  const drawings = drawingsOf(props, chords, scale, names);
  const runs = scale === null ? [] : scaleTab({ scale, harp, technique: settings.technique });
  const plan = planPrint({
    bars: chart.bars.length,
    tabbed: line !== undefined,
    combs: drawings.map(combRows),
    holes: harp.tuning.blow.length,
    scaleRuns: runs.length,
  });
  const drawn = new Set(plan.combLines.flatMap(({ combs }) => combs));
  return (
    <article className="paper" aria-label="The song on paper">
      <Head {...props} />
      <PrintChart chart={chart} plan={plan} line={line} />
      <Combs tune={tune} drawings={drawings} plan={plan} settings={settings} />
      <Legend
        drawings={drawings.filter((_, i) => drawn.has(i))}
        undrawn={chords.filter((_, i) => !drawn.has(i))}
      />
      {scale !== null && runs.length > 0 && (
        <PrintScale scale={scale} runs={runs} tabStyle={settings.tabStyle} />
      )}
    </article>
  );
};
