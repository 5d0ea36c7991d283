import type { MidiMessage } from './midi-message';

/** What a pedal, pad or switch can do, in the order it is offered. */
export const PEDAL_ACTIONS = [
  'play',
  'stop',
  'pause',
  'next song',
  'previous song',
  'next bar',
  'previous bar',
  'repeat',
] as const;
export type PedalAction = (typeof PEDAL_ACTIONS)[number];

/** Kinds of what switches send. */
export const PEDAL_KINDS = ['key', 'control', 'program'] as const;

/** What a switch sends: a key, a controller or a program, on a channel from 1. */
export interface PedalSign {
  readonly kind: (typeof PEDAL_KINDS)[number];
  readonly channel: number;
  readonly number: number;
}

/** A switch and what it does. */
export interface Pedal extends PedalSign {
  readonly action: PedalAction;
}

/** Controllers count as pressed from here on (MIDI 1.0, controllers 64–69: 0–63 off, 64–127 on). */
const PRESSED = 64;

/** How far controllers are down, so that one that is held or moved on is not pressed again. */
export type ControlsDown = ReadonlySet<string>;

const idOf = ({ channel, number }: Pick<PedalSign, 'channel' | 'number'>): string => `${channel} ${number}`;

/** The press a message is, if it is one, and which controllers are down after it. */
export const pressOf = (
  message: MidiMessage,
  down: ControlsDown,
): { readonly sign: PedalSign | null; readonly down: ControlsDown } => {
  const { channel } = message;
  if (message.kind === 'on') return { sign: { kind: 'key', channel, number: message.key }, down };
  if (message.kind === 'program')
    return { sign: { kind: 'program', channel, number: message.program }, down };
  if (message.kind === 'off') return { sign: null, down };
  const sign: PedalSign = { kind: 'control', channel, number: message.controller };
  const id = idOf(sign);
  const others = [...down].filter((each) => each !== id);
  if (message.value < PRESSED) return { sign: null, down: new Set(others) };
  return { sign: down.has(id) ? null : sign, down: new Set([...others, id]) };
};

const isSame = (a: PedalSign, b: PedalSign): boolean =>
  a.kind === b.kind && a.channel === b.channel && a.number === b.number;

/** What a press is to do; null where nothing is mapped to it. */
export const actionOf = (pedals: readonly Pedal[], sign: PedalSign): PedalAction | null =>
  pedals.find((pedal) => isSame(pedal, sign))?.action ?? null;

/** The pedals with one more: a switch does one thing, and a thing is done by one switch. */
export const withPedal = (pedals: readonly Pedal[], pedal: Pedal): readonly Pedal[] => [
  ...pedals.filter((each) => each.action !== pedal.action && !isSame(each, pedal)),
  pedal,
];

/** A switch in words: `pedal 64, channel 1`. */
export const pedalWords = ({ kind, channel, number }: PedalSign): string => {
  const what = { key: 'key', control: 'pedal', program: 'program' }[kind];
  return `${what} ${kind === 'program' ? number + 1 : number}, channel ${channel}`;
};
