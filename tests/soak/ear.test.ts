import { readFileSync } from 'node:fs';
import { parseMidi } from 'midi-file';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { limiterDelay } from '../../src/audio/mixer/limiter';
import { buildHarp } from '../../src/core/harp/build-harp';
import { RICHTER } from '../../src/core/harp/tunings';
import { asPitchClass } from '../../src/core/theory/units';
import { watchPage } from '../helpers/browser';
import { armHall, type HallPlayer, hallPlayer, inHall, leakInHall, tasksWhile } from '../helpers/hall';
import { noteScore, type ScoredNote } from '../helpers/hearing/scores';
import { onceMore } from '../helpers/once-more';
import { openBeside, openEntry } from '../helpers/open-panel';
import { servedBrowser } from '../helpers/served-browser';

const TEMPO = 100;
const BEAT = 60 / TEMPO;
const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

/** The harmonica of a MIDI file: seconds, and pitches in whole semitones. */
const notesOf = (bytes: Uint8Array): readonly ScoredNote[] => {
  const { header, tracks } = parseMidi(bytes);
  const seconds = (ticks: number): number => (ticks / (header.ticksPerBeat ?? 480)) * BEAT;
  const track = tracks.find((events) =>
    events.some((event) => event.type === 'trackName' && event.text === 'Harmonica'),
  );
  const notes: ScoredNote[] = [];
  let at = 0;
  for (const event of track ?? []) {
    at += event.deltaTime;
    if (event.type === 'noteOn')
      notes.push({ from: seconds(at), to: seconds(at), hz: 440 * 2 ** ((event.noteNumber - 69) / 12) });
  }
  return notes;
};

/** The truth as a MIDI file can have it: pitches are keys. */
const truthOf = ({ notes }: HallPlayer): readonly ScoredNote[] =>
  notes
    .filter(({ failed }) => !failed)
    .map(({ from, to, sounds }) => ({
      from,
      to,
      hz: 440 * 2 ** ((Math.round(sounds[0]?.pitch ?? 0) - 69) / 12),
    }));

/** The score, and how late matched notes are, seconds, earliest first; a file begins with a bar of the line's or one before. */
const compare = (truth: readonly ScoredNote[], written: readonly ScoredNote[]) => {
  const tries = [-2, -1, 0, 1, 2].map((bars) => {
    const moved = written.map((note) => ({ ...note, from: note.from + 4 * BEAT * bars }));
    const score = noteScore(truth, moved);
    return { score, late: score.pairs.map(([i, j]) => (moved[j]?.from ?? 0) - (truth[i]?.from ?? 0)) };
  });
  return tries.reduce((best, each) => (each.score.f > best.score.f ? each : best));
};

const at = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? Number.NaN;

describe('the ear over the band', () => {
  const { browser, address } = servedBrowser();

  const calibrate = async (page: Page): Promise<void> => {
    await openEntry(page, 'Practise');
    await openBeside(page, 'Ear');
    await page.getByRole('button', { name: 'Listen with the microphone' }).click();
    await page.getByRole('button', { name: 'Calibrate', exact: true }).click();
    const found = page.getByText(/Your notes are heard/);
    await found.waitFor();
    process.stdout.write(`\n  ${await found.textContent()}\n`);
  };

  const takeOf = async (page: Page): Promise<readonly ScoredNote[]> => {
    await page.getByRole('button', { name: 'Look at it' }).click();
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save MIDI' }).click(),
    ]);
    return notesOf(readFileSync(await file.path()));
  };

  it('writes a take down over the band at −6 dB, in time once it was calibrated, and keeps the page free', async () => {
    const seconds = 45;
    const player = hallPlayer(harp, 5001, seconds);
    await onceMore(browser(), async (context) => {
      context.setDefaultTimeout(180_000);
      const page = await context.newPage();
      const watch = watchPage(page);
      await inHall(page, {
        ...player,
        late: 0.03,
        way: 0.06,
        enters: 4 * BEAT + limiterDelay(48_000) / 48_000,
      });
      await page.goto(address());
      await page.getByLabel('Tempo', { exact: true }).fill(String(TEMPO));
      await page.keyboard.press('Tab');
      await page.waitForFunction(() => performance.getEntriesByName('whole').length > 0);
      const tasks = await tasksWhile(browser(), page, async () => {
        await calibrate(page);
        await openBeside(page, 'Played');
        await page.getByLabel('How much of my playing is kept').selectOption('2');
        await armHall(page);
        await page.getByRole('button', { name: 'Play', exact: true }).click();
        await page.waitForTimeout(1000 * (seconds + 5 * BEAT));
        await page.getByRole('button', { name: 'Stop', exact: true }).click();
      });
      const leak = await leakInHall(page);
      const { score, late } = compare(truthOf(player), await takeOf(page));
      const ms = (value: number): string => (1000 * value).toFixed(1);
      process.stdout.write(
        `\n  leak ${leak.toFixed(1)} dB; of ${player.notes.length} notes P ${score.precision.toFixed(3)} R ${score.recall.toFixed(3)} F ${score.f.toFixed(3)}; late ${ms(at(late, 0.1))} ${ms(at(late, 0.5))} ${ms(at(late, 0.9))} ms; tasks ${JSON.stringify(tasks)}\n`,
      );
      expect(leak).toBeGreaterThan(-7.5);
      expect(score.f).toBeGreaterThan(0.96);
      expect(Math.abs(at(late, 0.5))).toBeLessThan(0.015);
      expect(tasks.thread[0]).toBeLessThan(50);
      expect(watch.errors).toEqual([]);
    });
  }, 500_000);
});
