// A harp that plays once a bar into the microphone while the band plays: memory flat, and no drift between the two.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseMidi } from 'midi-file';
import { Failure, say } from './run.mjs';
import { startBrowser, watch } from './soak-page.mjs';

const RATE = 48_000;
/** How long a bar of 4/4 lasts at this tempo. */
const TEMPO = 120;
const BAR_SECONDS = 2;
/** 4 draw of a C harp, D5: when in the bar, and for how long. Seconds. */
const NOTE = { hz: 587.33, from: 0.5, length: 0.6 };
/** The file is longer than the soak by this. Seconds. */
const SPARE = 60;
/** How often it is looked at, in seconds. */
const EVERY = 60;
/** Memory may grow by so much from the second look on, and the place of the note in the bar move by so much. */
const MOST = { heapMB: 30, drift: 0.015 };
/** Where the sound fell so far behind the clock on the wall, the machine was too busy to play: that is no drift. Seconds. */
const STALL = 0.005;
/** The last notes that a place is taken from. */
const LAST = 9;

/** A file of so many bars, each with these samples: the browser loses some milliseconds where it begins a file anew. */
const wavOf = (samples, bars) => {
  const bar = Buffer.alloc(2 * samples.length);
  samples.forEach((value, i) => {
    bar.writeInt16LE(Math.round(32_767 * value), 2 * i);
  });
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + bars * bar.length, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(RATE, 24);
  head.writeUInt32LE(2 * RATE, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(bars * bar.length, 40);
  return Buffer.concat([head, ...Array.from({ length: bars }, () => bar)]);
};

/** One bar with one note of ten harmonics in it. */
const barOfHarp = () =>
  Array.from({ length: BAR_SECONDS * RATE }, (_, i) => {
    const time = i / RATE - NOTE.from;
    if (time < 0 || time > NOTE.length) return 1e-4 * Math.sin(i * i);
    const edge = Math.min(1, time / 0.01, (NOTE.length - time) / 0.02);
    let sum = 0;
    for (let k = 1; k <= 10; k += 1) sum += Math.sin(2 * Math.PI * NOTE.hz * k * time) / k;
    return 0.15 * edge * sum;
  });

/** Seconds into its bar of each note of the harmonica in a MIDI file, which has a tick for every 1/960 s here. */
const placesOf = (bytes) => {
  const { header, tracks } = parseMidi(bytes);
  const track = tracks.find((events) =>
    events.some(({ type, text }) => type === 'trackName' && text === 'Harmonica'),
  );
  const places = [];
  let at = 0;
  for (const { deltaTime, type } of track ?? []) {
    at += deltaTime;
    if (type === 'noteOn') places.push(((at / header.ticksPerBeat / TEMPO) * 60) % BAR_SECONDS);
  }
  return places;
};

const middleOf = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

/** The nearest way round the bar. */
const apart = (one, other) => {
  const way = (((one - other) % BAR_SECONDS) + BAR_SECONDS) % BAR_SECONDS;
  return Math.min(way, BAR_SECONDS - way);
};

const begin = async (page, address) => {
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.getByLabel('Tempo').fill(String(TEMPO));
  await page.getByLabel('Tempo').press('Enter');
  await page.getByRole('button', { name: 'Practise', exact: true }).click();
  await page.getByRole('button', { name: 'Played', exact: true }).click();
  await page.getByLabel('How much of my playing is kept').selectOption('2');
  await page.getByRole('button', { name: 'Listen with the microphone' }).click();
  await page.getByRole('button', { name: 'Play', exact: true }).click();
};

/** Runs in the page: by how much the clock of the sound is behind the one on the wall, in seconds. */
const behind = () => performance.now() / 1000 - window.soak.context.currentTime;

/** Memory after a collection, and where in the bar the note was as a rule of late. */
const look = async (page, session) => {
  await session.send('HeapProfiler.collectGarbage');
  const late = await page.evaluate(behind);
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await page.getByRole('button', { name: 'Look at it' }).click();
  const [file] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: 'Save MIDI' }).click(),
  ]);
  const places = placesOf(readFileSync(await file.path()));
  return { heapMB: usedSize / 1e6, late, place: middleOf(places.slice(-LAST)), notes: places.length };
};

const judge = (looks) => {
  const [, first] = looks;
  const last = looks.at(-1);
  if (looks.some(({ notes }) => notes === 0)) throw new Failure('A look found no note of the harp.');
  if (first === undefined) return;
  if (last.heapMB - first.heapMB > MOST.heapMB)
    throw new Failure(`The memory grew from ${first.heapMB.toFixed(1)} to ${last.heapMB.toFixed(1)} MB.`);
  const [begun] = looks;
  const stalled = Math.max(...looks.map(({ late }) => Math.abs(late - begun.late)));
  const drift = Math.max(...looks.map(({ place }) => apart(place, begun.place)));
  say(
    `  the note moved by ${(1000 * drift).toFixed(1)} ms at most, the sound fell back by ${(1000 * stalled).toFixed(1)} ms`,
  );
  if (stalled > STALL) return say('  this machine was too busy to tell drift: run it alone');
  if (drift > MOST.drift) throw new Failure(`Band and ear drifted apart by ${(1000 * drift).toFixed(1)} ms.`);
};

/** Listens for so many minutes. Throws Failure where memory grows, or band and ear drift apart. */
export const soakEar = async ({ address, minutes }) => {
  const folder = mkdtempSync(join(tmpdir(), 'ear-'));
  const microphone = join(folder, 'bar.wav');
  writeFileSync(microphone, wavOf(barOfHarp(), Math.ceil((60 * minutes + SPARE) / BAR_SECONDS)));
  const browser = await startBrowser([`--use-file-for-fake-audio-capture=${microphone}`]);
  try {
    const context = await browser.newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    const page = await context.newPage();
    const errors = await watch(page);
    const session = await context.newCDPSession(page);
    await begin(page, address);
    const looks = [];
    for (let second = 0; second < 60 * minutes; second += EVERY) {
      await page.waitForTimeout(1000 * Math.min(EVERY, 60 * minutes - second));
      const seen = await look(page, session);
      looks.push(seen);
      say(
        `  minute ${((second + EVERY) / 60).toFixed(0)}: ${seen.heapMB.toFixed(1)} MB, ${seen.notes} notes, ${(1000 * seen.place).toFixed(1)} ms into the bar, the sound ${(1000 * seen.late).toFixed(0)} ms behind the clock`,
      );
    }
    if (errors.length > 0) throw new Failure(`The page complained: ${errors.join('; ')}`);
    judge(looks);
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
};
