/** A harp's own tuning, from each of its natural notes played once. */
import type { ReedCents } from '../harp/build-harp';
import { BREATHS, type Breath, type Harp, type Sound } from '../harp/harp';
import { soundId, spokenHole } from '../harp/tab';
import type { HeardNote } from '../hearing/heard-note';
import { median } from '../theory/statistics';
import { centsBetween, hzOf, signedCents } from '../theory/temperament';
import { asCents, type Cents, type Hz } from '../theory/units';

/** What was measured: cents from equal temperament at the harp's reference, by the sound's id. */
export type ReedReadings = ReadonlyMap<string, Cents>;

/** What became of a note that was played. */
export interface ReedReading {
  /** The reed that it was read for; null where it was not taken. */
  readonly id: string | null;
  readonly readings: ReedReadings;
  /** A sentence for the player. */
  readonly said: string;
}

/** Shorter notes have not settled (reeds start slowly, low ones most: JASA, on transients of free reeds). Seconds. */
const LEAST_SECONDS = 0.4;
/** No reed that is in order is so far off; one bent down by its player soon is (common practice, no source). Cents. */
const FARTHEST = 50;
/** Draw notes of newcomers hang so far below the other reeds; it is worth a second try. Cents. */
const HANGING = 20;
/** With fewer readings nothing is known of the others. */
const FEW = 4;

/** The natural notes, hole by hole, blow before draw. */
export const reedsInTurn = (harp: Harp): readonly Sound[] =>
  harp.sounds
    .filter(({ technique }) => technique === 'natural')
    .toSorted((a, b) => a.hole - b.hole || BREATHS.indexOf(a.breath) - BREATHS.indexOf(b.breath));

/** The first reed still to be played; null when all were. */
export const nextReed = (harp: Harp, readings: ReedReadings): Sound | null =>
  reedsInTurn(harp).find((sound) => !readings.has(soundId(sound))) ?? null;

interface Played {
  readonly harp: Harp;
  /** A4 of the harp, Hz. */
  readonly reference: Hz;
  /** The reed that is asked for: of two with one pitch it is meant. */
  readonly asked: Sound | null;
  readonly note: HeardNote;
}

/** The reed a note belongs to: the one asked for, or the only one of its pitch. */
const reedOf = ({ harp, asked, reference, note }: Played): { sound: Sound; cents: Cents } | null => {
  const near = reedsInTurn(harp)
    .map((sound) => ({ sound, cents: centsBetween(hzOf(sound.pitch, { reference }), note.frequency) }))
    .filter(({ cents }) => Math.abs(cents) <= FARTHEST);
  return near.find(({ sound }) => sound === asked) ?? (near.length === 1 ? (near[0] ?? null) : null);
};

const refusal = ({ asked, note }: Played): string => {
  const wanted = asked === null ? 'a plain note' : spokenHole(asked);
  if (note.sound?.technique === 'bend') {
    return `That was ${spokenHole(note.sound)}. Play ${wanted} plain and relaxed, without letting it sink.`;
  }
  return note.sound === null
    ? `That was no reed of this harp. Play ${wanted}, one hole alone.`
    : `That may be ${[note.sound, ...note.alternatives].map(spokenHole).join(' or ')}. Play ${wanted}.`;
};

/** Takes a note that has ended for one of the reeds; short and unsteady ones are let pass with a word. */
export const readReed = (readings: ReedReadings, played: Played): ReedReading => {
  const { from, to, steady } = played.note;
  if (to === null || !steady || to - from < LEAST_SECONDS) {
    return { id: null, readings, said: 'Hold it a little longer: one second, at your usual breath.' };
  }
  const reed = reedOf(played);
  if (reed === null) return { id: null, readings, said: refusal(played) };
  const { sound, cents } = reed;
  const id = soundId(sound);
  const others = [...readings].filter(([each]) => each !== id).map(([, value]) => value);
  const hangs = others.length >= FEW && cents < median(others) - HANGING;
  const whole = asCents(Math.round(cents));
  const value = `${signedCents(whole)} cents`;
  return {
    id,
    readings: new Map([...readings, [id, whole]]),
    said: hangs
      ? `${spokenHole(sound)}: ${value}, well below the others. If that was the mouth, press it in the picture and play it again, relaxed.`
      : `${spokenHole(sound)}: ${value}.`,
  };
};

/** The harp's table of cents with what was measured; reeds that were not played keep what they had. */
export const measuredCents = (harp: Harp, readings: ReedReadings): ReedCents => {
  const row = (breath: Breath): readonly number[] =>
    harp.tuning[breath].map((_, i) => {
      const reed = harp.reeds.find((each) => each.breath === breath && each.hole === i + 1);
      const measured = readings.get(soundId({ hole: i + 1, breath, technique: 'natural', bend: 0 }));
      return measured ?? Math.round(reed?.cents ?? 0);
    });
  return { blow: row('blow'), draw: row('draw') };
};
