import type { Harp, Sound } from '../harp/harp';
import { createSlidingSpectrum, type SlidingSpectrum, SPECTRUM_SAMPLES } from '../signal/sliding-spectrum';
import type { Hz } from '../theory/units';
import { type BreathSpan, type BreathSpans, createBreathSpans } from './breath-spans';
import { createFramePast, type FramePast } from './frame-past';
import type { GripGuess } from './grip-guesses';
import { createGripTally, type GripTally } from './grip-tally';
import { createGripRecogniser, type GripRecogniser } from './recognise-grip';
import { createReedProfiles, type ReedProfiles } from './reed-profiles';
import type { SoundFrame } from './sound-frame';

/** Several holes that sound on one breath. */
export interface HeardGrip {
  /** Differs from every other grip's of the stream. */
  readonly id: number;
  /** Lowest hole first; two or more. */
  readonly sounds: readonly Sound[];
  /** Seconds. */
  readonly from: number;
  /** Null while it sounds. */
  readonly to: number | null;
  /** dB re full scale. */
  readonly level: number;
}

/** Listens for several holes at once. */
export interface GripListener {
  /** Takes the next samples at the working rate, without the band where it could be taken out. */
  hop(samples: Float64Array): void;
  /** Takes the frame made of what came so far; returns grips that are now sure, or are now read otherwise, or have ended. */
  frame(frame: SoundFrame): readonly HeardGrip[];
  /** Ends what still sounds. */
  end(): readonly HeardGrip[];
  /** Learns the reed of a natural sound from what was heard of it alone, of late: seconds of its beginning and end. */
  teach(sound: Sound, from: number, to: number): void;
}

export interface GripListenerOptions {
  readonly harp: Harp;
  readonly reference?: Hz;
  /** Of the hops, Hz. */
  readonly rate: number;
  /** Samples in a hop. */
  readonly hop: number;
  /** Level below which nothing counts, dB re full scale. */
  readonly gate: number;
  /** Whether a band was taken out of the hops. */
  readonly band?: boolean;
  /** What is known of the reeds already, and is learnt; a harp nobody has heard when absent. */
  readonly profiles?: ReedProfiles;
}

/** Hops from one look to the next: 43 ms. */
const EVERY = 8;
/** A window may begin so long before the breath it is of. Seconds. */
const EARLY = 0.02;
/**
 * How much likelier several holes must be than one, in all windows of a breath together. Less finds no more of those that
 * were played; over a band, less takes what is left of its chords for grips.
 */
const SURE = { alone: 20, overBand: 45 } as const;
/** Where one note is so much likelier than any grip, every second look is enough: nothing costs as much as weighing. */
const SURELY_SINGLE = 30;
/** A breath ends so long before that is seen, seconds; and is as a rule so far below its peak, dB. */
const LATE = 0.012;
const BELOW_PEAK = 2;

/** A window that was looked at, and the time of its last sample in seconds. */
interface Look {
  readonly known: number;
  readonly levels: Float64Array;
}
/** Looks remembered for teaching: nearly three seconds. */
const MOST_LOOKS = 64;
/** A reed has settled so long after its beginning. Seconds. */
const SETTLED = 0.02;

const soundsOf = ({ breath, holes }: GripGuess, harp: Harp): readonly Sound[] =>
  holes.flatMap((hole) =>
    harp.sounds.filter(
      (each) => each.hole === hole && each.breath === breath && each.technique === 'natural',
    ),
  );

const isSame = (one: HeardGrip, other: HeardGrip | null): boolean =>
  one.id === other?.id &&
  one.sounds.length === other.sounds.length &&
  one.sounds.every((sound, i) => sound === other.sounds[i]);

/**
 * Listens for grips in one stream: what windows of a breath say is added up, and the reeds are learnt meanwhile.
 * Throws RangeError on a reference outside 440–446 Hz.
 */
export const createGripListener = (options: GripListenerOptions): GripListener => new Listener(options);

