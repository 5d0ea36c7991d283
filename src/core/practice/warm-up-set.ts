/** A warm-up for tonight: the harps of a set in their order, its tempos, and the bends its songs need. */
import type { Chart } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import { asBpm, asPitchClass, asSeconds } from '../theory/units';
import { CALM } from './warm-up';
import { bendStep } from './warm-up-bends';
import { climbStep, restStep } from './warm-up-chorus';
import type { WarmUpSpec, WarmUpStep } from './warm-up-step';
import { longToneStep } from './warm-up-tones';

/** How long it may be, in minutes. */
export const SET_WARM_UPS = [5, 10, 20] as const;
export type SetWarmUpMinutes = (typeof SET_WARM_UPS)[number];

/** A song of the set, with the harp it is played on. */
export interface WarmUpSong {
  readonly name: string;
  /** `C harp`, as it is read. */
  readonly harpName: string;
  readonly spec: WarmUpSpec;
}

/** A step, and the song (by its place in the list given) whose harp it is played on. */
export interface SetStep {
  readonly song: number;
  readonly step: WarmUpStep;
}

/** What a set is warmed up with. */
export interface SetWarmUpSpec {
  /** In the order of the set. */
  readonly songs: readonly WarmUpSong[];
  readonly minutes: SetWarmUpMinutes;
  /** For a dressing room: breath and rhythm only, and nothing sounds. */
  readonly silent: boolean;
}

/** Seconds of the parts around the harps, and the least a harp gets (by design, no source). */
const PARTS = { breathe: 20, change: 10, end: 10, leastHarp: 30, climb: 60 } as const;

/**
 * The bends a song needs: those in reach that give a tone of its chords which no natural note of the harp gives at that
 * height, the ones that are needed in most bars first.
 */
export const neededBends = (chart: Chart, harp: Harp, technique: TechniqueChoice): readonly Sound[] => {
  const natural = new Set(
    harp.sounds.filter(({ technique: how }) => how === 'natural').map(({ pitch }) => Math.round(pitch)),
  );
  const barsWith = (sound: Sound): number =>
    chart.bars.filter(({ chords }) =>
      chords.some(({ chord }) =>
        chord.tones.some(({ pitchClass }) => pitchClass === asPitchClass(Math.round(sound.pitch))),
      ),
    ).length;
  return harp.sounds
    .filter((sound) => sound.technique === 'bend' && isInReach(sound, technique))
    .filter(({ pitch }) => !natural.has(Math.round(pitch)))
    .map((sound) => ({ sound, bars: barsWith(sound) }))
    .filter(({ bars }) => bars > 0)
    .sort((a, b) => b.bars - a.bars)
    .map(({ sound }) => sound);
};

/** The first song on each harp, in the order of the set. */
const firstOnEach = (songs: readonly WarmUpSong[]): readonly number[] => {
  const seen = new Set<string>();
  return songs.flatMap(({ harpName }, index) => {
    if (seen.has(harpName)) return [];
    seen.add(harpName);
    return [index];
  });
};

const calm = (spec: WarmUpSpec): WarmUpSpec => ({
  ...spec,
  tempo: asBpm(Math.min(CALM.fastest, Math.max(CALM.slowest, spec.tempo))),
});

/** What is played on one harp in so many seconds: the bends that are needed, and where there is time a climb. */
const harpSteps = ({ name, harpName, spec }: WarmUpSong, room: number): readonly WarmUpStep[] => {
  const easy = calm(spec);
  const climb = room >= 2.5 * PARTS.climb ? climbStep(easy) : null;
  const left = room - (climb?.seconds ?? 0);
  const bends = neededBends(spec.chart, spec.harp, spec.technique);
  const bend = bendStep({ ...easy, bends, bendSeconds: { least: left, most: left } });
  const named = {
    ...bend,
    title: `${bend.title} for ${name}`,
    instruction: `On the ${harpName}. ${bend.instruction}`,
  };
  return climb === null ? [named] : [named, { ...climb, title: `Through ${name}` }];
};

/** Without a sound: in the tempo of a song, with breath and foot. */
const silentSteps = ({ name, harpName, spec }: WarmUpSong, room: number): readonly WarmUpStep[] => [
  restStep(spec, room, {
    title: `${name} without a sound`,
    instruction: `${Math.round(spec.tempo)} beats a minute. Tap the beat with a foot and feel the off-beats; breathe in for a bar and out for a bar. Hold the ${harpName} to your lips and go through the bends with the mouth alone.`,
  }),
];

/**
 * Steps of five, ten or twenty minutes for a set: breath, long tones on the first harp, then harp after harp what its
 * songs need, each harp at least half a minute. Of a set with more harps than there is time for, the last are left out.
 * Empty for an empty set.
 */
export const setWarmUp = ({ songs, minutes, silent }: SetWarmUpSpec): readonly SetStep[] => {
  const [first] = songs;
  if (first === undefined) return [];
  const step =
    (song: number) =>
    (made: WarmUpStep): SetStep => ({ song, step: made });
  const breathe = restStep(first.spec, PARTS.breathe, {
    title: 'Breathe',
    instruction: 'Put the harp down. Breathe in and out slowly through the nose, shoulders low.',
  });
  const long = silent ? [] : [longToneStep(calm(first.spec))];
  const used = PARTS.breathe + PARTS.end + long.reduce((sum, { seconds }) => sum + seconds, 0);
  const room = minutes * 60 - used;
  const wanted = silent ? songs.map((_, index) => index) : firstOnEach(songs);
  const harps = wanted.slice(0, Math.max(1, Math.floor(room / (PARTS.leastHarp + PARTS.change))));
  const each = asSeconds(room / harps.length - PARTS.change);
  const body = harps.flatMap((index, i): readonly SetStep[] => {
    const song = songs[index] ?? first;
    const take = restStep(song.spec, PARTS.change, {
      title: `Take the ${song.harpName}`,
      instruction: `For ${song.name}. Breathe as usual.`,
    });
    const made = silent ? silentSteps(song, each) : harpSteps(song, each);
    return [...(i === 0 ? [] : [take]), ...made].map(step(index));
  });
  const end = restStep(first.spec, PARTS.end, {
    title: 'Done',
    instruction: 'Tap the harps dry, holes down, and lay them out in the order of the set.',
  });
  return [step(0)(breathe), ...long.map(step(0)), ...body, step(0)(end)];
};
