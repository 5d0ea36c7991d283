/**
 * Sound of others: MIDI events through fluidsynth and a General MIDI sound set, where both are at hand (on Debian the
 * packages fluidsynth and fluid-soundfont-gm or timgm6mb-soundfont).
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monoOf, readWav } from '../../../src/core/formats/read-wav';

const SETS = ['FluidR3_GM.sf2', 'TimGM6mb.sf2', 'default-GM.sf2'].map(
  (name) => `/usr/share/sounds/sf2/${name}`,
);

/** The sound set that is installed, null where it or the player of it is missing. */
export const installedSoundSet = (): string | null => {
  if (spawnSync('fluidsynth', ['--version']).status !== 0) return null;
  return SETS.find((path) => existsSync(path)) ?? null;
};

/** What a skipped test says. */
export const NO_SOUND_SET =
  'fluidsynth and a General MIDI sound set (Debian: fluidsynth, fluid-soundfont-gm) are not installed';

/** Renders a Standard MIDI File to so many seconds of mono, without reverb and chorus. Throws where that fails. */
export const renderMidi = (
  file: Uint8Array,
  {
    set,
    seconds,
    sampleRate,
  }: { readonly set: string; readonly seconds: number; readonly sampleRate: number },
): Float32Array => {
  const folder = mkdtempSync(join(tmpdir(), 'sound-set-'));
  try {
    const [midi, wav] = [join(folder, 'in.mid'), join(folder, 'out.wav')];
    writeFileSync(midi, file);
    const made = spawnSync('fluidsynth', [
      ...['-n', '-i', '-q', '-R', '0', '-C', '0', '-g', '0.6', '-r', String(sampleRate)],
      ...['-F', wav, '-T', 'wav', '-O', 'float', set, midi],
    ]);
    if (made.status !== 0) throw new Error(`fluidsynth: ${made.stderr}`);
    const reading = readWav(readFileSync(wav));
    if (reading.kind === 'wrong') throw new Error(`fluidsynth wrote ${reading.why}`);
    const out = new Float32Array(Math.round(seconds * sampleRate));
    out.set(monoOf(reading.sound).subarray(0, out.length));
    return out;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
