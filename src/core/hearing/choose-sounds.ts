/** Which sound of the harp a heard pitch is: some can be had in two places, and the pitch alone cannot tell. */
import type { Harp, Sound } from '../harp/harp';
import { soundHz } from '../harp/intonation';
import { effortOf } from '../harp/reach';
import { soundId } from '../harp/tab';
import { centsBetween, hzOf, midiOf, STANDARD_PITCH } from '../theory/temperament';
import { asMidi, type Hz } from '../theory/units';
import type { HeardNote, HeardPitch } from './heard-note';

/** What is known besides what is heard. */
export interface HarpInHand {
  readonly harp: Harp;
  /** A4 of the harp, Hz; 440 when absent. */
  readonly reference?: Hz;
  /** Ids of the sounds the player means to play, as a line or exercise has them. */
  readonly targets?: readonly string[];
}

/** A sound within so many cents of a heard pitch may be it. */
const REACH = 70;
/**
 * What speaks against a sound, in one scale: of two sounds the one with the lower sum is chosen (by design, no
 * source: a breath does not turn without a gap, a glide stays in its hole, hands move little, easy sounds are used
 * more, and tuning tells little).
 */
const COST = {
  effort: 0.6,
  /** Cents off for one unit, squared. */
  offset: 30,
  meant: -2,
  hole: 0.25,
  turn: 0.4,
  turnInOneBreath: 3,
  otherInGlide: 8,
} as const;
/** Seconds between notes in which a breath can turn, and after which what came before no longer counts. */
const TURN_SECONDS = 0.012;
const FORGET_SECONDS = 1.2;

interface Candidate {
  readonly sound: Sound;
  readonly cents: number;
  /** Of the likeliest way to it. */
  readonly cost: number;
}

/** Keeps what was chosen, so that what follows can lean on it. */
export interface SoundChooser {
  /**
   * The likeliest sound of a pitch after the notes before; no overbend where it squeals. `keep` takes it for what came
   * before the next.
   */
  choose(heard: HeardPitch, keep: boolean, squeals?: boolean): HeardNote;
}

interface Before {
  readonly heard: HeardPitch;
  readonly candidates: readonly Candidate[];
}

const passage = (one: Sound, next: Sound, before: HeardPitch, heard: HeardPitch): number => {
  if (heard.joined === 'glide') {
    return one.hole === next.hole && one.breath === next.breath ? 0 : COST.otherInGlide;
  }
  const gap = heard.from - (before.to ?? heard.from);
  if (gap > FORGET_SECONDS) return 0;
  const turned = one.breath !== next.breath;
  const inOneBreath = turned && gap < TURN_SECONDS && heard.joined === 'leap';
  return (
    COST.hole * Math.abs(one.hole - next.hole) +
    (turned ? COST.turn : 0) +
    (inOneBreath ? COST.turnInOneBreath : 0)
  );
};

/** A chooser for one stream on one harp. Throws RangeError on a reference outside 440–446 Hz. */
export const createSoundChooser = ({
  harp,
  reference = STANDARD_PITCH,
  targets = [],
}: HarpInHand): SoundChooser => {
  const meant = new Set(targets);
  const isMeant = (sound: Sound): boolean => meant.has(soundId(sound));
  const sounds = harp.sounds.map((sound) => ({
    sound,
    hz: soundHz(sound, reference),
    cost: COST.effort * effortOf(sound, harp) + (isMeant(sound) ? COST.meant : 0),
  }));
  let before: Before | null = null;

  const candidatesOf = (heard: HeardPitch, squeals: boolean): readonly Candidate[] =>
    sounds
      .filter(({ sound }) => !squeals || sound.technique !== 'overbend')
      .map(({ sound, hz, cost }) => ({ sound, cost, cents: centsBetween(hz, heard.frequency) }))
      .filter(({ cents }) => Math.abs(cents) <= REACH)
      .map(({ sound, cost, cents }) => {
        const ways = before?.candidates.map(
          (each) => each.cost + passage(each.sound, sound, before?.heard ?? heard, heard),
        );
        const way = ways === undefined || ways.length === 0 ? 0 : Math.min(...ways);
        return { sound, cents, cost: way + cost + (cents / COST.offset) ** 2 };
      })
      .sort((a, b) => a.cost - b.cost);

  return {
    choose(heard, keep, squeals = false) {
      const candidates = heard.steady ? candidatesOf(heard, squeals) : [];
      const [best] = candidates;
      if (keep) {
        const least = best?.cost ?? 0;
        before = { heard, candidates: candidates.map((each) => ({ ...each, cost: each.cost - least })) };
      }
      const pitch = best?.sound.pitch ?? asMidi(Math.round(midiOf(heard.frequency, reference)));
      // What the player means is not left open against what nobody means.
      const same = (each: Candidate): boolean =>
        best !== undefined &&
        Math.abs(each.cents - best.cents) < REACH / 2 &&
        (!isMeant(best.sound) || isMeant(each.sound));
      return {
        ...heard,
        sound: best?.sound ?? null,
        together: [],
        alternatives: candidates.slice(1).flatMap((each) => (same(each) ? [each.sound] : [])),
        pitch,
        cents: centsBetween(hzOf(pitch, { reference }), heard.frequency),
        offset: best === undefined ? null : centsBetween(soundHz(best.sound, reference), heard.frequency),
      };
    },
  };
};
