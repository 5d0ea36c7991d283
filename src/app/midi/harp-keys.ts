import type { Playhead } from '../../core/arranger/playhead';
import { secondsPerTickAt } from '../../core/arranger/section-time';
import type { Sound } from '../../core/harp/harp';
import { instrumentNote } from '../../core/hearing/instrument-note';
import { soundsAt } from '../../core/midi/keyboard';
import { asMidi, asSeconds, type Seconds } from '../../core/theory/units';
import type { MidiBytes } from '../../midi/midi-ports';
import type { EarCommands } from '../ear/ear';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { MidiState } from './midi-state';

type HarpKeysStand = Stand<MidiState & SongState, Pick<EarCommands, 'hearing'>>;

/** Seconds a key lets the harp sound at most: as long as a breath. */
const BREATH = asSeconds(8);

/** A key that is held. */
interface HeldKey {
  readonly id: number;
  readonly from: Seconds;
  readonly sounds: readonly Sound[];
  readonly playhead: Playhead | null;
}

/** Keys that play the harp in hand. */
export interface HarpKeys {
  press(key: number, when: Moment): Promise<void>;
  release(key: number, when: Moment): void;
  releaseAll(): void;
}

/** When a key moved: seconds of page time, and how long ago that is. */
export type Moment = Pick<MidiBytes, 'at' | 'age'>;

/** Where the playhead was so many seconds ago, within its section. */
const before = (playhead: Playhead, age: number): Playhead => {
  const { section, ticks } = playhead;
  return { ...playhead, ticks: Math.max(0, ticks - age / secondsPerTickAt(section, ticks)) };
};

/** Lets the harp sound while keys are held, and tells whatever practises what was played. */
export const createHarpKeys = ({ store, band, ask }: HarpKeysStand): HarpKeys => {
  const held = new Map<number, HeldKey>();
  let notes = 0;
  let last: Moment = { at: 0, age: 0 };
  const tell = (key: number, { playhead, ...note }: HeldKey, to: Seconds | null): void => {
    const heard = instrumentNote({ ...note, pitch: asMidi(key), to });
    ask().hearing().takePlayed({ note: heard, playhead });
  };
  const show = (missing: number | null): void => {
    const sounding = [...held.values()].flatMap(({ sounds }) => sounds[0] ?? []);
    store.setState(({ midi }) => ({ midi: { ...midi, sounding, missing } }));
  };
  const end = ({ pitch }: Sound): void => void band.audition('lead', pitch, asSeconds(0), 0);
  const release = (key: number, when: Moment): void => {
    last = when;
    const note = held.get(key);
    if (note === undefined) return;
    held.delete(key);
    const [sound] = note.sounds;
    if (sound !== undefined) {
      end(sound);
      show(null);
    }
    tell(key, note, asSeconds(when.at));
  };
  return {
    press: async (key, when) => {
      release(key, when);
      const { settings, now } = store.getState();
      const sounds = soundsAt(now.tune.harp, settings.technique, key);
      const playhead = band.playhead();
      notes += 1;
      const note: HeldKey = {
        ...{ id: -notes, from: asSeconds(when.at), sounds },
        playhead: playhead && before(playhead, when.age),
      };
      held.set(key, note);
      const [sound] = sounds;
      show(sound === undefined ? key : null);
      tell(key, note, null);
      if (sound === undefined) return;
      await band.audition('lead', sound.pitch, BREATH, sound.bend);
      // Let go before the sound was there, which took a moment.
      if (held.get(key) !== note) end(sound);
    },
    release,
    releaseAll: () => {
      for (const key of [...held.keys()]) release(key, last);
    },
  };
};
