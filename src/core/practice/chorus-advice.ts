/** The one sentence after a chorus: what is most worth knowing, and what to do next. */
import type { Chart } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import { effortOf, isInReach, type TechniqueChoice } from '../harp/reach';
import { soundId, spokenHole } from '../harp/tab';
import { wayOut } from '../judging/way-out';
import { degreeText, ENGLISH } from '../theory/note-names';
import { median } from '../theory/statistics';
import { asPitchClass } from '../theory/units';
import { capital } from '../theory/wording';
import type { HeardChorus, Hit } from './heard-chorus';

interface Played {
  readonly chart: Chart;
  readonly harp: Harp;
  /** What the player can play: nothing else is advised. */
  readonly technique: TechniqueChoice;
  /** For each bar of the chart, its index in the whole chorus; absent where it is all of it. */
  readonly numbers?: readonly (number | null)[];
}

/** A bar as the chart counts it: `bar 5`, or ``bar 5 of “Trio”``. */
const barIn = (bar: number, { chart, numbers }: Played): string => {
  const place = chart.bars[bar]?.place;
  return place === undefined
    ? `bar ${(numbers?.[bar] ?? bar) + 1}`
    : `bar ${place.bar + 1} of “${place.section}”`;
};

/** Fewer notes than this say nothing about a chorus. */
const FEW = 4;
/**
 * A sound is off when its median lies so many cents away, over so many notes: listeners call sung notes out of tune
 * from about 25 cents (Music & Science 1, 2018, doi 10.1177/2059204318784582).
 */
const OFF = { cents: 25, notes: 2 } as const;
/** A lean is worth a word from so many seconds: ensembles differ by as much (Acoust. Sci. Tech. 22(3), 2001, p. 239). */
const LEANS = 0.035;
/** Notes in one bar that belong to neither chord nor scale before it is worth a word. */
const STRAYS = 2;

const times = (count: number): string => (count === 2 ? 'twice' : `${count} times`);

/** A bend or overbend that is off as a rule, the farthest one first; then natural notes. */
const offSound = (hits: readonly Hit[]): string | null => {
  const bySound = new Map<string, { readonly sound: Sound; readonly cents: number[] }>();
  for (const { note } of hits) {
    if (note.sound === null || note.offset === null) continue;
    const of = bySound.get(soundId(note.sound)) ?? { sound: note.sound, cents: [] };
    of.cents.push(note.offset);
    bySound.set(soundId(note.sound), of);
  }
  const [worst] = [...bySound.values()]
    .map(({ sound, cents }) => ({ sound, count: cents.length, cents: median(cents) }))
    .filter(({ count, cents }) => count >= OFF.notes && Math.abs(cents) >= OFF.cents)
    .sort(
      (a, b) =>
        Number(a.sound.technique === 'natural') - Number(b.sound.technique === 'natural') ||
        Math.abs(b.cents) - Math.abs(a.cents),
    );
  if (worst === undefined) return null;
  const { sound, count, cents } = worst;
  const way = cents > 0 ? 'high' : 'low';
  return `${spokenHole(sound)} was about ${Math.round(Math.abs(cents) / 5) * 5} cents ${way}, ${times(count)}: ${wayOut(sound, cents)}.`;
};

/** The easiest sound in reach of a chord's third, or of another of its tones where there is none. */
const aimOver = (hit: Hit, { harp, technique }: Played): string | null => {
  const tones = hit.chord.tones.toSorted(
    (a, b) => Number(b.degree.endsWith('3')) - Number(a.degree.endsWith('3')),
  );
  for (const { degree, pitchClass } of tones) {
    const [sound] = harp.sounds
      .filter((each) => asPitchClass(each.pitch) === pitchClass && isInReach(each, technique))
      .toSorted((a, b) => effortOf(a, harp) - effortOf(b, harp));
    if (sound) return `${degree === 'R' ? 'its root' : `its ${degreeText(degree)}`}, ${spokenHole(sound)}`;
  }
  return null;
};

const strayBar = ({ bars, hits }: HeardChorus, played: Played): string | null => {
  const most = Math.max(...bars.map(({ counts }) => counts.other));
  if (most < STRAYS) return null;
  const bar = bars.findIndex(({ counts }) => counts.other === most);
  const stray = hits.find(({ note, kind }) => note.bar === bar && kind === 'other');
  const aim = stray && aimOver(stray, played);
  if (!stray || !aim) return null;
  const chord = ENGLISH.chord(stray.chord);
  return `In ${barIn(bar, played)}, ${most} notes were neither of ${chord} nor of its scale: aim for ${aim}.`;
};

const leaning = (lean: number): string | null => {
  if (Math.abs(lean) < LEANS) return null;
  const ms = Math.round(Math.abs(lean) * 100) * 10;
  return lean < 0
    ? `You lead the band by about ${ms} ms: wait for the snare.`
    : `You are about ${ms} ms behind the band: breathe in a moment earlier.`;
};

/** The first bar with a new chord in which notes were played, and none of them of the chord. */
const missedChange = ({ bars, hits }: HeardChorus, played: Played): string | null => {
  const bar = bars.findIndex(({ counts }, i) => {
    const { chart } = played;
    const [now, before] = [chart.bars[i]?.chords[0], chart.bars[i - 1]?.chords.at(-1)];
    const changed = now?.chord.symbol !== before?.chord.symbol;
    return changed && counts.chord === 0 && counts.blue + counts.scale + counts.other > 0;
  });
  const hit = hits.find(({ note }) => note.bar === bar);
  const aim = hit && aimOver(hit, played);
  if (!hit || !aim) return null;
  return `The change to ${ENGLISH.chord(hit.chord)} in ${barIn(bar, played)} passed without a note of it: try ${aim}.`;
};

const wellDone = ({ bars, hits }: HeardChorus): string => {
  const chord = hits.filter(({ kind }) => kind === 'chord').length;
  const rest = bars.filter(({ counts }) => counts.chord > 0).length;
  return `${chord} of ${hits.length} notes were of their chord, in ${rest} of ${bars.length} bars. Next: leave out one note in four, and hold what is left.`;
};

/** One sentence, or two, about a chorus; never empty. */
export const chorusAdvice = (heard: HeardChorus, played: Played): string => {
  if (heard.hits.length === 0)
    return 'Nothing was heard in this chorus. Look at the level under Practise, Ear.';
  if (heard.hits.length < FEW)
    return `${heard.hits.length === 1 ? 'One note was' : `${heard.hits.length} notes were`} heard: too few to say anything about. Play a little more.`;
  const text =
    offSound(heard.hits) ??
    strayBar(heard, played) ??
    missedChange(heard, played) ??
    leaning(heard.lean) ??
    wellDone(heard);
  return capital(text);
};
