/**
 * Sends everything that passes to the page, in blocks, each with the frame it began at by its own count and by the
 * scope's clock, which stands still for moments in which the page is just changing the graph.
 */
declare const currentFrame: number;
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare const registerProcessor: (name: string, processor: new () => AudioWorkletProcessor) => void;

const BLOCK = 4096;

class RecorderProcessor extends AudioWorkletProcessor {
  private block = new Float32Array(BLOCK);
  private filled = 0;
  private frame = 0;

  process([input]: readonly Float32Array[][], [output]: readonly Float32Array[][]): boolean {
    const [left, right] = input;
    const quantum = output[0].length;
    if (left) {
      const side = right ?? left;
      output[0].set(left);
      output[1].set(side);
      for (let index = 0; index < quantum; index += 1) {
        this.block[this.filled + index] = (left[index] + side[index]) / 2;
      }
    }
    this.filled += quantum;
    if (this.filled === BLOCK) this.send(currentFrame + quantum - BLOCK);
    return true;
  }

  private send(clock: number): void {
    this.port.postMessage({ from: this.frame, samples: this.block, clock }, [this.block.buffer]);
    this.frame += BLOCK;
    this.block = new Float32Array(BLOCK);
    this.filled = 0;
  }
}

registerProcessor('recorder', RecorderProcessor);
