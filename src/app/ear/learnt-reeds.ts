import { harpKind } from '../../core/bends/bend-results';
import type { KnownReeds } from '../../core/grips/known-reeds';
import {
  joinLearnt,
  LEARNT_HARPS,
  type LearntHarp,
  learntId,
  parseLearntHarp,
} from '../../core/grips/learnt-harp';
import type { EarChoice, LearntReeds } from '../../mic/microphone';
import { openShelf } from '../keeping/shelf';
import type { EarStand } from './ear-state';

/** Keeps how the reeds of each harp sound at each microphone. */
export interface LearntShelf {
  /** What is known of the harp in hand at the microphone that is open; nothing while none is. */
  now(): Pick<EarChoice, 'reeds'>;
  /** Takes what the ear has learnt. */
  take(learnt: LearntReeds): void;
  /** Forgets every harp at the microphone that is open; the ear is to be told. */
  forget(): void;
  /** To be called after any change of state: counts the reeds that are known. */
  follow(): void;
  dispose(): void;
}

/** A kind of harp at a microphone. */
type Place = Pick<LearntHarp, 'id' | 'name' | 'microphone'>;

/** Opens the shelf. */
export const openLearntReeds = ({ store, kept, keeper, board }: EarStand): LearntShelf => {
  /** Where what is learnt belongs, by the key it comes back under. */
  const places = new Map<string, Place>();
  let forgotten = 0;
  const microphoneNow = (): string | null => {
    const { status } = store.getState().ear;
    return 'input' in status ? status.input.id : null;
  };
  const placeNow = (): Place | null => {
    const microphone = microphoneNow();
    if (microphone === null) return null;
    const name = harpKind(store.getState().now.tune.harp);
    return { id: learntId(microphone, name), name, microphone };
  };
  const knownAt = (place: Place | null): KnownReeds | null =>
    shelf.items().find(({ id }) => id === place?.id)?.known ?? null;
  const follow = (): void => {
    const learnt = knownAt(placeNow())?.reeds.length ?? 0;
    if (learnt !== store.getState().ear.learnt) store.setState(({ ear }) => ({ ear: { ...ear, learnt } }));
  };
  const shelf = openShelf<LearntHarp>({
    ...{ kept, keeper, name: 'reeds', noun: 'learnt harp', parse: parseLearntHarp, join: joinLearnt },
    onChange: follow,
    onNotice: board.post,
  });
  return {
    now: () => {
      const place = placeNow();
      if (place === null) return {};
      const key = `${forgotten} ${place.id}`;
      places.set(key, place);
      return { reeds: { key, known: knownAt(place) } };
    },
    take: ({ key, known }) => {
      const place = places.get(key);
      if (place === undefined || known === null) return;
      shelf.put({ ...place, known });
      const [oldest] = shelf.items();
      if (shelf.items().length > LEARNT_HARPS && oldest !== undefined) shelf.remove(oldest.id);
    },
    forget: () => {
      const microphone = microphoneNow();
      // What was learnt before comes back under a key that is known no more.
      places.clear();
      forgotten += 1;
      for (const each of shelf.items()) if (each.microphone === microphone) shelf.remove(each.id);
    },
    follow,
    dispose: shelf.dispose,
  };
};
