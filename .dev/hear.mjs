// `npm run --silent hear -- take.wav --harp C`: what the ear hears in a recording, one JSON object a line. Notes are
// written by an ear that knows the whole recording, frames as they are made while one plays.
import { readFileSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import util from 'node:util';
import { ensureInstalled } from './install.mjs';
import { Failure, ROOT } from './run.mjs';

const USAGE =
  'Usage: npm run --silent hear -- take.wav --harp C [--tuning NAME] [--reference 440] [--band band.wav] [--frames]';
/** The status of what the person at the terminal can correct. */
const WRONG = 2;
const RATES = [44100, 48000];
/** Samples handed over at a time. */
const CHUNK = 4096;

class Wrong extends Error {}

const readOptions = () => {
  try {
    const { values, positionals } = util.parseArgs({
      allowPositionals: true,
      options: {
        harp: { type: 'string' },
        tuning: { type: 'string', default: 'richter' },
        reference: { type: 'string', default: '440' },
        band: { type: 'string' },
        frames: { type: 'boolean', default: false },
      },
    });
    if (positionals.length !== 1) throw new Error(`Name one WAV file, got ${positionals.length}.`);
    if (values.harp === undefined) throw new Error('Say which harp is played: --harp C');
    return { path: positionals[0], ...values };
  } catch (error) {
    throw new Wrong(`${error.message}\n${USAGE}`);
  }
};

/** The sources this needs, packed by the installed bundler into a folder of this process and loaded from there. */
const loadCore = async () => {
  const { build } = await import('vite');
  const folder = join(ROOT, 'node_modules', `.hear-${process.pid}`);
  const entries = {
    'build-harp': 'harp',
    tunings: 'harp',
    pitch: 'theory',
    units: 'theory',
    'read-wav': 'formats',
    ear: 'hearing',
    'hear-recording': 'hearing',
    'grip-notes': 'hearing',
  };
  const input = Object.fromEntries(
    Object.entries(entries).map(([name, room]) => [name, join(ROOT, 'src', 'core', room, `${name}.ts`)]),
  );
  try {
    await build({
      root: ROOT,
      configFile: false,
      logLevel: 'silent',
      ssr: { noExternal: true },
      build: {
        ssr: true,
        outDir: folder,
        target: 'node20',
        rollupOptions: { input, output: { format: 'es', entryFileNames: '[name].mjs' } },
      },
    });
    const modules = await Promise.all(
      Object.keys(input).map((name) => import(pathToFileURL(join(folder, `${name}.mjs`)).href)),
    );
    return Object.assign({}, ...modules);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const HARP = /^(?:(low|high|l|h)[ _-]*)?([A-G])(#|♯|b|♭)?$/i;

/** The harp of a label: `C`, `Bb`, `F#`, `low F`, `LF`. */
const harpOf = (core, { harp, tuning }) => {
  const [, register = '', letter = '', accidental = ''] = harp.trim().match(HARP) ?? [];
  if (letter === '') throw new Wrong(`--harp must be a key such as C, Bb or "low F", got "${harp}".`);
  const wanted = tuning.trim().toLowerCase();
  const row = core.TUNINGS.find(({ id, name }) => [id, name.toLowerCase()].includes(wanted));
  if (row === undefined) {
    const known = core.TUNINGS.map(({ id }) => id).join(', ');
    throw new Wrong(`--tuning "${tuning}" is not known. Known are: ${known}.`);
  }
  const sign = { '': '', '♯': '#', '♭': 'b' }[accidental] ?? accidental.toLowerCase();
  const key = core.pitchClassOf(letter.toUpperCase() + sign);
  const octave = { '': 0, l: -1, h: 1 }[register.slice(0, 1).toLowerCase()];
  return core.buildHarp({ tuning: row, key, octave });
};

const referenceOf = (core, text) => {
  const value = Number(text);
  if (text.trim() === '' || !(value >= 440 && value <= 446))
    throw new Wrong(`--reference must be a frequency of A4 from 440 to 446 Hz, got "${text}".`);
  return core.asHz(value);
};

/** npm runs scripts in the project's folder; paths are meant from where the person stands. */
const HERE = process.env.npm_lifecycle_event === 'hear' ? (process.env.INIT_CWD ?? '.') : '.';

const readSound = (core, path) => {
  let bytes;
  try {
    bytes = readFileSync(resolve(HERE, path));
  } catch (error) {
    throw new Wrong(
      error.code === 'ENOENT' ? `There is no file ${path}.` : `${path} cannot be read: ${error.message}`,
    );
  }
  const reading = core.readWav(bytes);
  if (reading.kind === 'wrong') throw new Wrong(`${path} cannot be used: ${reading.why}.`);
  const { sampleRate, channels } = reading.sound;
  if (!RATES.includes(sampleRate))
    throw new Wrong(`${path} has ${sampleRate} samples a second; save it at 44100 or 48000.`);
  if (channels.length > 2)
    throw new Wrong(`${path} has ${channels.length} channels; save it mono or stereo.`);
  if (reading.missing > 0)
    throw new Wrong(
      `${path} is cut short: ${reading.missing.toFixed(2)} seconds that it promises are not there; copy it again.`,
    );
  if (channels[0]?.length === 0) throw new Wrong(`${path} holds no samples: nothing was recorded.`);
  return { sampleRate, samples: core.monoOf(reading.sound) };
};

const rounded = (value, digits) => Number(value.toFixed(digits));

const frameLine = ({ known, centre, frequency, clarity, level }) => ({
  known: rounded(known, 5),
  centre: rounded(centre, 5),
  frequency: rounded(frequency, 3),
  clarity: rounded(clarity, 4),
  level: rounded(level, 2),
});

const soundOf = ({ hole, breath, technique, bend }) => ({ hole, breath, technique, bend });
/** What never settles, or lies beside all the harp has, has no hole. */
const NO_SOUND = { hole: null, breath: null, technique: null, bend: null };
const UNSTEADY = { ...NO_SOUND, technique: 'unstable' };

const noteLine = ({ from, to, sound, steady, pitch, cents, level, alternatives }) => ({
  from: rounded(from, 4),
  to: rounded(to, 4),
  ...(sound === null ? (steady ? NO_SOUND : UNSTEADY) : soundOf(sound)),
  midi: pitch,
  cents: rounded(cents, 1),
  level: rounded(level, 1),
  alternatives: alternatives.map(soundOf),
});

/** Several holes at once are a line each, with the same times, and all their holes. */
const noteLines = (core, note, reference) =>
  note.together.length === 0
    ? [noteLine(note)]
    : core
        .eachHole(note, reference)
        .map((each) => ({ ...noteLine(each), grip: [note.sound, ...note.together].map(({ hole }) => hole) }));

const write = (lines) => {
  if (lines.length > 0) process.stdout.write(`${lines.map((line) => JSON.stringify(line)).join('\n')}\n`);
};

/** Frames know nothing that comes later, as while one plays. */
const hearFrames = (ear, samples, sent) => {
  for (let from = 0; from < samples.length; from += CHUNK)
    write(
      ear
        .push(samples.subarray(from, from + CHUNK), sent?.subarray(from, from + CHUNK))
        .frames.map(frameLine),
    );
};

const hear = (core, options) => {
  const harp = harpOf(core, options);
  const reference = referenceOf(core, options.reference);
  const { samples, sampleRate } = readSound(core, options.path);
  const band = options.band === undefined ? null : readSound(core, options.band);
  if (band !== null && band.sampleRate !== sampleRate)
    throw new Wrong(
      `${options.band} has ${band.sampleRate} samples a second, but ${options.path} ${sampleRate}; save both alike.`,
    );
  const choice = { sampleRate, harp, reference };
  if (options.frames) hearFrames(core.createEar({ ...choice, band: band !== null }), samples, band?.samples);
  else
    core.hearRecording({ samples, ...(band === null ? {} : { sent: band.samples }) }, choice, (_, notes) =>
      write(notes.flatMap((note) => noteLines(core, note, reference))),
    );
};

// A reader that has seen enough, as `head`, closes the pipe: no fault.
process.stdout.on('error', (error) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

try {
  const options = readOptions();
  await ensureInstalled({ aside: true });
  hear(await loadCore(), options);
} catch (error) {
  const told = error instanceof Wrong || error instanceof Failure;
  process.stderr.write(`${told ? error.message : error.stack}\n`);
  process.exitCode = error instanceof Wrong ? WRONG : 1;
}
