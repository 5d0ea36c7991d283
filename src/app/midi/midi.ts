import { keyAt } from '../../core/chart/key-at';
import type { FitChord } from '../../core/fit/fit';
import { fitAlone } from '../../core/fit/fit-alone';
import { DRUM_CHANNEL, heldAfter, isChordKey } from '../../core/midi/keyboard';
import { type MidiMessage, readMidi } from '../../core/midi/midi-message';
import { nameChord } from '../../core/midi/name-chord';
import {
  actionOf,
  type ControlsDown,
  type PedalAction,
  type PedalSign,
  pressOf,
  withPedal,
} from '../../core/midi/pedals';
import type { MidiChoice } from '../../core/settings/outside-settings';
import type { MidiBytes, MidiPorts, MidiStatus } from '../../midi/midi-ports';
import type { SetRunCommands } from '../book/set-run';
import type { EarCommands } from '../ear/ear';
import type { ChoiceCommands } from '../song/choice-commands';
import type { Join, Stand } from '../song/feature';
import type { PlayCommands } from '../song/play-commands';
import type { Song } from '../song/song-state';
import { createFollowChords, type FollowChords } from './follow-chords';
import { createHarpKeys, type Moment } from './harp-keys';
import { createMidiOut } from './midi-out';
import type { MidiState } from './midi-state';
import { midiNotice } from './midi-words';

/** What the page can ask for about keyboards and pedals. */
export interface MidiCommands {
  /** Asks the browser for them, or lets them go. */
  listenToMidi(on: boolean): Promise<void>;
  chooseMidi(change: Partial<Pick<MidiChoice, 'use' | 'split' | 'out' | 'to' | 'follow'>>): void;
  /** The next switch pressed is for this action; null asks for none. */
  learnPedal(action: PedalAction | null): void;
  forgetPedal(action: PedalAction): void;
}

/** What pedals ask of the stand. */
type Asks = Pick<SetRunCommands, 'nextSong' | 'previousSong'> &
  Pick<PlayCommands, 'toggle' | 'stop' | 'pause' | 'moveBy'> &
  Pick<ChoiceCommands, 'repeat'> &
  Pick<EarCommands, 'hearing'>;

type MidiStand = Stand<MidiState & Song, Asks>;

/** Carries out what a pedal asks for. */
const carryOut = (action: PedalAction, { store, ask }: MidiStand): void => {
  const commands = ask();
  const { settings, now } = store.getState();
  const bar = now.formBar ?? 0;
  const orders: Readonly<Record<PedalAction, () => void>> = {
    play: commands.toggle,
    stop: commands.stop,
    pause: commands.pause,
    'next song': commands.nextSong,
    'previous song': commands.previousSong,
    'next bar': () => commands.moveBy(1),
    'previous bar': () => commands.moveBy(-1),
    repeat: () => commands.repeat(settings.plan.repeat === null ? { from: bar, to: bar } : null),
  };
  orders[action]();
};

/** Shows the chord that keys of the chord hand hold. */
const createHeldChord = (
  { store }: MidiStand,
  set: (part: Partial<MidiState['midi']>) => void,
  onHold: FollowChords['hold'],
) => {
  let held: ReadonlySet<number> = new Set();
  const fitOf = (keys: readonly number[]): FitChord | null => {
    const { now, settings } = store.getState();
    const { chart, harp } = now.tune;
    const chord = nameChord(keys, keyAt(chart, now.bar).tonic);
    return chord && fitAlone(chord, { chart, harp, technique: settings.technique }, now.bar);
  };
  const show = (): void => {
    const { use, split } = store.getState().settings.midi;
    const keys = [...held].filter((key) => isChordKey(key, use, split)).sort((a, b) => a - b);
    if (keys.join() === store.getState().midi.held.join()) return;
    const fit = fitOf(keys);
    set({ held: keys, fit });
    onHold(keys, fit?.chord ?? null);
  };
  let { tune } = store.getState().now;
  /** A held chord means something else on another harp or in another key. */
  const leave = store.subscribe(({ now, midi }) => {
    if (now.tune === tune) return;
    tune = now.tune;
    if (midi.held.length > 0) set({ fit: fitOf(midi.held) });
  });
  return {
    hear: (message: MidiMessage) => {
      held = heldAfter(held, message);
      show();
    },
    letGo: () => {
      held = new Set();
      show();
    },
    dispose: leave,
  };
};

