import { feelOf } from '../feels/feels';
import type { FitChord, FitSound } from '../fit/fit';
import { type LeadSheet, writeMusicXml } from '../formats/musicxml';
import { positionTitle } from '../harp/positions';
import { tab } from '../harp/tab';
import { isCompound } from '../score/grid';
import { swingRatio } from '../score/swing';
import type { Settings } from '../settings/settings';
import { writeAbc } from '../sheets/write-abc';
import { ENGLISH } from '../theory/note-names';
import { keyName } from '../theory/pitch';
import { songTitle } from './song-files';
import type { Tune } from './tune';

/** Effort counts before height: of the easiest sounds the lowest from this hole on lies best. */
const FIRST_HOLE = 2;

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
  const ratio = swingRatio(feel, { swing: style.swing, tempo, part: 'lead' });
  if (isCompound(tune.chart.meter.name) || ratio === 1) return null;
  return { ratio, unit: feel.swungUnit };
};

/** One chorus as an ABC tune: its chords over rests. */
export const abcSheetOf = (settings: Settings, tune: Tune): string =>
  writeAbc({
    chart: { ...tune.chart, title: songTitle(settings, tune, ENGLISH) },
    tempo: settings.tempo,
    feel: feelOf(settings.style.feel).name,
  });

/** One chorus as a MusicXML lead sheet: chords, feel and swing, the harp, and the chords' guide tones as tab. */
export const leadSheetOf = (settings: Settings, tune: Tune): string =>
  writeMusicXml({
    chart: { ...tune.chart, title: songTitle(settings, tune, ENGLISH) },
    tempo: settings.tempo,
    feel: feelOf(settings.style.feel).name,
    swing: swingOf(settings, tune),
    harp: `${ENGLISH.key(keyName(tune.harp.key, 'major'))} harp, ${positionTitle(tune.position)}`,
    tab: tabOf(tune, settings.tabStyle),
  });
