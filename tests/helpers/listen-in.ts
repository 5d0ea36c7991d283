import type { Page } from 'playwright-core';

/** What left the page's loudspeaker output, from the first context's first sample on. */
export interface Heard {
  readonly sampleRate: number;
  /** Frame of the first sample recorded. */
  readonly from: number;
  readonly samples: Float32Array;
}

/**
 * Taps everything the page connects to its audio output, before the page's own scripts run. Needs a context that
 * bypasses the security policy, as the recorder is no file of the page.
 */
export const listenIn = async (page: Page): Promise<void> => {
  await page.addInitScript(() => {
    const recorder = `registerProcessor('tap', class extends AudioWorkletProcessor {
      process([input]) { if (input[0]) this.port.postMessage([currentFrame, input[0].slice()]); return true; } })`;
    const blocks: [number, Float32Array][] = [];
    const taps = new WeakMap<BaseAudioContext, Promise<AudioWorkletNode>>();
    const connect = AudioNode.prototype.connect as (...args: unknown[]) => unknown;
    const tapOf = (context: AudioContext): Promise<AudioWorkletNode> => {
      const known = taps.get(context);
      if (known) return known;
      const url = URL.createObjectURL(new Blob([recorder], { type: 'text/javascript' }));
      const made = context.audioWorklet.addModule(url).then(() => {
        const tap = new AudioWorkletNode(context, 'tap', {
          numberOfOutputs: 0,
          channelCount: 1,
          channelCountMode: 'explicit',
        });
        tap.port.onmessage = ({ data }) => blocks.push(data);
        return tap;
      });
      taps.set(context, made);
      return made;
    };
    AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
      if (args[0] instanceof AudioDestinationNode && this.context instanceof AudioContext) {
        void tapOf(this.context).then((tap) => connect.call(this, tap));
        Object.assign(window, { tappedContext: this.context });
      }
      return connect.apply(this, args);
    } as typeof AudioNode.prototype.connect;
    Object.assign(window, { tappedBlocks: blocks });
  });
};

/** Takes the recording so far. */
export const takeRecording = async (page: Page): Promise<Heard> => {
  const { sampleRate, from, base64 } = await page.evaluate(() => {
    const { tappedBlocks, tappedContext } = window as unknown as {
      tappedBlocks: [number, Float32Array][];
      tappedContext: AudioContext;
    };
    const first = tappedBlocks[0]?.[0] ?? 0;
    const last = tappedBlocks.at(-1);
    const all = new Float32Array(last ? last[0] + last[1].length - first : 0);
    for (const [frame, block] of tappedBlocks) all.set(block, frame - first);
    const bytes = new Uint8Array(all.buffer);
    let text = '';
    for (let i = 0; i < bytes.length; i += 32768)
      text += String.fromCharCode(...bytes.subarray(i, i + 32768));
    return { sampleRate: tappedContext.sampleRate, from: first, base64: btoa(text) };
  });
  const bytes = Buffer.from(base64, 'base64');
  return {
    sampleRate,
    from,
    samples: new Float32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength / 4),
  };
};

/** Times of attacks in seconds: where the peak of 2 ms rises above a tenth of the loudest after 80 ms below it. */
export const attacksOf = ({ samples, sampleRate }: Heard): readonly number[] => {
  const hop = Math.round(sampleRate * 0.002);
  let loudest = 0;
  for (const sample of samples) loudest = Math.max(loudest, Math.abs(sample));
  const attacks: number[] = [];
  let quietSince = 0;
  for (let at = 0; at < samples.length; at += hop) {
    const first = samples.subarray(at, at + hop).findIndex((sample) => Math.abs(sample) > loudest * 0.1);
    if (first < 0) continue;
    if (attacks.length === 0 || at - quietSince > sampleRate * 0.08) attacks.push((at + first) / sampleRate);
    quietSince = at + hop;
  }
  return attacks;
};

/** Loudest sample between two times, in seconds from the recording's start. */
export const peakBetween = ({ samples, sampleRate }: Heard, from: number, to: number): number => {
  let peak = 0;
  for (const sample of samples.subarray(Math.round(from * sampleRate), Math.round(to * sampleRate))) {
    peak = Math.max(peak, Math.abs(sample));
  }
  return peak;
};
