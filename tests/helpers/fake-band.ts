import type { Band, BandStatus } from '../../src/audio/band/band';
import type { Playhead } from '../../src/core/arranger/playhead';
import type { Program, Section } from '../../src/core/arranger/program';
import { sectionAt } from '../../src/core/arranger/section-at';
import type { OutsideEvent } from '../../src/core/midi/outside-event';
import type { BandSound } from '../../src/core/song/band-sound';

/** What a band was told that it may be asked to play. */
export interface Prepared {
  readonly program: Program;
  readonly sound: BandSound;
  readonly fromBar: number;
}

/** A band that makes no sound: it remembers what it was asked and is moved by hand. */
export interface FakeBand extends Band {
  readonly asked: string[];
  readonly programs: Program[];
  readonly sounds: BandSound[];
  readonly prepared: Prepared[];
  /** Lets a bar of a section be heard, or so many ticks into it. */
  hear(index: number, bar: number, ticks?: number): void;
  report(status: BandStatus): void;
  /** Tells whoever plays along outside of the page. */
  outside(events: readonly OutsideEvent[]): void;
  /** Says that the page computes the sounds. */
  makeshift(): void;
}

/** @param onPlay the status that answers `play`. */
export const createFakeBand = (onPlay: BandStatus = { kind: 'playing' }): FakeBand => {
  let status: BandStatus = { kind: 'asleep' };
  let playhead: Playhead | null = null;
  const asked: string[] = [];
  const programs: Program[] = [];
  const sounds: BandSound[] = [];
  const prepared: Prepared[] = [];
  const barListeners = new Set<(position: Playhead | null) => void>();
  const statusListeners = new Set<(status: BandStatus) => void>();
  const outsideListeners = new Set<(events: readonly OutsideEvent[]) => void>();
  const makeshiftListeners = new Set<() => void>();
  const report = (next: BandStatus): void => {
    if (JSON.stringify(next) === JSON.stringify(status)) return;
    status = next;
    for (const listener of statusListeners) listener(next);
  };
  const sectionOf = (index: number): Section | null => {
    const program = programs.at(-1);
    return program === undefined ? null : sectionAt(program, index);
  };
  const show = (position: Playhead | null): void => {
    if (position === null && playhead === null) return;
    playhead = position;
    for (const listener of barListeners) listener(position);
  };
  const stop = (): void => {
    show(null);
    if (['playing', 'paused', 'interrupted'].includes(status.kind)) report({ kind: 'ready' });
  };
  return {
    asked,
    programs,
    sounds,
    hear: (index, bar, ticks = 0) => {
      const section = sectionOf(index);
      if (section === null) throw new RangeError(`The program has no section ${index}`);
      show({ section, bar, beat: 0, ticks: (section.chart.bars[bar]?.at ?? 0) + ticks });
    },
    report,
    outside: (events) => {
      for (const listener of outsideListeners) listener(events);
    },
    makeshift: () => {
      for (const listener of makeshiftListeners) listener();
    },
    status: () => status,
    play: async (program, sound, fromBar) => {
      asked.push(`play from ${fromBar}`);
      programs.push(program);
      sounds.push(sound);
      if (status.kind === 'asleep') {
        report({ kind: 'loading' });
        if (onPlay.kind === 'playing') report({ kind: 'ready' });
      }
      report(onPlay);
      return onPlay;
    },
    pause: () => {
      asked.push('pause');
      if (status.kind === 'playing') report({ kind: 'paused' });
    },
    prepare: async (program, sound, fromBar) => {
      prepared.push({ program, sound, fromBar });
    },
    prepared,
    resume: async () => {
      asked.push('resume');
      if (status.kind === 'paused') report({ kind: 'playing' });
      return status;
    },
    stop: () => {
      asked.push('stop');
      stop();
    },
    change: (program) => {
      asked.push('change');
      programs.push(program);
    },
    seek: (bar) => asked.push(`seek ${bar}`),
    setSound: (sound) => sounds.push(sound),
    audition: async (part, midi, seconds, glideFrom) => {
      if (seconds === 0) return void asked.push(`end ${part} ${midi}`);
      asked.push(`audition ${part} ${midi}${glideFrom === 0 ? '' : ` from ${glideFrom} above`}`);
    },
    playhead: () => playhead,
    playheadAt: () => playhead,
    lend: async () => {
      asked.push('lend');
      const giveBack = (): void => {
        asked.push('give back');
      };
      return { context: {} as AudioContext, output: {} as AudioNode, giveBack };
    },
    upcoming: () => (playhead === null ? null : sectionOf(playhead.section.index + 1)),
    onBar: (listener) => {
      barListeners.add(listener);
      return () => barListeners.delete(listener);
    },
    onStatus: (listener) => {
      statusListeners.add(listener);
      return () => statusListeners.delete(listener);
    },
    onOutside: (listener) => {
      outsideListeners.add(listener);
      return () => outsideListeners.delete(listener);
    },
    onMakeshift: (listener) => {
      makeshiftListeners.add(listener);
      return () => makeshiftListeners.delete(listener);
    },
    dispose: () => {
      asked.push('dispose');
      stop();
      report({ kind: 'asleep' });
    },
  };
};
