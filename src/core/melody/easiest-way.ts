/** The easiest way through a melody on one harp, where a note can be had in more than one hole. */

import type { Harp, Sound } from '../harp/harp';
import { effortOf, isInReach, type TechniqueChoice } from '../harp/reach';
import { soundId } from '../harp/tab';
import { readNote } from '../phrase/read-note';
import type { MelodyNote } from './melody';

/** What a hole of distance and a turn of the breath weigh against the effort of bends (common practice, no source). */
const WAY = { hole: 0.15, turn: 0.1 } as const;

/**
 * The octave that melodies are learnt in first, and what a hole above or below it adds (common practice, no source:
 * high and low holes speak less readily, and above the sixth blow and draw change places).
 */
const MIDDLE = { from: 4, to: 6, perHole: 0.05 } as const;

const wayCost = (from: Sound, to: Sound): number =>
  WAY.hole * Math.abs(to.hole - from.hole) + (to.breath === from.breath ? 0 : WAY.turn);

const placeCost = ({ hole }: Sound): number =>
  MIDDLE.perHole * Math.max(0, MIDDLE.from - hole, hole - MIDDLE.to);

/** A harp as ways are looked for on it. */
export interface HarpGround {
  readonly harp: Harp;
  /** What is in reach. */
  readonly sounds: readonly Sound[];
  readonly byPitch: ReadonlyMap<number, readonly Sound[]>;
  readonly byId: ReadonlyMap<string, Sound>;
  /** What each sound costs by itself. */
  readonly costs: ReadonlyMap<Sound, number>;
}

/** Looks a harp over once, for any number of ways. */
export const groundOf = (harp: Harp, technique: TechniqueChoice): HarpGround => {
  const sounds = harp.sounds.filter((sound) => isInReach(sound, technique));
  const byPitch = new Map<number, readonly Sound[]>();
  for (const sound of sounds) byPitch.set(sound.pitch, [...(byPitch.get(sound.pitch) ?? []), sound]);
  return {
    harp,
    sounds,
    byPitch,
    byId: new Map(sounds.map((sound) => [soundId(sound), sound])),
    costs: new Map(sounds.map((sound) => [sound, effortOf(sound, harp) + placeCost(sound)])),
  };
};

/** Ids of the sounds that a note's own tab asks for; null where it has none. */
export const tabIds = ({ tab }: MelodyNote): readonly string[] | null =>
  tab === undefined ? null : readNote(tab, { text: tab, line: 1, column: 1 }).sounds.map(soundId);

/** A note to be found: its key on the harp, null for a rest, and what its own tab asks for. */
export interface WantedNote {
  readonly key: number | null;
  readonly ids: readonly string[] | null;
}

/** A sound for each note, null for rests and what the harp has not, and what it costs altogether. */
export interface EasiestWay {
  readonly sounds: readonly (Sound | null)[];
  readonly cost: number;
  /** True where every note has tab of its own, and it gives the note. */
  readonly asTabbed: boolean;
}

/** A way so far, by its last sound. */
interface Path {
  readonly sound: Sound;
  readonly cost: number;
  readonly before: Path | null;
}

const higher = (a: Sound, b: Sound): Sound => (b.pitch > a.pitch ? b : a);

/** The highest sound of a note's own tab, where that gives the note's key on this harp. */
const askedFor = ({ key, ids }: WantedNote, { byId }: HarpGround): Sound | null => {
  const found = (ids ?? []).flatMap((id) => byId.get(id) ?? []);
  const [first] = found;
  if (ids === null || first === undefined || found.length < ids.length) return null;
  const highest = found.reduce(higher, first);
  return highest.pitch === key ? highest : null;
};

const cheapest = (paths: readonly Path[]): Path | null =>
  paths.reduce<Path | null>((best, each) => (best === null || each.cost < best.cost ? each : best), null);

const step = (paths: readonly Path[], sound: Sound, own: number): Path => {
  const before = cheapest(
    paths.map((path) => ({ ...path, cost: path.cost + wayCost(path.sound, sound), before: path })),
  );
  return { sound, cost: own + (before?.cost ?? 0), before: before?.before ?? null };
};

/** Finds the way that asks least of bends, jumps and turns of the breath, every choice weighed against the next. */
export const easiestWay = (notes: readonly WantedNote[], ground: HarpGround): EasiestWay => {
  const asked = notes.map((note) => askedFor(note, ground));
  const choices = notes.map(({ key }, i): readonly Sound[] => {
    const own = asked[i];
    if (own) return [own];
    return key === null ? [] : (ground.byPitch.get(key) ?? []);
  });
  let paths: readonly Path[] = [];
  for (const those of choices)
    if (those.length > 0) paths = those.map((sound) => step(paths, sound, ground.costs.get(sound) ?? 0));
  let path = cheapest(paths);
  const cost = path?.cost ?? 0;
  const found = choices.map(() => null as Sound | null);
  for (const [back, those] of [...choices.entries()].toReversed()) {
    if (those.length === 0) continue;
    found[back] = path?.sound ?? null;
    path = path?.before ?? null;
  }
  const sounding = notes.flatMap(({ key }, i) => (key === null ? [] : [asked[i] ?? null]));
  return { sounds: found, cost, asTabbed: sounding.length > 0 && !sounding.includes(null) };
};
