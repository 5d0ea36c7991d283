import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { plainTones, type WavKind, wavFile } from '../../helpers/hearing/wav-file';
import { inSoak } from '../../helpers/soak';

interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly told: string;
}

/** Runs the command as a shell would. */
const run = (...args: readonly string[]): Promise<Ran> =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, ['.dev/hear.mjs', ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    let [out, told] = ['', ''];
    child.stdout.on('data', (data) => {
      out += data;
    });
    child.stderr.on('data', (data) => {
      told += data;
    });
    child.on('close', (status) => resolve({ status, out, told }));
  });

const linesOf = ({ out }: Ran): readonly Record<string, unknown>[] =>
  out
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));

/** C5, E5, G5 and D5 as equal temperament has them; blow 4 to 6 and draw 4 of a C harp. */
const TONES = [
  { from: 0.5, to: 0.9, hz: 523.251 },
  { from: 1, to: 1.4, hz: 659.255 },
  { from: 1.5, to: 1.9, hz: 783.991 },
  { from: 2, to: 2.5, hz: 587.33 },
];

describe('npm run hear', { timeout: 120_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'hear-'));
  const file = (name: string): string => join(folder, name);
  const save = (name: string, kind: WavKind, stereo: boolean): void => {
    const samples = plainTones(TONES, 2.8, kind.sampleRate);
    writeFileSync(file(name), wavFile(stereo ? [samples, samples.map((v) => 0.5 * v)] : [samples], kind));
  };
  beforeAll(() => {
    save('plain.wav', { code: 1, bits: 16, sampleRate: 44100 }, false);
    save('wide.wav', { code: 3, bits: 32, sampleRate: 48000, extensible: true }, true);
    save('slow.wav', { code: 1, bits: 16, sampleRate: 22050 }, false);
    const whole = readFileSync(file('plain.wav'));
    writeFileSync(file('cut.wav'), whole.subarray(0, whole.length - 1.8 * 44100 * 2));
    writeFileSync(file('nothing.wav'), wavFile([[]], { code: 1, bits: 16, sampleRate: 44100 }));
    writeFileSync(file('letter.wav'), 'Dear village hall, no recording is in here.');
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  // The frames of the wide one are read below.
  it.each(inSoak(['plain.wav', 'wide.wav'], ['plain.wav']))(
    'prints the notes of %s, one a line',
    async (name) => {
      const ran = await run(file(name), '--harp', 'C');
      expect(ran).toMatchObject({ status: 0, told: '' });
      const notes = linesOf(ran);
      expect(notes.map(({ hole, breath, midi }) => [hole, breath, midi])).toEqual([
        [4, 'blow', 72],
        [5, 'blow', 76],
        [6, 'blow', 79],
        [4, 'draw', 74],
      ]);
      notes.forEach((note, i) => {
        expect(Object.keys(note).join()).toBe(
          'from,to,hole,breath,technique,bend,midi,cents,level,alternatives',
        );
        expect(Math.abs(Number(note.from) - TONES[i].from)).toBeLessThan(0.02);
        expect(Math.abs(Number(note.to) - TONES[i].to)).toBeLessThan(0.05);
        expect(Math.abs(Number(note.cents))).toBeLessThan(2);
        expect(note).toMatchObject({ technique: 'natural', bend: 0 });
        // An overblow on hole 3 gives the C of blow 4 too.
        expect(note.alternatives).toHaveLength(i === 0 ? 1 : 0);
        expect(Number(note.level)).toBeLessThan(0);
      });
    },
  );

  it('prints holes played together as a line each, with the same times and all the holes', async () => {
    // C5, E5 and G5 at once are 4, 5 and 6 blow of a C harp; C5 alone afterwards is 4 blow.
    const together = TONES.slice(0, 3).map(({ hz }) => ({ from: 0.5, to: 1.2, hz }));
    const samples = plainTones([...together, { from: 1.6, to: 2.2, hz: 523.251 }], 2.6, 48000);
    writeFileSync(
      file('chord.wav'),
      wavFile([samples.map((v) => v / 2)], { code: 1, bits: 16, sampleRate: 48000 }),
    );
    const notes = linesOf(await run(file('chord.wav'), '--harp', 'C'));
    expect(notes.map(({ hole, breath, midi, grip }) => [hole, breath, midi, grip])).toEqual([
      [4, 'blow', 72, [4, 5, 6]],
      [5, 'blow', 76, [4, 5, 6]],
      [6, 'blow', 79, [4, 5, 6]],
      [4, 'blow', 72, undefined],
    ]);
    const [first, second] = notes;
    expect([second.from, second.to]).toEqual([first.from, first.to]);
    expect(Math.abs(Number(first.from) - 0.5)).toBeLessThan(0.03);
    expect(Math.abs(Number(first.to) - 1.2)).toBeLessThan(0.08);
  });

  it.each(inSoak(['low F', 'LF'], ['LF']))(
    'counts cents from the reference, on the harp in %s and tuning it is told',
    async (harp) => {
      const ran = await run(file('plain.wav'), '--harp', harp, '--tuning', 'solo', '--reference', '444');
      expect(ran.status).toBe(0);
      const [first] = linesOf(ran);
      // 523.251 Hz is 1200 · log2(440 / 444) = −15.7 cents from C5 at 444 Hz (by arithmetic).
      expect(first.midi).toBe(72);
      expect(Math.abs(Number(first.cents) + 15.7)).toBeLessThan(1.5);
    },
  );

  it('prints one frame a hop when asked, in time and causal', async () => {
    const ran = await run(file('wide.wav'), '--harp', 'C', '--frames');
    expect(ran).toMatchObject({ status: 0, told: '' });
    const frames = linesOf(ran);
    // The tracker works in hops of 128 samples at 24 kHz; 2.8 s hold 525 of them.
    const hop = 128 / 24_000;
    expect(frames).toHaveLength(525);
    frames.forEach((frame, i) => {
      expect(Object.keys(frame).join()).toBe('known,centre,frequency,clarity,level');
      expect(Number(frame.centre)).toBeLessThanOrEqual(Number(frame.known));
      expect(Number(frame.known)).toBeCloseTo((i + 1) * hop, 3);
    });
    const inside = frames.filter(({ centre }) => Number(centre) > 1.1 && Number(centre) < 1.3);
    for (const { frequency } of inside) expect(Math.abs(Number(frequency) - 659.255)).toBeLessThan(1);
    for (const { known, frequency } of frames) if (Number(known) < 0.49) expect(frequency).toBe(0);
  });

  type Case = readonly [args: readonly string[], sentence: string];
  const few: readonly Case[] = [
    [[], 'Name one WAV file'],
    [['cut.wav', '--harp', 'C'], '1.80 seconds that it promises are not there'],
    [['plain.wav', '--harp', 'C', '--tuning', 'wrong'], 'Known are: richter'],
  ];
  const all: readonly Case[] = [
    ...few,
    [['nowhere.wav'], 'Say which harp'],
    [['nowhere.wav', '--harp', 'C'], 'There is no file'],
    [['letter.wav', '--harp', 'C'], 'it is not a WAV file'],
    [['slow.wav', '--harp', 'C'], '22050 samples a second'],
    [['nothing.wav', '--harp', 'C'], 'holds no samples'],
    [['plain.wav', '--harp', 'H'], '--harp must be a key'],
    [['plain.wav', '--harp', 'C', '--reference', '432'], 'from 440 to 446 Hz'],
    [['plain.wav', '--harp', 'C', '--loud'], 'Usage:'],
  ];
  it.each(inSoak<Case>(all, few))(
    'says what is wrong with %j and ends with status 2',
    async (args, sentence) => {
      const [name, ...rest] = args;
      const ran = await run(...(name === undefined ? [] : [file(name)]), ...rest);
      expect(ran).toMatchObject({ status: 2, out: '' });
      expect(ran.told).toContain(sentence);
      expect(ran.told).not.toContain('    at ');
    },
  );
});
