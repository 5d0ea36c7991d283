/**
 * The bank of computed sounds. What is needed first is computed first; playing never waits for a sound: a missing
 * one is replaced by its nearest neighbour or left out, and counted.
 */
import type { SoundAnswer, SoundRequest, Stretch } from './bank-messages';
import { type BankSound, createSoundCache, type FoundSound, type SoundCache } from './sound-cache';
import { modelOf, nameOfKey, type SoundKey } from './sound-key';

/** The part of a worker that the bank uses. */
export interface BankWorker {
  postMessage(request: SoundRequest): void;
  onmessage: ((message: MessageEvent<SoundAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Puts itself between a bank and one of its workers. */
export type WorkerRoute = (worker: BankWorker) => BankWorker;

export interface BankOptions<Samples> {
  readonly sampleRate: number;
  readonly createWorker: () => BankWorker;
  readonly workers: number;
  /** Makes what is handed out of samples, and of where their held part lies, in samples. */
  readonly makeBuffer: (samples: Float32Array<ArrayBuffer>, loop: Stretch | null) => Samples;
  /** Told of what was given up to save memory. */
  readonly onGivenUp?: (samples: Samples) => void;
  /** Seconds a sound is held at most, where that is known beforehand; whole sounds when absent. */
  readonly heldAtMost?: (key: SoundKey) => number;
}

/** What went wrong so far, for tests and for diagnosis. */
export interface BankCounts {
  readonly computed: number;
  readonly substituted: number;
  readonly missing: number;
  readonly failed: readonly string[];
}

/** The computed sounds of a song and what is still being computed, most urgent first. */
export interface Bank<Samples = AudioBuffer> {
  /** Replaces the order of what is to be computed; sounds already there are passed over. */
  want(keys: readonly SoundKey[]): void;
  /** Puts a few keys before everything else. */
  hurry(keys: readonly SoundKey[]): void;
  /** Resolves to true once all keys are there (or cannot be made), to false when `milliseconds` ran out first. */
  ready(keys: readonly SoundKey[], milliseconds: number): Promise<boolean>;
  find(key: SoundKey): FoundSound<Samples> | null;
  counts(): BankCounts;
  bytes(): number;
  dispose(): void;
}

/** About ten minutes of mono sound at 48 kHz: some 200 notes, more than any program needs at a time. */
const CAPACITY_BYTES = 120e6;
/** Requests in flight per worker: enough to keep it busy, few enough to change course quickly. */
const IN_FLIGHT = 2;

/** So many sounds at the head of the queue are about equally urgent: a tenth of a second of work. */
const NEARLY_AS_URGENT = 6;

/** Two workers where page and audio thread leave cores for them. */
export const workersWorthHaving = (): number => (navigator.hardwareConcurrency > 2 ? 2 : 1);

/** Creates an empty bank. Its workers start at once and run until it is disposed of. */
export const createBank = <Samples>(options: BankOptions<Samples>): Bank<Samples> => new WorkerBank(options);

class WorkerBank<Samples> implements Bank<Samples> {
  private readonly sampleRate: number;
  private readonly makeBuffer: BankOptions<Samples>['makeBuffer'];
  private readonly heldAtMost: BankOptions<Samples>['heldAtMost'];
  private readonly cache: SoundCache<Samples>;
  private readonly workers: { readonly worker: BankWorker; busy: number }[];
  private readonly asked = new Set<string>();
  private readonly broken = new Set<string>();
  private readonly waiting = new Set<() => void>();
  private readonly failed: string[] = [];
  private queue: SoundKey[] = [];
  private computed = 0;
  private substituted = 0;
  private missing = 0;

  constructor(options: BankOptions<Samples>) {
    const { sampleRate, createWorker, workers, makeBuffer, heldAtMost, onGivenUp } = options;
    this.cache = createSoundCache(CAPACITY_BYTES, onGivenUp);
    this.sampleRate = sampleRate;
    this.makeBuffer = makeBuffer;
    this.heldAtMost = heldAtMost;
    this.workers = Array.from({ length: workers }, () => {
      const slot = { worker: createWorker(), busy: 0 };
      slot.worker.onmessage = ({ data }) => {
        slot.busy -= 1;
        this.receive(data);
      };
      slot.worker.onerror = (event) => this.fail(event.message || 'the worker could not start');
      return slot;
    });
  }

  want(keys: readonly SoundKey[]): void {
    this.cache.protect(keys);
    this.enqueue(keys);
  }

  hurry(keys: readonly SoundKey[]): void {
    this.enqueue([...keys, ...this.queue]);
  }

  ready(keys: readonly SoundKey[], milliseconds: number): Promise<boolean> {
    const complete = () => keys.every((key) => this.settled(key));
    if (complete()) return Promise.resolve(true);
    return new Promise((resolve) => {
      const finish = (all: boolean) => {
        clearTimeout(timer);
        this.waiting.delete(check);
        resolve(all);
      };
      const check = () => {
        if (complete()) finish(true);
      };
      const timer = setTimeout(() => finish(false), milliseconds);
      this.waiting.add(check);
    });
  }

  find(key: SoundKey): FoundSound<Samples> | null {
    const found = this.cache.find(key);
    if (found === null) this.missing += 1;
    else if (!found.exact) this.substituted += 1;
    return found;
  }

  counts(): BankCounts {
    const { computed, substituted, missing, failed } = this;
    return { computed, substituted, missing, failed: [...failed] };
  }

  bytes(): number {
    return this.cache.bytes();
  }

  dispose(): void {
    this.queue = [];
    for (const { worker } of this.workers) worker.terminate();
  }

  private settled(key: SoundKey): boolean {
    return this.cache.has(key) || this.broken.has(nameOfKey(key));
  }

  private enqueue(keys: readonly SoundKey[]): void {
    const seen = new Set<string>();
    this.queue = keys.filter((key) => {
      const name = nameOfKey(key);
      const needed = !seen.has(name) && !this.settled(key) && !this.asked.has(name);
      seen.add(name);
      return needed;
    });
    this.pump();
  }

  private pump(): void {
    for (const [index, slot] of this.workers.entries()) {
      while (slot.busy < IN_FLIGHT) {
        const key = this.takeFor(index);
        if (key === undefined) return;
        slot.busy += 1;
        this.asked.add(nameOfKey(key));
        const held = this.heldAtMost?.(key);
        slot.worker.postMessage({
          key,
          sampleRate: this.sampleRate,
          ...(held === undefined ? {} : { held }),
        });
      }
    }
  }

  /** The most urgent sound, but for one that is nearly as urgent and for which this worker has most at hand already. */
  private takeFor(worker: number): SoundKey | undefined {
    const near = this.queue.slice(0, NEARLY_AS_URGENT);
    const own = near.findIndex((key) => modelOf(key) % this.workers.length === worker);
    return this.queue.splice(Math.max(0, own), 1)[0];
  }

  private receive(answer: SoundAnswer): void {
    const name = nameOfKey(answer.key);
    this.asked.delete(name);
    if (answer.kind === 'failed') {
      this.broken.add(name);
      this.failed.push(`${name}: ${answer.reason}`);
    } else {
      this.computed += 1;
      this.cache.add(this.soundFrom(answer));
    }
    this.pump();
    for (const check of [...this.waiting]) check();
  }

  private soundFrom({ key, samples, loop, release }: SoundAnswer & { kind: 'sound' }): BankSound<Samples> {
    const seconds = (frames: number) => frames / this.sampleRate;
    // Counted before: what is made of the samples may take them away.
    const bytes = samples.byteLength;
    return {
      key,
      samples: this.makeBuffer(samples, loop),
      bytes,
      loop: loop && { from: seconds(loop.from), to: seconds(loop.to) },
      release,
    };
  }

  private fail(reason: string): void {
    this.failed.push(reason);
  }
}
