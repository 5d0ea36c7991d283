/** Sends everything that passes to the page, in blocks, each with the frame it began at. */
declare const currentFrame: number;
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare const registerProcessor: (name: string, processor: new () => AudioWorkletProcessor) => void;

const BLOCK = 4096;

class RecorderProcessor extends AudioWorkletProcessor {
  private block = new Float32Array(BLOCK);
  private filled = 0;

  process([input]: readonly Float32Array[][]): boolean {
    const [left, right] = input;
    const length = 128;
    for (let index = 0; index < length; index += 1) {
      this.block[this.filled + index] = left ? (left[index] + (right ?? left)[index]) / 2 : 0;
    }
    this.filled += length;
    if (this.filled === BLOCK) {
      const from = currentFrame + length - BLOCK;
      this.port.postMessage({ from, samples: this.block }, [this.block.buffer]);
      this.block = new Float32Array(BLOCK);
      this.filled = 0;
    }
    return true;
  }
}

registerProcessor('recorder', RecorderProcessor);
