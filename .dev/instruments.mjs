// The recorded instruments shipped beside the page: a General MIDI set from the package registry, without what the
// band does not play.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { SoundBankLoader, SpessaLog } from 'spessasynth_core';
import { ROOT } from './run.mjs';

/** The package is one file of sounds; its version is locked with the others. */
const PACKAGE = join(ROOT, 'node_modules', '@librescore', 'sf3');
const SET = 'FluidR3Mono_GM.sf3';

/** Programs as sent, 0–127 (General MIDI 1 sound set; the brush set is General MIDI 2's), by the names they get here. */
const TONES = new Map([
  [0, 'Piano'],
  [4, 'Electric piano'],
  [16, 'Organ'],
  [26, 'Guitar'],
  [32, 'Upright bass'],
  [33, 'Fingered bass'],
]);
const KITS = new Map([
  [0, 'Sticks'],
  [40, 'Brushes'],
]);

const nameOf = ({ isDrum, program, bankMSB, bankLSB }) => {
  if (isDrum) return KITS.get(program);
  return bankMSB === 0 && bankLSB === 0 ? TONES.get(program) : undefined;
};

/** The set's bytes with the band's instruments alone, its samples packed as they are; takes a tenth of a second. */
export const trimInstruments = (bytes) => {
  SpessaLog.setLogLevel(false, false, false);
  const bank = SoundBankLoader.fromArrayBuffer(Uint8Array.from(bytes).buffer);
  for (const preset of [...bank.presets]) {
    const name = nameOf(preset);
    if (name === undefined) bank.deletePreset(preset);
    else preset.name = name;
  }
  bank.removeUnusedElements();
  bank.instruments.forEach((instrument, i) => {
    instrument.name = `Instrument ${i + 1}`;
  });
  bank.samples.forEach((sample, i) => {
    sample.name = `Sample ${i + 1}`;
  });
  // The licence goes along with the others (.dev/licences.mjs); the file keeps the authors' own line.
  const { copyright, creationDate } = bank.soundBankInfo;
  for (const field of ['comment', 'product', 'soundEngine', 'engineer', 'subject'])
    delete bank.soundBankInfo[field];
  Object.assign(bank.soundBankInfo, {
    name: 'Recorded instruments',
    soundEngine: 'General MIDI',
    copyright,
    creationDate,
    comment: 'Part of a larger set, under the MIT licence: see the list of licences.',
  });
  return new Uint8Array(bank.writeSF2({ compress: false, software: 'Combshed' }));
};

/** Changes with the set and with what is taken out of it. */
const stamp = () =>
  createHash('sha256')
    .update(readFileSync(join(PACKAGE, 'package.json')))
    .update(readFileSync(fileURLToPath(import.meta.url)))
    .digest('hex')
    .slice(0, 16);

/** Address of the file beside the page: its name changes with its content, as those of the other parts do. */
export const instrumentsAddress = () => `assets/instruments-${stamp()}.sf3`;

/** The trimmed file's bytes, made anew when the set or this script is another. */
export const readInstruments = () => {
  const folder = join(ROOT, 'node_modules', '.recorded');
  const path = join(folder, `${stamp()}.sf3`);
  if (existsSync(path)) return readFileSync(path);
  const bytes = trimInstruments(readFileSync(join(PACKAGE, SET)));
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${path}.${process.pid}`, bytes);
  renameSync(`${path}.${process.pid}`, path);
  return bytes;
};

/** Puts the file beside the page: into a build, and under a development server. */
export const instrumentsPlugin = () => ({
  name: 'recorded-instruments',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: instrumentsAddress(), source: readInstruments() });
  },
  configureServer({ middlewares }) {
    middlewares.use(`/${instrumentsAddress()}`, (_, response) => {
      response.setHeader('content-type', 'application/octet-stream');
      response.end(readInstruments());
    });
  },
});
