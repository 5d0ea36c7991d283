import type { BarRange } from '../../core/chart/chart';
import type { OwnChart } from '../../core/chart-text/own-chart';
import type { FeelId } from '../../core/feels/feels';
import type { Tuning } from '../../core/harp/harp';
import type { OwnedHarp } from '../../core/harp/harp-case';
import type { PartId } from '../../core/score/score';
import type { Channel } from '../../core/settings/mix';
import type { Settings } from '../../core/settings/settings';
import { addTap, tappedTempo } from '../../core/settings/tap-tempo';
import { parseTempo } from '../../core/settings/tempo';
import { withTake } from '../../core/song/another-take';
import { withOwnChart } from '../../core/song/chart-choices';
import {
  withFeel,
  withForm,
  withHarp,
  withHarpKey,
  withPosition,
  withSongKey,
  withTuning,
} from '../../core/song/key-coupling';
import type { Bpm, EpochMs, PitchClass } from '../../core/theory/units';
import { orElse } from './or-else';

/** What the page can ask for: choices. */
export interface ChoiceCommands {
  choose(change: Partial<Settings>): void;
  chooseSongKey(key: PitchClass): void;
  chooseHarpKey(key: PitchClass): void;
  choosePosition(position: number): void;
  chooseTuning(tuning: Tuning): void;
  /** Takes a harp from the case: the position stays, or, with the song pinned, the song. */
  takeHarp(harp: OwnedHarp): void;
  chooseForm(id: string): void;
  chooseFeel(id: FeelId): void;
  /** Takes a typed tempo; returns a sentence when it cannot be used. */
  typeTempo(text: string): string | null;
  nudgeTempo(by: number): void;
  tap(now: EpochMs): void;
  setChannel(part: PartId, change: Partial<Channel>): void;
  setMaster(gain: number): void;
  repeat(range: BarRange | null): void;
  /** Another take: same choices, other fills and lines. */
  newTake(): void;
}

interface Parts {
  /** Carries a change out, everything that depends on it included. */
  readonly change: (make: (settings: Settings) => Settings) => void;
  readonly newSeed: () => number;
  /** A saved chart of the player's own; null where none has the id. */
  readonly ownChart: (id: string) => OwnChart | null;
  /** Told what a choice made of the settings where it may ask for another harp. */
  readonly onSwap: (before: Settings, after: Settings) => void;
  /** Told that the player has chosen the harp. */
  readonly onHarp: () => void;
}

/** Feels tried one after another: the tempo chosen before the first, and what the last one left on the stand. */
interface FeelWalk {
  readonly chosen: Bpm;
  readonly feel: FeelId;
  readonly tempo: Bpm;
}

/** Feels are tried one after another: a tempo that one of them had no room for comes back with the next that has. */
const createFeelChoice = (change: Parts['change']): ChoiceCommands['chooseFeel'] => {
  let walk: FeelWalk | null = null;
  return (id) => {
    const before = walk;
    change((settings) => {
      const goesOn = before?.feel === settings.style.feel && before.tempo === settings.tempo;
      const chosen = goesOn ? before.chosen : settings.tempo;
      const after = withFeel(settings, id, chosen);
      walk = { chosen, feel: id, tempo: after.tempo };
      return after;
    });
  };
};

/** The commands that change settings. */
export const createChoiceCommands = (parts: Parts): ChoiceCommands => {
  const { change, newSeed, ownChart, onSwap, onHarp } = parts;
  const swap = (make: (settings: Settings) => Settings): void =>
    change((settings) => {
      const after = make(settings);
      onSwap(settings, after);
      return after;
    });
  const take = (make: (settings: Settings) => Settings): void => {
    onHarp();
    change(make);
  };
  let taps: readonly EpochMs[] = [];
  return {
    choose: (fields) => change((settings) => ({ ...settings, ...fields })),
    chooseSongKey: (key) => swap((settings) => withSongKey(settings, key)),
    chooseHarpKey: (key) => take((settings) => ({ ...withHarpKey(settings, key), askHarp: false })),
    choosePosition: (position) => swap((settings) => withPosition(settings, position)),
    chooseTuning: (tuning) => change((settings) => withTuning(settings, tuning)),
    takeHarp: (harp) => take((settings) => withHarp(settings, harp)),
    chooseForm: (id) => {
      const own = ownChart(id);
      swap((settings) =>
        orElse(
          () => (own === null ? withForm(settings, id) : withOwnChart(settings, own)),
          () => withForm(settings, id),
        ),
      );
    },
    chooseFeel: createFeelChoice(change),
    typeTempo: (text) => {
      const tempo = parseTempo(text);
      if (typeof tempo === 'string') return tempo;
      change((settings) => ({ ...settings, tempo }));
      return null;
    },
    nudgeTempo: (by) =>
      change((settings) => {
        const tempo = parseTempo(String(Math.round(settings.tempo + by)));
        return typeof tempo === 'string' ? settings : { ...settings, tempo };
      }),
    tap: (now) => {
      taps = addTap(taps, now);
      const tempo = tappedTempo(taps);
      if (tempo !== null) change((settings) => ({ ...settings, tempo }));
    },
    setChannel: (part, fields) =>
      change((settings) => {
        const channels = {
          ...settings.mix.channels,
          [part]: { ...settings.mix.channels[part], ...fields },
        };
        return { ...settings, mix: { ...settings.mix, channels } };
      }),
    setMaster: (master) => change((settings) => ({ ...settings, mix: { ...settings.mix, master } })),
    repeat: (range) => change((settings) => ({ ...settings, plan: { ...settings.plan, repeat: range } })),
    newTake: () => change((settings) => withTake(settings, newSeed())),
  };
};
