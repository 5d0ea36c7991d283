import { messageOf } from '../../core/theory/thrown';
/// <reference lib="webworker" />
/** Reads a SoundFont and renders its sounds away from the page. The library that does it is fetched here alone. */

import { findSoundFontFlaw } from '../../core/formats/sound-font';
import { elementAt } from '../../core/theory/element-at';
import { LAYERS } from '../bank/sound-key';
import type { FontAnswer, FontManner, FontRefusal, FontRequest } from './font-messages';
import type { SoundFont } from './soundfont';

let font: SoundFont | null = null;

const refused = (why: FontRefusal): FontAnswer => ({ kind: 'refused', why });

const read = async (file: Blob): Promise<ArrayBuffer | FontRefusal> => {
  try {
    return await file.arrayBuffer();
  } catch (error) {
    return { kind: 'unreadable', detail: messageOf(error) };
  }
};

const load = async (): Promise<typeof import('./soundfont') | FontRefusal> => {
  try {
    return await import('./soundfont');
  } catch (error) {
    return { kind: 'no player', detail: messageOf(error) };
  }
};

const open = async (file: Blob, manner: FontManner): Promise<FontAnswer> => {
  const bytes = await read(file);
  if ('kind' in bytes) return refused(bytes);
  const flaw = findSoundFontFlaw(new Uint8Array(bytes));
  if (flaw !== null) return refused(flaw);
  const player = await load();
  if ('kind' in player) return refused(player);
  try {
    font = await player.openSoundFont(bytes, manner);
  } catch (error) {
    return refused({ kind: 'damaged', detail: messageOf(error) });
  }
  return font.voices.length === 0
    ? refused({ kind: 'no instruments' })
    : { kind: 'opened', voices: font.voices };
};

const render = ({ id, key, ...playing }: FontRequest & { kind: 'render' }): FontAnswer => {
  const { midi, hz, layer, stroke, voice } = key;
  try {
    const note = { ...playing, midi, hz, velocity: elementAt(LAYERS, layer), seed: stroke };
    const sound = font?.render(voice, note) ?? null;
    if (sound === null) return { kind: 'none', id };
    const { samples, loop, release } = sound;
    return { kind: 'sound', id, sound: { samples: new Float32Array(samples), loop, release } };
  } catch (error) {
    return { kind: 'failed', id, reason: messageOf(error) };
  }
};

self.onmessage = async ({ data }: MessageEvent<FontRequest>) => {
  const answer = data.kind === 'open' ? await open(data.file, data.manner) : render(data);
  self.postMessage(answer, { transfer: answer.kind === 'sound' ? [answer.sound.samples.buffer] : [] });
};
