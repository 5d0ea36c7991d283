import type { ChordVoice } from '../score/voices';
import type { FeelId } from './feel';

/**
 * Chord rhythms by family of feels, by instrument, light to driving. Four-beat bars, one mark a step:
 * s short stab, S accented stab, h held until the next mark, p pushed: a short stab of the next chord before its
 * time, n neighbour chord (4 6 over the root, back at the next stroke), c slide from a half step below the next
 * stroke, d the stroke before a half step down, 5 6 7 two-note shuffle figure root with fifth, sixth, seventh, . rest.
 *
 * Charleston (1 and the "and" of 2) from memory; piano and guitar root-fifth/root-sixth figure, organ holds and
 * off-beat chops, piano answers on the "and", guitar off-beat stabs: common practice, no source.
 */
export type CompFamily =
  | 'shuffle'
  | 'boogie'
  | 'swing'
  | 'slow'
  | 'eighths'
  | 'latin'
  | 'street'
  | 'train'
  | 'ballad';

export const COMP_FAMILY: Readonly<Record<FeelId, CompFamily>> = {
  shuffle: 'shuffle',
  'double-shuffle': 'shuffle',
  boogie: 'boogie',
  swing: 'swing',
  jump: 'swing',
  'slow-12-8': 'slow',
  straight: 'eighths',
  rock: 'eighths',
  rhumba: 'latin',
  'second-line': 'street',
  train: 'train',
  'minor-slow': 'ballad',
};

/** Bars to choose from, indexed by level. */
export type CompBook = readonly [readonly string[], readonly string[], readonly string[]];

