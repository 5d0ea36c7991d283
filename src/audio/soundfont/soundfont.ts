/** A SoundFont, read and played by a library; heavy, so that only its worker imports this. */
import { type BasicPreset, BasicSoundBank, SoundBankLoader, SpessaLog } from 'spessasynth_core';
import { PROGRAMS } from '../../core/midi/midi-programs';
import { asHz, asMidi } from '../../core/theory/units';
import type { VoiceId, VoiceNote, VoiceSound } from '../synthesis/voice';
import type { FontManner, FontVoice } from './font-messages';
import { fontSound } from './font-sound';
import { createNotePlayer, type NotePlayer } from './soundfont-note';
import { createVariedNotes, type RenderNote } from './varied-note';
import { voiceModel } from './voice-model';

/** A SoundFont ready to play. */
export interface SoundFont {
  /** Voices of the band that the file has a program for. */
  readonly voices: readonly FontVoice[];
  /** The voice's sound of a note; null where the file has none. Throws when the file's sound cannot be rendered. */
  render(voice: VoiceId, note: VoiceNote): VoiceSound | null;
}

/** Where the tones of a General MIDI set are: bank 0 and the program. */
const TONES: readonly (readonly [FontVoice, number])[] = [
  ['upright-bass', PROGRAMS['upright-bass']],
  ['fingered-bass', PROGRAMS['fingered-bass']],
  ['piano', PROGRAMS.piano],
  ['electric-piano', PROGRAMS['electric-piano']],
  ['organ', PROGRAMS.organ],
  ['guitar', PROGRAMS.guitar],
  ['harmonica', PROGRAMS.harmonica],
];
/**
 * Drum sets in the order in which they are looked for. General MIDI 2: the standard set is program 1, the brush set
 * program 41 as printed, one less as sent.
 */
const DRUM_SETS: readonly (readonly [FontVoice, readonly number[]])[] = [
  ['sticks', [0]],
  ['brushes', [40, 0]],
];

/**
 * Half tones by which voices of the shipped set sound below their keys: its organ's deepest stop lies two octaves under
 * the key, where a 16′ stop lies one under.
 */
const SHIPPED_BELOW: Readonly<Partial<Record<VoiceId, number>>> = { organ: 12 };

/** The note that has a voice of the shipped set sound at the pitch that was asked for. */
const atPitch = (voice: VoiceId, note: VoiceNote): VoiceNote => {
  const below = SHIPPED_BELOW[voice] ?? 0;
  return { ...note, midi: asMidi(note.midi + below), hz: asHz(note.hz * 2 ** (below / 12)) };
};

interface FontPreset {
  readonly preset: BasicPreset;
  readonly struck: boolean;
}

const presetsIn = ({ presets }: BasicSoundBank): ReadonlyMap<FontVoice, FontPreset> => {
  const byVoice = new Map<FontVoice, FontPreset>();
  for (const [voice, program] of TONES) {
    const preset = presets.find(
      (each) => each.program === program && each.bankMSB === 0 && each.bankLSB === 0 && !each.isDrum,
    );
    if (preset) byVoice.set(voice, { preset, struck: false });
  }
  for (const [voice, sets] of DRUM_SETS) {
    const [preset] = sets.flatMap((set) => presets.find((each) => each.isDrum && each.program === set) ?? []);
    if (preset) byVoice.set(voice, { preset, struck: true });
  }
  return byVoice;
};

/** A player for each sample rate that was asked for. */
const createPlayers = (bank: BasicSoundBank): ((sampleRate: number) => NotePlayer) => {
  const players = new Map<number, NotePlayer>();
  return (sampleRate) => {
    const player = players.get(sampleRate) ?? createNotePlayer(bank, sampleRate);
    players.set(sampleRate, player);
    return player;
  };
};

/**
 * Reads a file that `findSoundFontFlaw` found whole. Rejects with the library's reason when it cannot be read all the
 * same, or when it is compressed and the browser refuses the decoder.
 */
export const openSoundFont = async (
  file: ArrayBuffer,
  manner: FontManner = 'as it is',
): Promise<SoundFont> => {
  SpessaLog.setLogLevel(false, false, false);
  const bank = SoundBankLoader.fromArrayBuffer(file);
  if (bank.samples.some(({ isCompressed }) => isCompressed)) await BasicSoundBank.isSF3DecoderReady;
  const presets = presetsIn(bank);
  const playerAt = createPlayers(bank);
  const render: RenderNote = (voice, note) => {
    const found = voice === 'click' ? undefined : presets.get(voice);
    if (found === undefined) return null;
    const { preset, struck } = found;
    const played = manner === 'varied' ? atPitch(voice, note) : note;
    if (preset.getVoiceParameters(played.midi, Math.round(played.velocity)).length === 0) return null;
    const player = playerAt(note.sampleRate);
    const rendered = struck ? player.hit(preset, played) : player.tone(preset, played);
    return fontSound(rendered, { ...note, ...voiceModel(voice, note) });
  };
  return {
    voices: [...presets.keys()],
    render: manner === 'varied' ? createVariedNotes(render) : render,
  };
};
