import type { BandStatus } from '../../audio/band/band';
import { CLOCK_AT_REST, clockAt, clockStopped } from '../../core/midi/out-clock';
import { channelOf, noteMessage, outChoices, silenceMessages } from '../../core/midi/out-messages';
import type { OutsideEvent, OutsideNote } from '../../core/midi/outside-event';
import type { MidiPorts, TimedBytes } from '../../midi/midi-ports';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import type { MidiState } from './midi-state';

/** What the band sends to an instrument outside of the page. */
export interface MidiOut {
  onStatus(status: BandStatus): void;
  /** Ends every note that was sent, now and when the last of them is due. */
  silence(): void;
  dispose(): void;
}

const keyOf = ({ part, pitch }: OutsideNote): string => `${channelOf(part)} ${Math.round(pitch)}`;

/** Sends the clock and the parts that are chosen as the band plays them, and silence where it stops. */
export const createMidiOut = (
  { store, band }: Pick<Stand<MidiState & SongState>, 'store' | 'band'>,
  device: MidiPorts | undefined,
): MidiOut => {
  let clock = CLOCK_AT_REST;
  /** Notes that sound there, and when the last message goes out. */
  const sounding = new Map<string, OutsideNote>();
  /** Channels that something was ever sent on. */
  const channels = new Set<number>();
  let last = 0;
  const send = (messages: readonly TimedBytes[]): void => {
    if (messages.length > 0) device?.send(store.getState().settings.midi.to, messages);
  };
  const messagesOf = (event: OutsideEvent): readonly TimedBytes[] => {
    const chosen = outChoices(store.getState().settings.midi.out);
    if (event.kind === 'pulse') {
      if (!chosen.includes('clock')) return [];
      const step = clockAt(clock, event);
      clock = step.clock;
      return step.messages.map((bytes) => ({ bytes, at: event.at }));
    }
    const isChosen = chosen.some((each) => each === event.part);
    // What ends is told even where its part was left out meanwhile.
    if (event.kind === 'off' ? !sounding.delete(keyOf(event)) : !isChosen) return [];
    if (event.kind === 'on') sounding.set(keyOf(event), event);
    channels.add(channelOf(event.part));
    return [{ bytes: noteMessage(event), at: event.at }];
  };
  const take = (events: readonly OutsideEvent[]): void => {
    const { midi, settings } = store.getState();
    if (midi.status.kind !== 'open' || settings.midi.out.length + sounding.size === 0) return;
    const messages = events.flatMap(messagesOf);
    last = Math.max(last, ...messages.map(({ at }) => at));
    send(messages);
  };
  const silence = (): void => {
    if (channels.size === 0) return;
    const offs = [...sounding.values()].map((note) => noteMessage({ ...note, kind: 'off' }));
    const all = [...offs, ...silenceMessages([...channels])];
    // Once more after what was sent ahead: it cannot be taken back.
    send([0, last + 1].flatMap((at) => all.map((bytes) => ({ bytes, at }))));
    sounding.clear();
  };
  /** @param forGood whether it will not go on from there. */
  const rest = (forGood: boolean): void => {
    const step = clockStopped(clock, forGood);
    clock = step.clock;
    send(step.messages.map((bytes) => ({ bytes, at: last + 1 })));
    silence();
  };
  const ending = [band.onOutside(take), device?.onLeaving(() => rest(true))];
  return {
    onStatus: ({ kind }) => {
      if (kind !== 'playing') rest(kind !== 'paused' && kind !== 'interrupted');
    },
    silence,
    dispose: () => {
      rest(true);
      for (const end of ending) end?.();
    },
  };
};
