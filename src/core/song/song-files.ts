import type { Section } from '../arranger/program';
import { isFormId } from '../chart/forms';
import { feelOf } from '../feels/feels';
import type { FitChord, FitSound } from '../fit/fit';
import { type LeadSheet, writeMusicXml } from '../formats/musicxml';
import { positionTitle } from '../harp/positions';
import { tab } from '../harp/tab';
import { isCompound } from '../score/grid';
import type { PartId } from '../score/score';
import { swingRatio } from '../score/swing';
import { type Mix, openParts } from '../settings/mix';
import type { Settings } from '../settings/settings';
import { keyName, prettyName } from '../theory/pitch';
import type { Tune } from './tune';

/** Effort counts before height: of the easiest sounds the lowest from this hole on lies best. */
const FIRST_HOLE = 2;

const keyOf = ({ chart }: Tune): string => `${chart.tonic}${chart.mode === 'minor' ? ' minor' : ''}`;

const isOwn = ({ formId }: Settings): boolean => !isFormId(formId);

/** What a song is called in its files: `Shuffle in B♭`, or the name the player gave it. */
export const songTitle = (settings: Settings, tune: Tune): string =>
  isOwn(settings) ? tune.chart.title : `${feelOf(settings.style.feel).name} in ${prettyName(keyOf(tune))}`;

/** Only what every system takes in the name of a file; accents go, other signs become dashes. */
const plain = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');

/**
 * The name of a file without its ending: feel (or the song's own name), key and tempo: `shuffle-b-flat-104bpm`.
 * @param part added for a file that holds one part alone.
 */
export const fileStem = (settings: Settings, tune: Tune, part: PartId | null = null): string => {
  const key = keyOf(tune)
    .replaceAll('#', '-sharp')
    .replace(/(?<=^[A-G]b*)b/g, '-flat');
  const { feel } = settings.style;
  const name = (isOwn(settings) && plain(tune.chart.title)) || feel;
  const words = [name, key, `${Math.round(settings.tempo)}bpm`, ...(part === null ? [] : [part])];
  return words.map(plain).join('-');
};

/** The open parts that have something to play in these sections. */
export const soundingParts = (mix: Mix, sections: readonly Section[]): readonly PartId[] =>
  openParts(mix).filter((part) =>
    sections.some(({ score }) => score.events.some((event) => event.part === part)),
  );

const best = (sounds: readonly FitSound[]): FitSound | undefined =>
  sounds.toSorted(
    (a, b) =>
      a.effort - b.effort || Number(a.hole < FIRST_HOLE) - Number(b.hole < FIRST_HOLE) || a.pitch - b.pitch,
  )[0];

/** The tones that tell one chord from another, where the harp has them: `3rd 3↓  7th 5↓`. */
const guideTab = ({ sounds }: FitChord, style: Settings['tabStyle']): string =>
  (['3', '7'] as const)
    .flatMap((step) => {
      const sound = best(sounds.filter(({ degree }) => degree.replace(/[#b]/g, '') === step));
      return sound === undefined ? [] : [`${step === '3' ? '3rd' : '7th'} ${tab(sound, style)}`];
    })
    .join('  ');

/** Tab where a chord begins that is not the one before. */
const tabOf = ({ fit }: Tune, style: Settings['tabStyle']): NonNullable<LeadSheet['tab']> => {
  const chords = fit.bars.flatMap((bar) => bar.chords);
  return chords
    .filter(({ chord }, index) => chord.symbol !== chords[index - 1]?.chord.symbol)
    .map((chord) => ({ at: chord.at, text: guideTab(chord, style) }))
    .filter(({ text }) => text !== '');
};

const swingOf = ({ style, tempo }: Settings, tune: Tune): LeadSheet['swing'] => {
  const feel = feelOf(style.feel);
  const ratio = swingRatio(feel, style, tempo);
  if (isCompound(tune.chart.meter.name) || ratio === 1) return null;
  return { ratio, unit: feel.swungUnit };
};

/** One chorus as a MusicXML lead sheet: chords, feel and swing, the harp, and the chords' guide tones as tab. */
export const leadSheetOf = (settings: Settings, tune: Tune): string =>
  writeMusicXml({
    chart: { ...tune.chart, title: songTitle(settings, tune) },
    tempo: settings.tempo,
    feel: feelOf(settings.style.feel).name,
    swing: swingOf(settings, tune),
    harp: `${prettyName(keyName(tune.harp.key, 'major'))} harp, ${positionTitle(tune.position)}`,
    tab: tabOf(tune, settings.tabStyle),
  });
