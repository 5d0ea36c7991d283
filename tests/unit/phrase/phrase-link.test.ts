import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bookSong } from '../../../src/core/book/book-song';
import { readSongText, songText } from '../../../src/core/book/song-link';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { typedCalls } from '../../../src/core/song/leads';
import { packText, unpackText } from '../../../src/link/packed-text';
import { anyPhrase } from '../../helpers/phrase-arbitraries';
import { soakRuns } from '../../helpers/soak';

const MOST = 100_000;

it('gives every phrase back as it was out of a link to its exercise', async () => {
  const short = anyPhrase.filter(
    (phrase) => phrase.notes.length > 0 && phrase.length <= 16 * 1440 && phrase.meter === '4/4',
  );
  await fc.assert(
    fc.asyncProperty(short, async (phrase) => {
      const trade = { on: true, calls: printPhrase(phrase, 'signs') };
      const song = bookSong({ id: '', name: 'Thursday' }, { ...DEFAULT_SETTINGS, trade }, []);
      const { item } = readSongText(await unpackText(await packText(songText(song, null), MOST), MOST));
      expect(item?.choices.trade).toEqual(trade);
      expect(typedCalls({ trade: item?.choices.trade ?? trade }, '4/4')[0]?.phrase).toEqual(phrase);
    }),
    { numRuns: soakRuns(1000) },
  );
});
