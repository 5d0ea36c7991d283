import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice, usesTechnique } from '../harp/reach';
import { soundId } from '../harp/tab';
import type { Standing } from './bend-results';

/** What results make of the techniques in reach. */
export interface ReachChange {
  readonly technique: TechniqueChoice;
  readonly gained: readonly Sound[];
  readonly lost: readonly Sound[];
}

const withUse = (technique: TechniqueChoice, { technique: how, breath }: Sound): TechniqueChoice => {
  if (how === 'overbend') return { ...technique, overbends: true };
  return breath === 'draw' ? { ...technique, drawBends: true } : { ...technique, blowBends: true };
};

/**
 * Techniques as results have them: what is steady or coming is in reach, what does not come yet is not. Sounds without
 * results stay as the player chose; where one of a technique that was off comes, the others of it stay out.
 */
export const reachByResults = (
  harp: Harp,
  technique: TechniqueChoice,
  standings: ReadonlyMap<string, Standing>,
): ReachChange => {
  const judged = harp.sounds.filter(
    (sound) => sound.technique !== 'natural' && standings.has(soundId(sound)),
  );
  const comes = (sound: Sound): boolean => standings.get(soundId(sound)) !== 'not yet';
  const gained = judged.filter((sound) => comes(sound) && !isInReach(sound, technique));
  const lost = judged.filter((sound) => !comes(sound) && isInReach(sound, technique));
  if (gained.length === 0 && lost.length === 0) return { technique, gained, lost };
  const wider = gained.reduce(withUse, technique);
  const kept = harp.sounds
    .filter((sound) => usesTechnique(sound, wider) && !usesTechnique(sound, technique))
    .map(soundId);
  const off = new Set([...technique.off, ...kept, ...lost.map(soundId)]);
  for (const sound of gained) off.delete(soundId(sound));
  return { technique: { ...wider, off: [...off] }, gained, lost };
};
