/** A hall in which a player of the reed model plays over what the page plays, into the page's real ear. */
import type { Browser, Page } from 'playwright-core';
import type { Harp } from '../../src/core/harp/harp';
import { type LineKind, planLine } from './hearing/lines';
import { perform } from './hearing/perform';
import { createReeds } from './hearing/reed';
import { activeLevel } from './hearing/space';
import type { TrueNote } from './hearing/take';
import { wavText } from './wav-text';

const SAMPLE_RATE = 48_000;

/** Level of the harp while it sounds, dB re full scale: the band comes back some 6 dB below it. */
export const HARP_DB = -17;

/** What the player can do, as WAV files in base64, with the truth about the line. */
export interface HallPlayer {
  readonly line: string;
  /** One note, tongued as the line’s are, which begins with the file: played along with each click of a calibration. */
  readonly along: string;
  readonly notes: readonly TrueNote[];
}

const fileOf = (samples: Float32Array): string =>
  wavText(samples, 10 ** (HARP_DB / 20) / activeLevel(samples, SAMPLE_RATE), SAMPLE_RATE);

/** A player of a harp: a line of so many seconds in second position, and a note to calibrate with. */
export const hallPlayer = (
  harp: Harp,
  seed: number,
  seconds: number,
  kind: LineKind = 'line',
): HallPlayer => {
  const player = { harp, reference: 440, reeds: createReeds(seed), seed };
  const options = { seconds, sampleRate: SAMPLE_RATE, tail: 0.35 };
  const line = perform(planLine({ kind, harp, position: 2, seconds, seed }), player, options);
  const [first, ...rest] = planLine({ kind: 'naturals', harp, position: 2, seconds: 2, seed });
  const plan =
    first === undefined
      ? []
      : [{ ...first, sounds: (rest[4] ?? first).sounds, length: 0.35, attack: 'tongue' as const }];
  const single = perform(plan, player, { ...options, seconds: 2 });
  const from = Math.round((single.notes[0]?.from ?? 0) * SAMPLE_RATE);
  return {
    line: fileOf(line.samples),
    along: fileOf(single.samples.slice(from, from + SAMPLE_RATE / 2)),
    notes: line.notes,
  };
};

/** Who plays in a hall. */
export interface Hall extends Pick<HallPlayer, 'line' | 'along'> {
  /** Seconds that the player is late. */
  readonly late: number;
  /** Seconds from the page's output through the air to its microphone. */
  readonly way: number;
  /** Seconds from where the band's first sound after `arm` is begun to the player's line. */
  readonly enters: number;
}

/** What the hall tells the test. */
interface HallNow {
  /** The line is played over what begins next. */
  arm(): void;
  /** Mean power of what the page sent while the line was played. */
  leak(): number;
}

/**
 * A hall before the page's scripts run: what the page plays comes back in through the microphone, and with it a player
 * who plays along with every click, and a line over the band. Nothing else of the page is replaced: stream, worklet and
 * workers are its own.
 */
export const inHall = async (page: Page, hall: Hall): Promise<void> => {
  await page.addInitScript(({ line, along, late, way, enters }: Hall) => {
    const CLICK_SECONDS = 0.04;
    const connect = AudioNode.prototype.connect as (...args: unknown[]) => unknown;
    const start = AudioBufferSourceNode.prototype.start;
    let air: GainNode | null = null;
    let mouth: DelayNode | null = null;
    let files: readonly AudioBuffer[] = [];
    // Before anything is measured: it takes a third of a second.
    const bytes = [line, along].map((file) => Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0)));
    let armed = false;
    let [squares, count, until] = [0, 0, 0];
    AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
      if (args[0] instanceof AudioDestinationNode && this.context instanceof AudioContext) {
        air ??= this.context.createGain();
        connect.call(this, air);
      }
      return connect.apply(this, args);
    } as typeof AudioNode.prototype.connect;
    const play = (file: AudioBuffer | undefined, when: number): void => {
      if (mouth === null || file === undefined) return;
      const source = mouth.context.createBufferSource();
      source.buffer = file;
      connect.call(source, mouth);
      start.call(source, when);
    };
    AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, when = 0, ...rest) {
      const isClick =
        this.buffer?.length === Math.round(CLICK_SECONDS * this.context.sampleRate) &&
        this.buffer.numberOfChannels === 1;
      if (armed && when > 0) {
        armed = false;
        play(files[0], when + enters + late);
        until = when + enters + (files[0]?.duration ?? 0);
        [squares, count] = [0, 0];
      } else if (isClick) play(files[1], when + late);
      return start.call(this, when, ...rest);
    };
    const now: HallNow = {
      arm: () => {
        armed = true;
      },
      leak: () => squares / Math.max(1, count),
    };
    Object.assign(window, { hall: now });
    navigator.mediaDevices.getUserMedia = async () => {
      if (air === null || !(air.context instanceof AudioContext)) throw new DOMException('', 'NotFoundError');
      const { context } = air;
      const ear = context.createMediaStreamDestination();
      mouth = context.createDelay(1);
      mouth.delayTime.value = way;
      connect.call(air, mouth);
      connect.call(mouth, ear);
      files = await Promise.all(bytes.map((each) => context.decodeAudioData(each.buffer)));
      const meter = context.createAnalyser();
      connect.call(air, meter);
      const block = new Float32Array(meter.fftSize);
      setInterval(() => {
        if (context.currentTime > until) return;
        meter.getFloatTimeDomainData(block);
        for (const value of block) squares += value * value;
        count += block.length;
      }, 100);
      return ear.stream;
    };
  }, hall);
};

/** dB of the band in the hall, re the harp. */
export const leakInHall = async (page: Page): Promise<number> => {
  const power = await page.evaluate(() => (window as unknown as { hall: HallNow }).hall.leak());
  return 10 * Math.log10(power) - HARP_DB;
};

/** The player's line is played over what the band begins with next. */
export const armHall = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { hall: HallNow }).hall.arm());

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  /** Microseconds of the thread's own clock. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * The longest tasks of the page's thread while something is done, ms, longest first: by the thread's own clock, which
 * stands while the machine is busy with something else, and by the wall's.
 */
export const tasksWhile = async (
  browser: Browser,
  page: Page,
  run: () => Promise<void>,
): Promise<{ readonly thread: readonly number[]; readonly wall: readonly number[] }> => {
  await page.evaluate(() => performance.mark('here'));
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
  await run();
  const bytes = await browser.stopTracing();
  const { traceEvents }: { traceEvents: readonly TraceEvent[] } = JSON.parse(bytes.toString());
  const place = ({ pid, tid }: TraceEvent): string => `${pid}.${tid}`;
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(place),
  );
  const tasks = traceEvents.filter(
    (event) => event.ph === 'X' && /RunTask$/.test(event.name) && mains.has(place(event)),
  );
  const longest = (of: (event: TraceEvent) => number | undefined): readonly number[] =>
    tasks
      .map((event) => (of(event) ?? 0) / 1000)
      .sort((a, b) => b - a)
      .slice(0, 5);
  return { thread: longest(({ tdur }) => tdur), wall: longest(({ dur }) => dur) };
};
