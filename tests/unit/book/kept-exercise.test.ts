import { describe, expect, it } from 'vitest';
import { parseBookSong, SONG_LIMITS } from '../../../src/core/book/book-song';
import { parseKeptExercise } from '../../../src/core/book/kept-exercise';
import { parseKeptPhrase } from '../../../src/core/phrasebook/kept-phrase';
import { STARTER_CALLS } from '../../../src/core/phrasebook/starter-set';

describe('what lies on a shelf', () => {
  it.each([
    [
      'words of a song',
      parseBookSong,
      { name: 'Gate', choices: {}, words: 7 },
      'Its words could not be read',
    ],
    [
      'words of a song that are many',
      parseBookSong,
      { name: 'Gate', choices: {}, words: 'x'.repeat(SONG_LIMITS.words + 1) },
      'the first 2000 letters',
    ],
    [
      'earlier versions of an exercise',
      parseKeptExercise,
      { name: 'Gate', choices: {}, earlier: ['no song'] },
      'The exercise “Gate”: Some of its earlier versions',
    ],
    [
      'position of a phrase',
      parseKeptPhrase,
      { ...STARTER_CALLS[0], position: 13 },
      'Its position could not',
    ],
    ['level of a phrase', parseKeptPhrase, { ...STARTER_CALLS[0], level: '2' }, 'Its level could not'],
    ['words of a phrase', parseKeptPhrase, { ...STARTER_CALLS[0], words: [] }, 'Its words could not'],
    ['tags of a phrase', parseKeptPhrase, { ...STARTER_CALLS[0], tags: 'slow' }, 'Its tags could not'],
    [
      'earlier notes of a phrase',
      parseKeptPhrase,
      { ...STARTER_CALLS[0], earlier: [{}] },
      'earlier versions',
    ],
    ['name of a phrase', parseKeptPhrase, { ...STARTER_CALLS[0], name: 4 }, 'It had no name'],
  ])('says that the %s could not be kept', (_, parse, value, sentence) => {
    const { item, problems } = parse(value);
    expect(problems.join(' ')).toContain(sentence);
    expect(parse(JSON.parse(JSON.stringify(item))).problems).toEqual([]);
  });
});
