/** What a MIDI message says, as far as the page listens (MIDI 1.0 Detailed Specification, channel voice and system real time messages). */
export type MidiMessage =
  /** A key pressed; `velocity` 1–127. */
  | { readonly kind: 'on'; readonly channel: number; readonly key: number; readonly velocity: number }
  | { readonly kind: 'off'; readonly channel: number; readonly key: number }
  /** A controller moved to 0–127: switches and pedals are on from 64. */
  | {
      readonly kind: 'control';
      readonly channel: number;
      readonly controller: number;
      readonly value: number;
    }
  | { readonly kind: 'program'; readonly channel: number; readonly program: number };

/** Data bytes after a status byte, by its high half; system messages by the whole byte. */
const DATA_BYTES: Readonly<Record<number, number>> = {
  8: 2,
  9: 2,
  10: 2,
  11: 2,
  12: 1,
  13: 1,
  14: 2,
  241: 1,
  242: 2,
  243: 1,
};

const messageOf = (status: number, [first = 0, second = 0]: readonly number[]): MidiMessage | null => {
  const channel = (status & 0x0f) + 1;
  switch (status >> 4) {
    // A key pressed with velocity 0 is a key let go: so the specification, for running status.
    case 8:
      return { kind: 'off', channel, key: first };
    case 9:
      return second === 0
        ? { kind: 'off', channel, key: first }
        : { kind: 'on', channel, key: first, velocity: second };
    case 11:
      return { kind: 'control', channel, controller: first, value: second };
    case 12:
      return { kind: 'program', channel, program: first };
    default:
      return null;
  }
};

/**
 * Reads messages out of bytes; channels count from 1. Total: running status is followed, real-time bytes in between and
 * system exclusive are passed over, what is cut short or stray is left out.
 *
 * @example
 * readMidi([0x90, 60, 100]) // [{ kind: 'on', channel: 1, key: 60, velocity: 100 }]
 * readMidi([0xc0, 5]) // [{ kind: 'program', channel: 1, program: 5 }]
 */
export const readMidi = (bytes: Iterable<number>): readonly MidiMessage[] => {
  const messages: MidiMessage[] = [];
  let status = 0;
  let data: number[] = [];
  for (const byte of bytes) {
    if (byte >= 0xf8) continue;
    if (byte >= 0x80) {
      status = byte;
      data = [];
      continue;
    }
    const wanted = DATA_BYTES[status >= 0xf0 ? status : status >> 4];
    if (wanted === undefined) continue;
    data.push(byte);
    if (data.length < wanted) continue;
    const message = messageOf(status, data);
    if (message !== null) messages.push(message);
    data = [];
    // A system message ends running status.
    if (status >= 0xf0) status = 0;
  }
  return messages;
};
