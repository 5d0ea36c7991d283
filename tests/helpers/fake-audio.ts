/** Just enough of Web Audio to see what a player schedules: nodes that write down what they are told. */

type Call = readonly [name: string, ...values: readonly number[]];

/** A parameter that remembers its automation. */
export class FakeParam {
  value = 1;
  readonly calls: Call[] = [];
  setValueAtTime(value: number, at: number): this {
    this.calls.push(['set', value, at]);
    return this;
  }
  linearRampToValueAtTime(value: number, at: number): this {
    this.calls.push(['ramp', value, at]);
    return this;
  }
  setTargetAtTime(value: number, at: number, constant: number): this {
    this.calls.push(['target', value, at, constant]);
    return this;
  }
  exponentialRampToValueAtTime(value: number, at: number): this {
    this.calls.push(['glide', value, at]);
    return this;
  }
  cancelScheduledValues(from: number): this {
    const kept = this.calls.filter((call) => (call[2] ?? 0) < from);
    this.calls.length = 0;
    this.calls.push(...kept);
    return this;
  }
  /** The value at a time that follows from the automation. */
  at(time: number): number {
    let value = this.value;
    let since = 0;
    let approach: { readonly target: number; readonly constant: number } | null = null;
    const now = (when: number): number =>
      approach
        ? approach.target + (value - approach.target) * Math.exp(-(when - since) / approach.constant)
        : value;
    for (const [name, target = 0, at = 0, constant = 1] of this.calls) {
      if (at > time) {
        return name === 'ramp' ? value + ((target - value) * (time - since)) / (at - since) : now(time);
      }
      value = name === 'target' ? now(at) : target;
      since = at;
      approach = name === 'target' ? { target, constant } : null;
    }
    return now(time);
  }
}

class FakeNode {
  connected = true;
  connect(): void {}
  disconnect(): void {
    this.connected = false;
  }
}

/** A buffer source that remembers when it starts and stops. */
export class FakeSource extends FakeNode {
  buffer: unknown = null;
  loop = false;
  loopStart = 0;
  loopEnd = 0;
  onended: (() => void) | null = null;
  readonly playbackRate = new FakeParam();
  startedAt: number | null = null;
  offset = 0;
  stopAt: number | null = null;
  start(at: number, offset: number): void {
    this.startedAt = at;
    this.offset = offset;
  }
  stop(at = 0): void {
    this.stopAt = at;
  }
}

class FakeGain extends FakeNode {
  readonly gain = new FakeParam();
}

/** A context whose time is moved by hand. */
export class FakeAudioContext {
  currentTime = 0;
  readonly sampleRate = 48_000;
  readonly sources: FakeSource[] = [];
  readonly gains: FakeGain[] = [];
  createBufferSource(): FakeSource {
    const source = new FakeSource();
    this.sources.push(source);
    return source;
  }
  createGain(): FakeGain {
    const gain = new FakeGain();
    this.gains.push(gain);
    return gain;
  }
}
