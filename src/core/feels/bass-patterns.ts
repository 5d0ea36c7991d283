import type { FeelId } from './feel';

/**
 * Bass lines by feel: light, normal and driving. `walk` and `two` are made note by note (walking.ts); the others
 * are patterns in four-beat bars (`|` bar line, blanks between beats, one mark a step):
 * R root, 3 5 6 7 chord steps as the chord has them, 8 octave, b the fifth below, ^ the last note an octave away,
 * m the half step below the third, A approach to the next root, a the note before it, - hold, . rest.
 *
 * Sources: boogie line R 3 5 6 | b7 6 5 3 (studybass.com, "The boogie-woogie blues pattern"); 3+3+2 under the rhumba
 * ("12 Bar Blues, Part 2", ACEMM); two notes a bar, octave-doubled eighths and the others: common practice, no source.
 */
export type BassStyle = 'walk' | 'two' | { readonly riff: string };

const riffs = (...texts: readonly string[]): readonly BassStyle[] => texts.map((riff) => ({ riff }));

/** Indexed by level. */
export type BassBook = readonly [readonly BassStyle[], readonly BassStyle[], readonly BassStyle[]];

export const BASS_BOOK: Readonly<Record<FeelId, BassBook>> = {
  shuffle: [
    ['two', ...riffs('R - 5 A', 'R -- 3 5')],
    ['walk', ...riffs('R 3 5 6 | 7 6 5 3', 'R R 3 5', 'R 8 5 A')],
    ['walk', ...riffs('RR 33 55 66 | 77 66 55 3A', 'RR 33 55 6A')],
  ],
  'slow-12-8': [
    riffs('R-- --- 5-- --A', 'R-- --R 5-- --A'),
    ['walk', ...riffs('R-- 3-- 5-- 6-A', 'R-R --3 5-5 --A')],
    ['walk', ...riffs('R-R 3-3 5-5 6-A', 'R-- 3-3 5-- 6aA')],
  ],
  swing: [['two'], ['walk'], ['walk']],
  straight: [
    riffs('R- -- 5- -A', 'R- -R 5- --'),
    riffs('R- -R 5- 6A', 'R. .R R- 5A', 'R- -R -- 5-'),
    riffs('RR RR RR 5A', 'RR RR 55 6A'),
  ],
  'double-shuffle': [
    riffs('R 3 5 6 | 7 6 5 3', 'R R 5 6'),
    riffs('RR 33 55 66 | 77 66 55 33', 'RR RR 55 66'),
    riffs('RR 33 55 66 | 77 66 55 3A', 'RR RR 55 6A', 'RR 88 55 6A'),
  ],
  jump: [
    ['two'],
    ['walk', ...riffs('R 3 5 6 | 8 6 5 3', 'R 3 5 6 | 7 6 5 3')],
    ['walk', ...riffs('R 3 5 6 | 8 6 5 A')],
  ],
  boogie: [
    riffs('R 3 5 6 | 7 6 5 3'),
    riffs('R 3 5 6 | 7 6 5 3', 'RR 33 55 66 | 77 66 55 33'),
    riffs('R^ 3^ 5^ 6^ | 7^ 6^ 5^ 3^'),
  ],
  rhumba: [
    riffs('R- -- -- 5-', 'R- -3 -- 5-'),
    riffs('R- -3 -- 5-', 'R- -5 -- 8-'),
    riffs('R- -5 8- 5-', 'R- -3 5- 3A'),
  ],
  'second-line': [
    riffs('R--- --5- ---- --A-', 'R--- ---- 5--- --A-'),
    riffs('R--5 --6- 8--- 5-A-', 'R--R --5- --6- A---'),
    riffs('R--3 --5- 8-6- 5-A-', 'R--R --5- R-3- 5-A-'),
  ],
  train: [riffs('R - b -'), riffs('R b R b', 'R b 3 5'), riffs('R b R A', 'RR b. RR bA')],
  rock: [
    riffs('R- -- R- -A', 'R- -- 5- --'),
    riffs('RR RR RR RA', 'R- RR -R RA'),
    riffs('RR RR 55 77', 'RR R8 55 RA', 'RR RR RR 5A'),
  ],
  'minor-slow': [
    riffs('R--- ---- 5--- --A-', 'R--- ---- --R- --A-'),
    riffs('R--- --R- 5--- --7A', 'R--R ---- 5--- 7-A-'),
    riffs('R--R --5- 8--- 7-5A', 'R--R --R- 5--7 --aA'),
  ],
};

/** Ways from home up to the five chord in the bar before it (common practice, no source). */
export const TURNAROUND_RIFFS: readonly string[] = ['R m 3 A', 'R 3 5 A', 'R 8 5 A'];

/** Feels whose patterns may hand over to a walk in the last two bars. */
export const WALKS_OUT: ReadonlySet<FeelId> = new Set([
  'shuffle',
  'double-shuffle',
  'boogie',
  'jump',
  'slow-12-8',
  'train',
]);
