import { describe, expect, it } from 'vitest';
import { parseBookSong } from '../../../src/core/book/book-song';
import { parseOwnChart } from '../../../src/core/chart-text/own-chart';
import { parseHarpCase } from '../../../src/core/harp/harp-case';
import { PHRASE_LIMITS, parseKeptPhrase } from '../../../src/core/phrasebook/kept-phrase';
import { keptTags } from '../../../src/core/theory/kept-tags';
import { keptText, LONGEST_NAME } from '../../../src/core/theory/kept-text';

const SOUND = { hole: 4, breath: 'draw', technique: 'natural', bend: 0 };
const ONE_NOTE = { meter: '4/4', length: 480, notes: [{ at: 0, length: 480, sounds: [SOUND] }] };

describe('text that is kept', () => {
  // Unicode 15, D71 and D72: a high surrogate alone is no character, and UTF-8 has no bytes for it.
  const cutAt = (length: number): string => `${'a'.repeat(length - 1)}🎶`;

  it('is never cut in the middle of a character', () => {
    expect(keptText(cutAt(LONGEST_NAME))).toBe('a'.repeat(LONGEST_NAME - 1));
    expect(keptText(`  ${'🎶'.repeat(100)}`)).toBe('🎶'.repeat(40));
    expect(keptText('\ud800\ud800Ferry\udc00')).toBe('Ferry');
  });

  it.each([
    ['song', LONGEST_NAME, (name: string) => parseBookSong({ name, choices: {} }).item?.name],
    ['chart', LONGEST_NAME, (name: string) => parseOwnChart({ name, text: '| C |' }).chart?.name],
    ['harp', LONGEST_NAME, (name: string) => parseHarpCase([{ name, key: 0 }]).harps[0]?.name],
    ['phrase', PHRASE_LIMITS.name, (name: string) => parseKeptPhrase({ name, phrase: ONE_NOTE }).item?.name],
  ])('so the name of a %s is whole characters', (_, longest, nameOf) => {
    expect(nameOf(cutAt(longest))).toBe('a'.repeat(longest - 1));
  });

  it('has tags once each, without what parts them when they are typed', () => {
    expect(keptTags([' slow ', 'slow', 'one, two', '', 7])).toEqual(['slow', 'one  two']);
  });
});
