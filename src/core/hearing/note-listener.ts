import { attackTime } from './attack';
import { createSoundChooser, type HarpInHand } from './choose-sounds';
import type { HeardNote, HeardPitch } from './heard-note';
import { measureNote } from './measure-note';
import type { Span } from './note-draft';
import { createSpanFinder, type SpanFinder } from './note-spans';
import type { PitchFrame } from './pitch-frame';
import { createReattack, type ReedReading } from './reattack';
import { createReedMeter, type LevelReading, type ReedMeter } from './reed-meter';

/** What has been heard of a note now: that it has surely begun (`to` null), or all of it. */
export interface NoteListener {
  /** Takes the next samples at the working rate, without the band where it could be taken out. */
  hop(samples: Float64Array): readonly HeardNote[];
  /** Takes the frame made of what came so far. */
  frame(frame: PitchFrame): readonly HeardNote[];
  /** Ends what still sounds. */
  end(): readonly HeardNote[];
}

export interface NoteListenerOptions extends HarpInHand {
  /** Of the hops, Hz. */
  readonly rate: number;
}

/** Samples between readings of a reed's level: 2.7 ms at 24 kHz. */
const STEP = 64;
/** Readings further apart than this ratio are of different notes. */
const SAME_REED = 2 ** (60 / 1200);

/**
 * A new note is at most so far below what has been played, dB: what is softer is the band, or a room. The measure falls
 * while nothing is played, dB a second, so that whoever plays softer now is soon heard.
 */
const SOFTEST = 17;
const USUAL_FALLS = 5;
/** How far each note moves what counts as usual. */
const USUAL_SHARE = 0.3;

/**
 * A tone as high as overdraws of the upper holes with next to nothing above it is no reed: a blocked one squeals so, and
 * so does a loudspeaker that is heard by its own microphone. Overtones of a reed are at most some 20 dB softer. Hz, dB.
 */
const SQUEAL = { from: 1200, overtones: -32 } as const;

/** How loud the player has been of late. */
const createUsualLevel = () => {
  let level = Number.NEGATIVE_INFINITY;
  let last = 0;
  const at = (time: number): number => level - USUAL_FALLS * Math.max(0, time - last);
  return {
    at,
    take: (next: number, time: number): void => {
      const now = at(time);
      level = Number.isFinite(now) ? now + USUAL_SHARE * (next - now) : next;
      last = time;
    },
  };
};

/** When a reed was attacked, from its past levels; null where nothing rose, or too softly for this player. */
const attackOf = (past: readonly LevelReading[], first: number, usual: number): number | null => {
  const from = attackTime(past, first);
  if (from === null) return null;
  const level = Math.max(...past.flatMap((each) => (each.time >= from ? [each.level] : [])));
  return level > usual - SOFTEST ? from : null;
};

/** Written out: spreading an object took a twentieth of all that the ear does. */
const readingOf = (meter: ReedMeter, frequency: number): ReedReading => {
  const { time, level } = meter.now(frequency);
  return { time, level, whole: meter.whole(), bright: meter.bright(), frequency };
};

/** Looks whether the reed in hand is sounded again. */
const createSoundedAgain = (meter: ReedMeter, spans: SpanFinder) => {
  const reattack = createReattack();
  let pitch: number | null = null;
  /** When it was sounded again, until its pitch stands as it did before: what moves may be a bend. */
  let begun: number | null = null;
  return {
    /** Follows the pitch that stands; another one has another past, one that moves may come back. */
    follow(): void {
      const now = spans.steady();
      if (now === null && spans.sounding()) return;
      if (now === null || pitch === null || Math.max(now / pitch, pitch / now) > SAME_REED) {
        reattack.reset();
        begun = null;
      }
      pitch = now;
    },
    /** Asks the meter, which has taken in what is next. */
    listen(): readonly Span[] {
      if (pitch === null) return [];
      begun = reattack.step(readingOf(meter, pitch)) ?? begun;
      if (begun === null || spans.steady() === null) return [];
      const found = spans.reattack(begun);
      begun = null;
      return found;
    },
  };
};

/** Turns samples and frames into notes. Throws RangeError on a reference outside 440–446 Hz. */
export const createNoteListener = (options: NoteListenerOptions): NoteListener => {
  const meter = createReedMeter(options.rate, STEP);
  const chooser = createSoundChooser(options);
  const usual = createUsualLevel();
  const spans = createSpanFinder((frequency, first) =>
    attackOf(meter.past(frequency), first, usual.at(first)),
  );
  const again = createSoundedAgain(meter, spans);
  /** The note that sounds, where it is a squeal. */
  let squeal: number | null = null;

  const isSqueal = ({ id, to, frequency }: HeardPitch): boolean => {
    if (to === null)
      squeal = frequency > SQUEAL.from && meter.overtones(frequency) < SQUEAL.overtones ? id : null;
    return id === squeal;
  };

  const noted = (found: readonly Span[]): readonly HeardNote[] =>
    found.map((span) => {
      const heard = measureNote(span);
      if (heard.to !== null) usual.take(heard.level, heard.to);
      return chooser.choose(heard, heard.to !== null, isSqueal(heard));
    });

  return {
    hop(samples) {
      const found: Span[] = [];
      for (let from = 0; from + STEP <= samples.length; from += STEP) {
        meter.push(samples.subarray(from, from + STEP));
        found.push(...again.listen());
      }
      return noted(found);
    },
    frame(frame) {
      const found = spans.frame(frame);
      again.follow();
      return noted(found);
    },
    end: () => noted(spans.end()),
  };
};
