/** How many grips the ear reads exactly, and how many single notes it takes for grips. */
import { nextReed, type ReedReadings, readReed } from '../../../src/core/bends/own-tuning';
import { createReedProfiles, type ReedProfiles } from '../../../src/core/grips/reed-profiles';
import type { Sound } from '../../../src/core/harp/harp';
import { soundId } from '../../../src/core/harp/tab';
import { createEar, type Ear } from '../../../src/core/hearing/ear';
import type { HeardNote } from '../../../src/core/hearing/heard-note';
import { asHz } from '../../../src/core/theory/units';
import { makeTake } from './corpus';
import type { LineKind } from './lines';
import type { Take, TrueNote } from './take';

export interface GripFigures {
  readonly grips: number;
  /** Share of grips heard as one note of exactly their pitches. */
  readonly exact: number;
  readonly singles: number;
  /** Share of single notes of which a good part was taken for a grip. */
  readonly mistaken: number;
}

export interface GripMeasuring {
  readonly seeds: readonly number[];
  readonly kind: LineKind;
  readonly seconds: number;
  readonly leak: number | null;
  /** Whether the harp's own tuning was read before, at the same place. */
  readonly taught?: boolean;
}

/** What is so long a part of a note belongs to it. */
const MOST = 0.5;
const GOOD_PART = 0.3;
/** Samples handed over at a time. */
const BLOCK = 480;

const shared = (note: TrueNote, { from, to }: HeardNote): number =>
  (Math.min(to ?? from, note.to) - Math.max(from, note.from)) / (note.to - note.from);

/** The reeds of a harp after each was played for its own tuning, as the page has it read and the ear taught. */
const taughtBy = ({ samples, sampleRate, harp, reference }: Take): ReedProfiles => {
  const a4 = asHz(reference);
  const profiles = createReedProfiles(harp, a4);
  let readings: ReedReadings = new Map();
  const askedNow = (): Sound | null => nextReed(harp, readings);
  const listen = (): Ear =>
    createEar({
      ...{ sampleRate, harp, reference: a4, profiles },
      targets: [askedNow()].flatMap((sound) => (sound === null ? [] : [soundId(sound)])),
    });
  let ear = listen();
  for (let at = 0; at < samples.length; at += BLOCK) {
    const asked = askedNow();
    for (const note of ear.push(samples.subarray(at, at + BLOCK)).notes) {
      if (note.to === null) continue;
      const { id, readings: now } = readReed(readings, { harp, reference: a4, asked: askedNow(), note });
      readings = now;
      const sound = harp.sounds.find((each) => soundId(each) === id);
      if (sound !== undefined) ear.teach(sound, note.from, note.to);
    }
    // Another one is aimed at: the page has the ear listen anew.
    if (askedNow() !== asked) ear = listen();
  }
  return profiles;
};

const endedOf = (take: Take, profiles: ReedProfiles | null): readonly HeardNote[] => {
  const { sampleRate, harp, reference, band, samples } = take;
  const options = { sampleRate, harp, reference: asHz(reference), band: band !== null };
  const ear = createEar({ ...options, ...(profiles === null ? {} : { profiles }) });
  return [...ear.push(samples, band ?? undefined).notes, ...ear.end()].filter(({ to }) => to !== null);
};

const pitchesOf = ({ sound, together }: HeardNote): string =>
  [sound, ...together].map((each) => each?.pitch).join();

/** Measures what the ear makes of takes while they are played; failed overbends are no notes and are left out. */
export const measureGrips = ({ seeds, kind, seconds, leak, taught = false }: GripMeasuring): GripFigures => {
  let [grips, exact, singles, mistaken] = [0, 0, 0, 0];
  for (const seed of seeds) {
    const profiles = taught
      ? taughtBy(makeTake({ seed, kind: 'naturals', seconds: 13.5, leak: null }))
      : null;
    const take = makeTake({ seed, kind, seconds, leak });
    const heard = endedOf(take, profiles);
    for (const note of take.notes) {
      if (note.failed) continue;
      if (note.sounds.length === 1) {
        singles += 1;
        if (heard.some((each) => each.together.length > 0 && shared(note, each) > GOOD_PART)) mistaken += 1;
        continue;
      }
      const [first, ...more] = heard.filter((each) => shared(note, each) > MOST);
      const wanted = note.sounds.map(({ pitch }) => pitch).join();
      grips += 1;
      if (first !== undefined && more.length === 0 && pitchesOf(first) === wanted) exact += 1;
    }
  }
  return { grips, exact: exact / grips, singles, mistaken: mistaken / singles };
};
