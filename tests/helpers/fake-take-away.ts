import type { TakeAwayDevices } from '../../src/app/export/export-audio';
import type { PcmForm } from '../../src/audio/export/answer-pcm';
import type { Encoding } from '../../src/audio/export/compression';
import { openPcm, type PcmEncoder } from '../../src/audio/export/pcm-file';
import type { SoundPreparation } from '../../src/audio/export/prepare-sounds';
import type { RenderRequest } from '../../src/audio/export/render-offline';
import type { Writing } from '../../src/storage/kept-values';
import type { Sharing } from '../../src/storage/share-sheet';

export interface FakeFile {
  readonly name: string;
  readonly type: string;
  bytes: number[];
  fate: 'open' | 'saved' | 'discarded';
}

/** What makes files in tests: a renderer that hums and can be held, a saver that keeps all in memory. */
export interface FakeTakeAway extends TakeAwayDevices {
  readonly requests: RenderRequest[];
  /** What was to be made ready. */
  readonly prepared: SoundPreparation[];
  readonly files: FakeFile[];
  /** Sounds each rendering says it could not make. */
  missing: number;
  encodings: readonly Encoding[];
  /** The platform's sheet: whether it takes what was saved, what it comes to, what was put into it. */
  sheet: { takes: boolean; readonly comesTo: Sharing; readonly shared: string[] };
  /** Answers every writing while set. */
  refuse: Writing | null;
  /** Thrown when the renderer is fetched, and by rendering, while set. */
  loadError: Error | null;
  renderError: Error | null;
  /** Thrown by compressing while set. */
  encoderError: Error | null;
  /** Rendering stops before each piece until let go. */
  hold(): void;
  letGo(): void;
}

/** Frames of one piece and pieces of one rendering. */
export const FAKE_PIECE = 100;
export const FAKE_PIECES = 4;

export const FAKE_ENCODING: Encoding = {
  id: 'opus',
  name: 'Opus in Ogg',
  extension: 'opus',
  mediaType: 'audio/ogg; codecs=opus',
  sampleRate: 48000,
  bitrate: 128_000,
};

/** On the page itself, as where no worker can be had. */
const openPcmHere = (form: PcmForm): PcmEncoder =>
  openPcm(form, () => {
    throw new Error('no worker');
  });

const hum = () => new Float32Array(FAKE_PIECE).fill(0.5);

/** Devices that make files in memory. */
export const createFakeTakeAway = (): FakeTakeAway => {
  let gate: Promise<void> = Promise.resolve();
  let open: () => void = () => undefined;
  const written: Writing = { kind: 'written' };

  const render = async (request: RenderRequest) => {
    if (request.sections.length === 0) throw new RangeError('no sections');
    devices.requests.push(request);
    for (let piece = 1; piece <= FAKE_PIECES; piece += 1) {
      await gate;
      if (devices.renderError) throw devices.renderError;
      request.signal?.throwIfAborted();
      await request.onChunk(hum(), hum());
      request.onProgress?.(piece / FAKE_PIECES);
    }
    const counts = { computed: 1, substituted: 0, missing: devices.missing, failed: [] };
    return { frames: FAKE_PIECE * FAKE_PIECES, sampleRate: request.sampleRate, notes: 1, counts };
  };

  const fileNamed = (name: string, type: string): FakeFile => {
    const file: FakeFile = { name, type, bytes: [], fate: 'open' };
    devices.files.push(file);
    return file;
  };

  const devices: FakeTakeAway = {
    requests: [],
    prepared: [],
    files: [],
    missing: 0,
    encodings: [],
    sheet: { takes: false, comesTo: { kind: 'shared' }, shared: [] },
    refuse: null,
    loadError: null,
    renderError: null,
    encoderError: null,
    hold: () => {
      gate = new Promise((resolve) => {
        open = resolve;
      });
    },
    letGo: () => open(),
    prepareSounds: async (preparation) => void devices.prepared.push(preparation),
    loadRenderer: async () => {
      if (devices.loadError) throw devices.loadError;
      return render;
    },
    saver: {
      give: async (name, type, bytes) => {
        if (devices.refuse) return devices.refuse;
        Object.assign(fileNamed(name, type), { bytes: [...bytes], fate: 'saved' });
        return written;
      },
      open: async (name, type) => {
        const file = fileNamed(name, type);
        const closed: Writing = { kind: 'refused', detail: `${name} is closed` };
        return {
          write: async (bytes) => {
            if (devices.refuse) return devices.refuse;
            if (file.fate !== 'open') return closed;
            file.bytes.push(...bytes);
            return written;
          },
          rewriteStart: async (bytes) => {
            if (file.fate !== 'open') return closed;
            file.bytes.splice(0, bytes.length, ...bytes);
            return written;
          },
          save: async () => {
            if (file.fate !== 'open') return closed;
            file.fate = 'saved';
            return written;
          },
          discard: async () => {
            file.fate = 'discarded';
          },
        };
      },
    },
    share: {
      begin: () => undefined,
      takes: () => devices.sheet.takes,
      offer: async () => {
        devices.sheet.shared.push(...devices.files.map(({ name }) => name));
        return devices.sheet.comesTo;
      },
      offerLink: async (url) => {
        devices.sheet.shared.push(url);
        return devices.sheet.comesTo;
      },
    },
    loadPcm: async () => openPcmHere,
    loadCompressor: async () => ({
      offered: async () => devices.encodings,
      open: ({ write, tags }) => ({
        add: async (left) => {
          if (devices.encoderError) throw devices.encoderError;
          await write(Uint8Array.of(left.length));
        },
        end: () => write(new TextEncoder().encode(tags.title)),
        close: () => undefined,
      }),
    }),
  };
  return devices;
};
