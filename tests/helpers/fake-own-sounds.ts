import type { OwnSoundDevices } from '../../src/app/soundfont/soundfont';
import type { Opening } from '../../src/audio/soundfont/soundfont-route';
import type { FileReading } from '../../src/storage/kept-file';
import type { Writing } from '../../src/storage/kept-values';

/** What plays and keeps own sounds in tests: it opens whatever it is told to, and keeps a file in memory. */
export interface FakeOwnSounds extends OwnSoundDevices {
  /** What every opening answers; files are numbered from 1. */
  answer: Omit<Extract<Opening, { kind: 'opened' }>, 'source'> | Extract<Opening, { kind: 'refused' }>;
  /** Answers every writing while set. */
  refuse: Writing | null;
  readonly asked: string[];
  kept: FileReading;
  /** The file in use breaks down. */
  lose(detail: string): void;
}

/** Devices with a small band to open and nothing kept. */
export const createFakeOwnSounds = (): FakeOwnSounds => {
  const listeners = new Set<(detail: string) => void>();
  let sources = 0;
  let inUse = false;
  const writing = (): Writing => devices.refuse ?? { kind: 'written' };
  const devices: FakeOwnSounds = {
    answer: { kind: 'opened', voices: ['piano', 'organ', 'upright-bass', 'sticks'] },
    refuse: null,
    asked: [],
    kept: { kind: 'nothing' },
    lose: (detail) => {
      if (!inUse) return;
      inUse = false;
      for (const listener of listeners) listener(detail);
    },
    sounds: {
      open: async (file) => {
        devices.asked.push(`open ${file.size}`);
        if (devices.answer.kind === 'refused') return devices.answer;
        inUse = true;
        sources += 1;
        return { ...devices.answer, source: sources };
      },
      close: () => {
        devices.asked.push('close');
        inUse = false;
      },
      onLost: (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
      counts: () => ({ rendered: 0, absent: 0, failed: 0 }),
      route: (worker) => worker,
    },
    shelf: {
      read: async () => devices.kept,
      write: async (name, file) => {
        const answer = writing();
        if (answer.kind === 'written') devices.kept = { kind: 'file', name, file };
        return answer;
      },
      forget: async () => {
        const answer = writing();
        if (answer.kind === 'written') devices.kept = { kind: 'nothing' };
        return answer;
      },
    },
  };
  return devices;
};
