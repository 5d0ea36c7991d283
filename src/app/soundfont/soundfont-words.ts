import type { FontRefusal } from '../../audio/soundfont/font-messages';
import { MOST_SOUND_FONT_BYTES } from '../../core/formats/sound-font';
import { sizeText } from '../../core/theory/quantities';

const reason = (why: FontRefusal): string => {
  switch (why.kind) {
    case 'empty':
      return 'is empty. Choose another file.';
    case 'too large':
      return `is ${sizeText(why.bytes)} large. Files up to ${sizeText(MOST_SOUND_FONT_BYTES)} can be used, since all of it has to lie in memory; choose a smaller one.`;
    case 'other':
      return 'is not a SoundFont. Choose a file that ends in .sf2 or .sf3.';
    case 'cut short':
      return `is not whole: ${sizeText(why.missing)} are missing at its end. Download or copy it once more.`;
    case 'other version':
      return `is a SoundFont of version ${why.version}. Versions 2 and 3 can be played; choose another file.`;
    case 'damaged':
      return `is damaged: ${why.detail}. Download or copy it once more, or choose another file.`;
    case 'unreadable':
      return `could not be read (${why.detail}). See that it is still where it was, then choose it again.`;
    case 'no player':
      return `could not be opened, because the part of the program for it did not load (${why.detail}). Try again; if it stays away, open Combshed in another tab and load the file there.`;
    case 'no instruments':
      return 'has none of the band’s instruments where General MIDI has them: basses, piano, electric piano, organ, guitar, harmonica or a drum set. Choose another file.';
    case 'too slow':
      return `was not read within ${why.seconds} seconds, so it was given up. Choose a smaller file.`;
    case 'overtaken':
      return 'was left for another file.';
  }
};

/** Why a file is not used and what to do about it. The band plays on as it did. */
export const refusalText = (name: string, why: FontRefusal): string =>
  `“${name}” ${reason(why)} The band plays on as before.`;

/** What to tell when the file in use broke down. */
export const lostText = (name: string, detail: string): string =>
  `“${name}” can be played no longer (${detail}), so the built-in sounds play. Choose it for a part again to try once more.`;

/** What to tell when parts ask for a file that the browser gave up. */
export const GONE_TEXT =
  'The browser no longer keeps your sounds, so the built-in sounds play. Load the file again to use it.';

/** What to tell when a file could not be kept for the next visit. */
export const notKeptText = (name: string, full: boolean): string =>
  full
    ? `The browser’s storage for this page is full, so “${name}” holds until you close the page. Free some site data, then load it again.`
    : `The browser does not let this page keep “${name}”, so it holds until you close the page.`;

/** What to tell when the kept file stays. */
export const NOT_FORGOTTEN_TEXT =
  'The browser did not let go of the file. Clear this page’s site data in the browser’s settings to remove it.';
