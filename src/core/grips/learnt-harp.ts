import { isRecord } from '../theory/is-record';
import { type KnownReeds, parseKnownReeds } from './known-reeds';

/** How the reeds of one kind of harp sound at one microphone, as it is kept. */
export interface LearntHarp {
  /** As `learntId` makes it. */
  readonly id: string;
  /** The kind of harp: its key, range and reeds. */
  readonly name: string;
  /** Id of the microphone. */
  readonly microphone: string;
  readonly known: KnownReeds;
}

/** Most harps kept, the one learnt first going: some 2 kB each. */
export const LEARNT_HARPS = 24;

const LONGEST = { microphone: 200, name: 300 } as const;

/** The one place of a kind of harp at a microphone. */
export const learntId = (microphone: string, kind: string): string => `${kind} at ${microphone}`;

/** Reads what was kept. Never throws: what names no microphone and harp, or holds nothing that was learnt, is left out. */
export const parseLearntHarp = (
  value: unknown,
): { readonly item: LearntHarp | null; readonly problems: readonly string[] } => {
  if (!isRecord(value) || typeof value.microphone !== 'string' || typeof value.name !== 'string')
    return { item: null, problems: ['A learnt harp names no microphone or harp and was left out.'] };
  const microphone = value.microphone.slice(0, LONGEST.microphone);
  const name = value.name.slice(0, LONGEST.name);
  const { known, problems } = parseKnownReeds(value.known);
  const item = known === null ? null : { id: learntId(microphone, name), name, microphone, known };
  return { item, problems };
};

const windowsOf = ({ known }: LearntHarp): number =>
  known.reeds.reduce((sum, { windows }) => sum + windows.reduce((most, each) => Math.max(most, each), 0), 0);

/** Of two of the same harp and microphone the one that heard more. */
export const joinLearnt = (present: LearntHarp, incoming: LearntHarp): LearntHarp =>
  windowsOf(incoming) > windowsOf(present) ? incoming : present;
