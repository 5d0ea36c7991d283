/** What an ear learns of a harp’s reeds, carried from one to the next, and told now and then so that it can be kept. */
import { createReedProfiles, type ReedProfiles } from '../core/grips/reed-profiles';
import type { EarChoice, LearntReeds } from './microphone';

/** Keeps what is known of reeds while ears come and go. */
export interface ReedMemory {
  /** The reeds for an ear that begins, with what earlier ears of the same harp learnt, or else what was kept. */
  begin(choice: EarChoice): ReedProfiles;
  /** To be called now and then, seconds: tells what was learnt since the last time. */
  look(now: number): void;
  /** Tells at once. */
  tellNow(): void;
}

/** Seconds from one telling to the next: what a page that is closed may lose. */
const EVERY = 10;

/** A memory of one stream. `tell` is called with what is to be kept, only where the choice says under which name. */
export const createReedMemory = (tell: (learnt: LearntReeds) => void): ReedMemory => {
  let key: string | null = null;
  let profiles: ReedProfiles | null = null;
  let told = '';
  let last = 0;
  const tellNow = (): void => {
    if (key === null || profiles === null) return;
    const known = profiles.known();
    const text = JSON.stringify(known);
    if (text !== told && known.reeds.length > 0) tell({ key, known });
    told = text;
  };
  return {
    begin: ({ harp, reference, reeds }) => {
      const goesOn = key !== null && reeds?.key === key;
      const known = goesOn ? (profiles?.known() ?? null) : (reeds?.known ?? null);
      if (!goesOn) tellNow();
      profiles = createReedProfiles(harp, reference, known);
      key = reeds?.key ?? null;
      if (!goesOn) told = JSON.stringify(profiles.known());
      return profiles;
    },
    look: (now) => {
      if (now - last < EVERY) return;
      last = now;
      tellNow();
    },
    tellNow,
  };
};
