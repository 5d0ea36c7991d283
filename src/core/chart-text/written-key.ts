import { TONICS } from '../chart/tonics';
import type { NoteName } from '../theory/chord';
import { type KeyMode, keyName, pitchClassOf } from '../theory/pitch';

/** The other spelling of a key, sharps for flats or flats for sharps; null where musicians use one only. */
export const otherSpelling = (tonic: NoteName, mode: KeyMode): NoteName | null =>
  TONICS[mode].find((name) => name !== tonic && pitchClassOf(name) === pitchClassOf(tonic)) ?? null;

/** The key note as it is written in a mode: `Db` stays in major and becomes `C#` in minor. */
export const tonicIn = (tonic: NoteName, mode: KeyMode): NoteName =>
  TONICS[mode].includes(tonic) ? tonic : keyName(pitchClassOf(tonic), mode);