export const COMP_BOOK: Readonly<Record<CompFamily, Readonly<Record<ChordVoice, CompBook>>>> = {
  shuffle: {
    piano: [
      ['.. .s .. ..', '.. .s .. .s', 'h. .. .. .s', '.. .. .s s.'],
      ['.s .s .. .s', '.. Ss .. .s', 's. .s .. Ss', '.s .. .s .p', 'h. .s .. s.'],
      ['.s .s .s .s', '55 66 55 6S', 'S. .s .s Sp', '.s ns .s ns', 'sn s. sn s.'],
    ],
    'electric-piano': [
      ['h. .. .. ..', 'h. .. .h ..', '.. .h .. ..'],
      ['h. .s .. .s', '.s .. h. ..', 'h. .. .s .p'],
      ['s. .s h. .s', '.s .s .s .p', 'S. .s .. Ss'],
    ],
    organ: [
      ['h. .. .. ..', 'h. .. .. ..', '.. h. .. ..'],
      ['h. .. h. .s', '.s .s .s .s', 'h. .. .s .s'],
      ['.S .s .S .s', 'h. .n s. .s', '.s ns .s ns'],
    ],
    guitar: [
      ['.. s. .. s.', '.. S. .. .s', '.. s. .s ..'],
      ['55 66 55 66', '.. S. .. Ss', '.s .s .s .s', '55 66 77 66'],
      ['55 66 77 66', '.S .s .S .s', '55 6S 55 6S', '.. Sc S. Sp', 'S. ns S. ns'],
    ],
  },
  boogie: {
    piano: [
      ['.. .s .. .s', 'h. .. .s s.', '.s .. .s ..'],
      ['.s .s .. ss', 's. ns s. .s', '.s ns .. .s', 'ss .s ss ..'],
      ['ss ns ss ns', '.s ns .s ns', 's. ss n. ss', 'Ss .s Ss .p'],
    ],
    'electric-piano': [
      ['h. .. .. ..', '.. .s .. .s'],
      ['.s .s .. h.', 's. .s .. ns'],
      ['ss ns s. .s', '.s Sn .s Ss'],
    ],
    organ: [
      ['h. .. .. ..', 'h. .. .s .s'],
      ['.s .s .s .s', 'h. .. s. ns'],
      ['.S .s .S .s', '.s ns .s ns', 'Ss .s Ss .p'],
    ],
    guitar: [
      ['.. s. .. s.', '55 66 55 66'],
      ['55 66 77 66', '55 66 55 66', '.s .s .s .s'],
      ['55 66 77 66', 'S. ns S. ns', '.S .s .S .s'],
    ],
  },
  swing: {
    piano: [
      ['s. .. .. ..', 'h. .s .. ..', '.. .s .. ..', '.. .. .h ..'],
      ['h. .s .. ..', '.s .. .s ..', '.. .s .. .p', 's. .. s. .p', '.. s. .s ..'],
      ['S. .s .. .p', '.s .. Ss ..', '.s .s .. Sp', 's. .S .. s.'],
    ],
    'electric-piano': [
      ['h. .. .. ..', 'h. .h .. ..', '.. .h .. ..'],
      ['h. .h .. ..', 'h. .s .. .p', '.s .. h. ..'],
      ['s. .h .. .p', 'S. .s .. Sp', '.h .. .s ..'],
    ],
    organ: [
      ['h. .. .. ..', 'h. .. h. ..'],
      ['h. .. .s ..', '.s .. .s ..', 'h. .s .. .s'],
      ['s. .s .. .S', '.S .. .S ..', 'h. .. .S .p'],
    ],
    guitar: [
      ['.. s. .. s.', 's. .. s. ..'],
      ['s. S. s. S.', 's. S. s. Sp', '.. S. .. S.'],
      ['s. S. s. S.', 's. Sc s. S.', 's. S. .s Sp'],
    ],
  },
  slow: {
    piano: [
      ['h.. ... ... ...', '... ..s h.. ...', 'h.. ... ..s s..'],
      ['h.. ..s ..s s..', '..s s.. ..s s..', 's.. ..s h.. ..s', '.ss s.. .ss s..'],
      ['sss sss sss sss', '.ss S.. .ss S.s', '..s Sss ..s S.p'],
    ],
    'electric-piano': [
      ['h.. ... ... ...', 'h.. ... h.. ...'],
      ['h.. ... ..h ...', 'h.. ..s h.. ..s', '..s h.. ..s h..'],
      ['.ss h.. .ss h..', 'h.s ..s h.s S..'],
    ],
    organ: [
      ['h.. ... ... ...'],
      ['h.. ... h.. ...', 'h.. ... ... .ss', 'h.. ..s h.. ...'],
      ['h.. ..c h.. .ss', 'h.. S.. h.. S..', '.ss S.. h.. S.n'],
    ],
    guitar: [
      ['... s.. ... s..', 'h.. ... ... s..'],
      ['... S.. ... S.s', '..c S.. ..c S..', '..s s.. ..s s..'],
      ['.ss S.. .ss S..', '..c Scs ..c Scs', '..s S.s ..s S.p'],
    ],
  },
  eighths: {
    piano: [
      ['h. .. .. ..', '.. .s .. ..', 'h. .. .s ..'],
      ['s. .s .s ..', 'h. .s .. s.', '.s .. .s ..', 's. .. .s sp'],
      ['ss ns ss ns', 'S. .S .n S.', 's. .s .S .p'],
    ],
    'electric-piano': [
      ['h. .. .. ..', 'h. .. .h ..'],
      ['h. .s .. .s', 's. .h .. ..', '.s .. h. .s'],
      ['s. .s .S ..', 's. .s .s .p', 'S. .s s. .s'],
    ],
    organ: [
      ['h. .. .. ..'],
      ['h. .. .. .s', 'h. .. h. ..', '.s .s .s .s'],
      ['.S .S .S .S', 'h. .s .S .p', 's. .s .S ..'],
    ],
    guitar: [
      ['.. s. .. s.', 'h. .. .. ..'],
      ['.. S. .. S.', '55 66 55 66', 's. .s .. S.', '.. Ss .. S.'],
      ['55 66 77 66', 'Sn .s .S S.', '55 6S 55 6S', 'S. nS .s Sp'],
    ],
  },
  latin: {
    piano: [
      ['h. .s .. s.', 's. .s .. ..', '.. .. .s s.'],
      ['s. .s .. s.', '.s .s s. .s', 's. .s .s s.', '.. .s .s s.'],
      ['s. .S .s Ss', '.s sS .s Ss', 'S. .S s. S.'],
    ],
    'electric-piano': [
      ['h. .h .. ..', 'h. .. .. s.'],
      ['s. .s .. s.', 'h. .s .. s.', '.s .. .s s.'],
      ['s. .S .s S.', '.s sS .. Ss'],
    ],
    organ: [
      ['h. .. .. ..', 'h. .. .. s.'],
      ['h. .s .. s.', '.s .. .s s.', 'h. .. .s .s'],
      ['s. .S .. S.', '.S .s .S Ss'],
    ],
    guitar: [
      ['.. s. .. s.', 's. .s .. ..'],
      ['.. S. .. Ss', 's. .s .. s.', '.s S. .s S.'],
      ['s. .S .. S.', '.s Ss .s Ss', 's. .S .s S.'],
    ],
  },
  street: {
    piano: [
      ['s... ..s. .... ....', '..s. .... ..s. ....', 'h... .... ..s. ....'],
      ['s..s ..s. .... s...', '..s. ..s. ..s. ..s.', 's..s ..s. ..s. ....'],
      ['s..S ..s. ..s. S...', 'S..s ..S. ..ss S..p', '..sS ..s. ..sS ..s.'],
    ],
    'electric-piano': [
      ['h... .... h... ....', '..s. .... ..h. ....'],
      ['s..s ..s. .... h...', '..s. ..s. ..s. ..s.'],
      ['s..S ..s. ..s. S...', '..s. ..Ss ..s. ..Ss'],
    ],
    organ: [
      ['h... .... .... ....', 'h... .... ..s. ....'],
      ['..s. ..s. ..s. ..s.', 'h... ..s. h... ..s.'],
      ['..S. ..s. ..Ss ..s.', 's..S ..s. ..s. S...'],
    ],
    guitar: [
      ['..s. .... ..s. ....', '.... s... .... s...'],
      ['..s. ..s. ..s. ..s.', '..s. s... ..s. s.s.'],
      ['..ss ..S. ..ss ..S.', 's..S ..s. ..s. S...'],
    ],
  },
  train: {
    piano: [
      ['.s .s .s .s', '.. .s .. .s'],
      ['.s .s .s .s', '.s .s .s ss'],
      ['.S .s .S .s', '.s ..ss .s .s'],
    ],
    'electric-piano': [
      ['h. .. .. ..', '.. .s .. .s'],
      ['.s .s .s .s', 'h. .s .. .s'],
      ['.S .s .S .s', '.s .s .s sp'],
    ],
    organ: [['h. .. .. ..'], ['.s .s .s .s', 'h. .. h. ..'], ['.S .s .S .s', 'h. .s .S .s']],
    guitar: [
      ['.s .s .s .s', '.. .s .. .s'],
      ['.s .s .s .s', '.S ..ss .S ..ss', '.s .s .s ..ss'],
      ['..ss ..ss ..ss ..ss', '.S .s .S ..ss', '..Ss ..Ss ..Ss ..Ss'],
    ],
  },
  ballad: {
    piano: [
      ['h... .... .... ....', 'h... .... ..h. ....'],
      ['h... ..s. h... ...s', 's... ..h. .... ..s.', '.... s... ..s. s...'],
      ['h..s ..s. h..s ..s.', '..s. S.s. ..s. S..p'],
    ],
    'electric-piano': [
      ['h... .... .... ....', 'h... .... h... ....'],
      ['h... ...s ..h. ....', 'h..h .... .... s...', 'h... .... ..s. s...'],
      ['h..s ..s. h... ..s.', 's..h .... ..s. S..p'],
    ],
    organ: [
      ['h... .... .... ....'],
      ['h... .... h... ....', 'h... .... ..s. s...'],
      ['h... ..s. h... .ss.', 'h... S... h... S..s'],
    ],
    guitar: [
      ['.... s... .... s...', 'h... .... .... s...'],
      ['.... S... .... S.s.', '..s. S... ..s. S...'],
      ['..ss S... ..ss S...', '.... S.ss .... S.ss'],
    ],
  },
};

/**
 * Bars before a closing five chord, by family: guide tones sliding down by half steps, or a stroke on every other
 * beat. Empty: the family has none.
 */
export const TURNAROUND_BARS: Readonly<Record<CompFamily, readonly string[]>> = {
  boogie: ['S. d. d. d.', 's. s. s. sp'],
  shuffle: ['S. d. d. .p', 'S. d. d. d.', 's. .s s. .s'],
  swing: ['S. d. d. .p', 's. .s .. .p'],
  slow: ['S.. d.. d.. ..p', 'S.. d.. d.. d..', 'S.. ..d ..d ..p'],
  eighths: ['S. .s .s .p', 's. s. s. sp'],
  latin: [''],
  street: ['s..s ..s. s..s ..s.'],
  train: [''],
  ballad: [''],
};