class Listener implements GripListener {
  private readonly harp: Harp;
  private readonly spectrum: SlidingSpectrum;
  private readonly recogniser: GripRecogniser;
  private readonly tally: GripTally;
  private readonly breaths: BreathSpans;
  private readonly past: FramePast;
  /** Seconds of a window, and from one look to the next. */
  private readonly window: number;
  private readonly step: number;
  private readonly sure: number;
  private told: HeardGrip | null = null;
  private id = 0;
  private from = 0;
  private wait = 0;
  private looks: Look[] = [];
  /** When a window was weighed last, seconds. */
  private weighed = 0;

  constructor({ harp, reference, rate, hop, gate, band = false, profiles }: GripListenerOptions) {
    this.harp = harp;
    this.sure = band ? SURE.overBand : SURE.alone;
    this.spectrum = createSlidingSpectrum(rate);
    const known = profiles ?? createReedProfiles(harp, reference);
    this.recogniser = createGripRecogniser(known, this.spectrum.binHz);
    this.tally = createGripTally(this.recogniser);
    this.breaths = createBreathSpans(gate);
    this.window = SPECTRUM_SAMPLES / rate;
    this.step = (EVERY * hop) / rate;
    this.past = createFramePast(this.window);
  }

  hop(samples: Float64Array): void {
    this.spectrum.push(samples);
  }

  frame(frame: SoundFrame): readonly HeardGrip[] {
    const before = this.breaths.now();
    this.past.take(frame);
    let grips: readonly HeardGrip[] = [];
    if (this.breaths.frame(frame)) {
      grips = this.close(this.gripOf(before), frame.known - LATE);
      this.tally.reset();
    }
    const breath = this.breaths.now();
    if (breath === null) return grips;
    if (breath !== before) {
      this.from = breath.from;
      this.wait = 0;
    }
    this.wait -= 1;
    if (this.wait > 0 || frame.known - this.window < breath.from - EARLY) return grips;
    this.wait = EVERY;
    const seen = this.look(breath, frame.known);
    return grips.length === 0 ? seen : [...grips, ...seen];
  }

  end(): readonly HeardGrip[] {
    return this.close(this.gripOf(this.breaths.now()), this.past.latest());
  }

  teach(sound: Sound, from: number, to: number): void {
    for (const { known, levels } of this.looks)
      if (known - this.window > from + SETTLED && known < to) this.recogniser.teach(levels, sound);
  }

  /** The grip of a breath, where it is sure. */
  private gripOf(breath: BreathSpan | null): HeardGrip | null {
    const guess = this.tally.grip(this.sure);
    if (breath === null || guess === null) return null;
    const { id, from } = this;
    return { id, sounds: soundsOf(guess, this.harp), from, to: null, level: breath.peak - BELOW_PEAK };
  }

  /** Ends what was told; or tells at last of a breath too short to have been told of before. */
  private close(last: HeardGrip | null, to: number): readonly HeardGrip[] {
    const ended = last ?? this.told;
    this.told = null;
    this.id += 1;
    return ended === null ? [] : [{ ...ended, to: Math.max(ended.from, to) }];
  }

  private look(breath: BreathSpan, known: number): readonly HeardGrip[] {
    const centre = known - this.window / 2;
    const before = this.gripOf(breath);
    const levels = this.spectrum.levels();
    if (this.looks.length === MOST_LOOKS) this.looks.shift();
    this.looks.push({ known, levels: levels.slice() });
    const since = known - this.weighed;
    if (since < 1.5 * this.step && this.tally.isSingle(SURELY_SINGLE)) return [];
    this.weighed = known;
    if (this.tally.take(levels, this.past.around(centre))) {
      const at = centre - since;
      const ended = this.close(before, at);
      this.from = at;
      return ended;
    }
    const grip = this.gripOf(breath);
    if (grip === null || isSame(grip, this.told)) return [];
    this.told = grip;
    return [grip];
  }
}
