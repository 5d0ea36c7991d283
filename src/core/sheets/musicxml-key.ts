import type { BarKey } from '../chart/chart';
import { SHARPS_IN_ORDER } from '../theory/letters';
import { isMinorMode, MODE_FIFTHS } from './modes';
import { numberAt, textAt, type XmlNode } from './xml-node';

/** Where C, the major key without a sign, stands in it. */
const HOME = 1;

/**
 * A `key` of MusicXML: its signature of sharps (+) or flats (−) belongs to the mode it names, so that no sign is C
 * major, A minor, D dorian or G mixolydian; major where it names none. Null for what is no signature of up to seven.
 */
export const sheetKey = (key: XmlNode | undefined): BarKey | null => {
  const fifths = numberAt(key, 'fifths');
  if (fifths === null || Math.abs(fifths) > 7) return null;
  const mode = textAt(key, 'mode').toLowerCase().slice(0, 3);
  const place = HOME + Math.round(fifths) - (MODE_FIFTHS[mode] ?? 0);
  const rounds = Math.floor(place / SHARPS_IN_ORDER.length);
  const sign = (rounds < 0 ? 'b' : '#').repeat(Math.abs(rounds));
  return {
    tonic: SHARPS_IN_ORDER.charAt(place - SHARPS_IN_ORDER.length * rounds) + sign,
    mode: isMinorMode(mode) ? 'minor' : 'major',
  };
};
