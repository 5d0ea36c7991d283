import '../../../src/audio/band/quiet-tone';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import { OfflineContext } from 'tone/build/esm/core/context/OfflineContext.js';
import { createPlayer } from '../../../src/audio/band/note-player';
import { keysOf, noteSound, soundAt } from '../../../src/audio/band/note-sound';
import { createBank } from '../../../src/audio/bank/bank';
import { createBankWorker } from '../../../src/audio/bank/create-bank-worker';
import { makeBuffer } from '../../../src/audio/bank/make-buffer';
import { voiceOf } from '../../../src/audio/bank/sound-key';
import { FEEL_TRIMS } from '../../../src/audio/mixer/feel-trims';
import { limiterDelay } from '../../../src/audio/mixer/limiter';
import { createMasterStage, loadMaster } from '../../../src/audio/mixer/master-stage';
import { createMixer } from '../../../src/audio/mixer/mixer';
import { allNotes } from '../../../src/audio/transport/scheduled-note';
import { placeSection } from '../../../src/audio/transport/timeline';
import type { RenderOrder } from './page';

/** The first seconds of an order as the page sounds live: by the player and the mixer of nodes. */
export const renderByNodes = async (
  { program, sections, sound, sampleRate }: RenderOrder,
  seconds: number,
): Promise<readonly [Float32Array, Float32Array]> => {
  let at = 0;
  const notes = sections
    .flatMap((section) => {
      const placement = placeSection(section, at);
      at = placement.until;
      return allNotes(placement);
    })
    .map((note) => ({ ...note, at: Math.max(0, note.at) }))
    .filter((note) => note.at < seconds)
    .sort((one, other) => one.at - other.at);
  const context = new OfflineAudioContext(2, seconds * sampleRate + limiterDelay(sampleRate), sampleRate);
  const tone = new OfflineContext(context);
  setContext(tone);
  const bank = createBank({
    sampleRate,
    createWorker: () => createBankWorker({ onMakeshift: () => {}, onLost: () => {} }),
    workers: 2,
    makeBuffer: makeBuffer(context),
  });
  const master = createMasterStage(context, tone, await loadMaster(context));
  const mixer = createMixer(tone, master);
  try {
    const keys = keysOf(notes, sound);
    bank.want(keys);
    await bank.ready(keys, 60_000);
    mixer.setMix(sound.mix, 0);
    mixer.setTrim(FEEL_TRIMS[program.style.feel], 0);
    const player = createPlayer({
      context,
      find: (note) => noteSound(bank, note, sound),
      connect: (gain, note) => {
        const { part, pitch } = note.event;
        mixer.connect(gain, part, voiceOf(part, soundAt(note, sound)), pitch);
      },
    });
    for (const note of notes) player.start(note);
    const made = await context.startRendering();
    const held = limiterDelay(sampleRate);
    return [made.getChannelData(0).subarray(held), made.getChannelData(1).subarray(held)];
  } finally {
    bank.dispose();
    mixer.dispose();
  }
};
