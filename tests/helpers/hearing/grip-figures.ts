/** How many grips the ear reads exactly, and how many single notes it takes for grips. */
import { createGripRecogniser } from '../../../src/core/grips/recognise-grip';
import { createReedProfiles, type ReedProfiles } from '../../../src/core/grips/reed-profiles';
import { createEar } from '../../../src/core/hearing/ear';
import type { HeardNote } from '../../../src/core/hearing/heard-note';
import { createFrontEnd } from '../../../src/core/signal/front-end';
import { createSlidingSpectrum, SPECTRUM_SAMPLES } from '../../../src/core/signal/sliding-spectrum';
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
  /** Whether each natural note of the harp was heard alone before, at the same place. */
  readonly taught?: boolean;
}

/** What is so long a part of a note belongs to it. */
const MOST = 0.5;
const GOOD_PART = 0.3;
/** Samples from one look to the next, and what is lower is left out, Hz. */
const HOP = 1024;
const LOWEST = 75;

const shared = (note: TrueNote, { from, to }: HeardNote): number =>
  (Math.min(to ?? from, note.to) - Math.max(from, note.from)) / (note.to - note.from);

/** The reeds of a harp after each was heard alone. */
const taughtBy = ({ samples, sampleRate, notes, harp, reference }: Take): ReedProfiles => {
  const profiles = createReedProfiles(harp, asHz(reference));
  const front = createFrontEnd({ sampleRate, hop: HOP, lowest: LOWEST });
  const spectrum = createSlidingSpectrum(front.rate);
  const recogniser = createGripRecogniser(profiles, spectrum.binHz);
  const costs = new Float64Array(recogniser.guesses.length + 1);
  let hops = 0;
  front.push(samples, (hop) => {
    spectrum.push(hop);
    hops += 1;
    const to = (hops * HOP) / front.rate;
    const lone = notes.find((note) => to - SPECTRUM_SAMPLES / front.rate > note.from + 0.02 && to < note.to);
    if (lone === undefined || !recogniser.weigh(spectrum.levels(), lone.hz, costs)) return;
    const [{ hole, breath }] = lone.sounds;
    recogniser.learn(
      recogniser.guesses.findIndex(
        ({ holes, breath: own }) => holes.length === 1 && holes[0] === hole && own === breath,
      ),
    );
  });
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