/** Reads keys and pedals as they come. */
const createListening = (stand: MidiStand, change: (make: Partial<MidiChoice>) => void) => {
  const { store } = stand;
  const set = (part: Partial<MidiState['midi']>): void =>
    store.setState(({ midi }) => ({ midi: { ...midi, ...part } }));
  const harpKeys = createHarpKeys(stand);
  const follow = createFollowChords(stand);
  const chord = createHeldChord(stand, set, (keys, named) => follow.hold(keys, named));
  let down: ControlsDown = new Set();
  /** Whether a press was one of a pedal, or is to be one. */
  const takesPress = (sign: PedalSign): boolean => {
    const { settings, midi } = store.getState();
    const { pedals } = settings.midi;
    if (midi.learning !== null) {
      set({ learning: null });
      change({ pedals: withPedal(pedals, { ...sign, action: midi.learning }) });
      return true;
    }
    const action = actionOf(pedals, sign);
    if (action !== null) carryOut(action, stand);
    return action !== null;
  };
  const hear = (message: MidiMessage, when: Moment): void => {
    const pressed = pressOf(message, down);
    down = pressed.down;
    if (pressed.sign !== null && takesPress(pressed.sign)) return;
    chord.hear(message);
    const { use, split } = store.getState().settings.midi;
    if (message.kind === 'off') harpKeys.release(message.key, when);
    if (message.kind === 'on' && message.channel !== DRUM_CHANNEL && !isChordKey(message.key, use, split))
      void harpKeys.press(message.key, when);
  };
  return {
    hear: ({ bytes, ...when }: MidiBytes) => {
      for (const message of readMidi(bytes)) hear(message, when);
    },
    silence: () => {
      down = new Set();
      harpKeys.releaseAll();
      chord.letGo();
    },
    set,
    follow,
    dispose: () => {
      chord.dispose();
      follow.dispose();
    },
  };
};

/**
 * Keyboards and pedals: asked for when the player wants them, and at later visits only where that asks nobody. A chord
 * held down answers under What fits, other keys play the harp in hand, and switches do what they were taught.
 */
export const joinMidi: Join<MidiState, MidiCommands, MidiPorts | undefined, Song, Asks> = (stand, device) => {
  const { store, apply, board } = stand;
  const change = (part: Partial<MidiChoice>): void => {
    const { settings } = store.getState();
    apply({ ...settings, midi: { ...settings.midi, ...part } });
  };
  const listening = createListening(stand, change);
  const out = createMidiOut(stand, device);
  const onStatus = (status: MidiStatus): void => {
    const before = store.getState().midi.status;
    // What is unplugged sends no more: nothing stays held.
    if (status.kind !== 'open' || (before.kind === 'open' && status.gone.length > before.gone.length))
      listening.silence();
    listening.set({ status });
    // What was pulled while it sounded is silent when it is back.
    const known = before.kind === 'open' ? before.outputs : [];
    if (status.kind === 'open' && status.outputs.some((name) => !known.includes(name))) out.silence();
    const notice = midiNotice(status);
    if (notice === null) board.dismiss('midi');
    else board.post(notice);
  };
  const ending = [device?.onStatus(onStatus), device?.onBytes(listening.hear), listening.dispose];
  const openQuietly = async (): Promise<void> => {
    if (store.getState().settings.midi.on && (await device?.allowed())) await device?.open();
  };
  void openQuietly();
  return {
    commands: {
      listenToMidi: async (on) => {
        change({ on });
        listening.set({ learning: null });
        out.silence();
        if (!on) device?.close();
        else if (device === undefined) onStatus({ kind: 'trouble', why: 'unsupported', detail: '' });
        else await device.open();
      },
      chooseMidi: (part) => {
        listening.silence();
        out.silence();
        change(part);
        if (part.follow === false) listening.follow.forget();
      },
      learnPedal: (learning) => listening.set({ learning }),
      forgetPedal: (action) =>
        change({ pedals: store.getState().settings.midi.pedals.filter((pedal) => pedal.action !== action) }),
    },
    onPlayhead: (position) => listening.follow.onPlayhead(position),
    onStatus: (status) => {
      out.onStatus(status);
      if (!['playing', 'paused', 'interrupted'].includes(status.kind)) listening.follow.forget();
    },
    dispose: () => {
      out.dispose();
      device?.close();
      for (const end of ending) end?.();
    },
  };
};
