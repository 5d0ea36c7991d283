import {
  aboutTake,
  type KeptTake,
  keptTake,
  MOST_TAKE_BYTES,
  parseKeptTake,
  storableTake,
} from '../../core/takes/kept-take';
import type { TakeSound } from '../../core/takes/take-sound';
import { isRecord } from '../../core/theory/is-record';
import { counted } from '../../core/theory/wording';
import type { KeptLog } from '../../storage/kept-log';
import type { Notice } from '../keeping/notice';
import type { ListedShelf, TakenIn } from '../keeping/shelf-list';
import type { Stand } from '../song/feature';
import type { TakesState } from './takes-state';

/** Takes that are kept in the browser's database, read anew whenever they are asked for: they are too large to be held. */
export interface KeptTakes {
  /** Shows what is kept. */
  read(): Promise<void>;
  /** Keeps a take; says what came of it. */
  keep(name: string, sound: TakeSound): Promise<string>;
  find(id: string): Promise<KeptTake | null>;
  /** Takes one out; it can be brought back until the page is closed. */
  drop(id: string): Promise<void>;
  restore(): Promise<void>;
  dispose(): void;
}

const isSamples = (value: unknown): Int16Array | null => (value instanceof Int16Array ? value : null);

/** Bytes turned into letters at a time. */
const PIECE = 0x6000;

/** Samples as text (base64), low bytes first. */
const textOf = (samples: Int16Array): string => {
  const bytes = new DataView(new ArrayBuffer(samples.length * 2));
  samples.forEach((sample, i) => void bytes.setInt16(2 * i, sample, true));
  const all = new Uint8Array(bytes.buffer);
  let text = '';
  for (let at = 0; at < all.length; at += PIECE)
    text += btoa(String.fromCharCode(...all.subarray(at, at + PIECE)));
  return text;
};

const samplesOf = (value: unknown): Int16Array | null => {
  if (typeof value !== 'string') return null;
  try {
    const letters = atob(value);
    const bytes = new DataView(Uint8Array.from(letters, (letter) => letter.charCodeAt(0)).buffer);
    return Int16Array.from({ length: Math.floor(letters.length / 2) }, (_, i) => bytes.getInt16(2 * i, true));
  } catch {
    return null;
  }
};

const sizeOf = (takes: readonly KeptTake[]): number =>
  takes.reduce((sum, take) => sum + aboutTake(take).bytes, 0);

/** A take as it lies in the database; other versions may have kept it under another key than its id. */
interface Row {
  readonly key: string;
  readonly take: KeptTake;
}

const parseRow = (row: unknown): Row | null => {
  const take = parseKeptTake(row, isSamples);
  if (take === null) return null;
  return { key: isRecord(row) && typeof row.id === 'string' ? row.id : take.id, take };
};

/** They stay where they are, for a version of this program that can read them. */
const unreadTakes = (count: number): Notice => ({
  id: 'unread-takes',
  tone: 'trouble',
  text: `${counted(count, 'kept take')} could not be read and ${count === 1 ? 'is' : 'are'} not shown; nothing was deleted.`,
});

type Needs = Pick<Stand<TakesState>, 'store' | 'keeper' | 'board'>;

/** Opens the takes that are kept; nothing is read before it is asked for. */
export const openKeptTakes = (stand: Needs, kept: KeptLog | undefined): KeptTakes => new Kept(stand, kept);

class Kept implements KeptTakes {
  private readonly stand: Needs;
  private readonly kept: KeptLog | undefined;
  private dropped: KeptTake | null = null;
  private readonly leave: () => void;

  constructor(stand: Needs, kept: KeptLog | undefined) {
    this.stand = stand;
    this.kept = kept;
    this.leave = kept === undefined ? () => undefined : stand.keeper.shelves.add('takes', this.shelf());
  }

  async read(): Promise<void> {
    this.show(await this.all());
  }

  async keep(name: string, sound: TakeSound): Promise<string> {
    const take = keptTake(name, sound);
    const before = await this.all();
    if (before.some(({ id }) => id === take.id)) return 'It is kept already.';
    if (sizeOf([...before, take]) > MOST_TAKE_BYTES)
      return `There is room for ${MOST_TAKE_BYTES / 1e6} MB of takes. Save some as WAV and take them out, then keep this one.`;
    const trouble = await this.put([take]);
    this.show(await this.all());
    return trouble ?? `“${take.name}” is kept in this browser.`;
  }

  async find(id: string): Promise<KeptTake | null> {
    return (await this.all()).find((take) => take.id === id) ?? null;
  }

  async drop(id: string): Promise<void> {
    const rows = (await this.rows()).filter(({ take }) => take.id === id);
    this.dropped = rows[0]?.take ?? null;
    await this.kept?.remove(rows.map(({ key }) => key));
    this.show(await this.all());
  }

  async restore(): Promise<void> {
    const { dropped } = this;
    this.dropped = null;
    if (dropped !== null) await this.put([dropped]);
    this.show(await this.all());
  }

  dispose(): void {
    this.leave();
  }

  private show(takes: readonly KeptTake[]): void {
    const dropped = this.dropped?.name ?? null;
    this.stand.store.setState((now) => ({ takes: { ...now.takes, shelf: takes.map(aboutTake), dropped } }));
  }

  private async all(): Promise<readonly KeptTake[]> {
    return [...new Map((await this.rows()).map(({ take }) => [take.id, take])).values()];
  }

  private async rows(): Promise<readonly Row[]> {
    const reading = await this.kept?.read();
    if (reading?.kind !== 'rows') return [];
    const rows = reading.rows.flatMap((row) => parseRow(row) ?? []);
    const unread = reading.rows.length - rows.length;
    if (unread > 0) this.stand.board.post(unreadTakes(unread));
    return rows;
  }

  /** @returns what went wrong, in a sentence; null when all is safe. */
  private async put(takes: readonly KeptTake[]): Promise<string | null> {
    if (this.kept === undefined) return 'This browser keeps no takes.';
    const writing = await this.kept.put(takes.map((take) => storableTake(take, (side) => side)));
    if (writing.kind === 'written') return null;
    return writing.kind === 'full'
      ? 'It was not kept: the browser has no room left for this page. Save it as WAV, or take another one out.'
      : 'It was not kept: the browser does not let this page keep anything. Save it as WAV.';
  }

  /** As a file with everything sees them, where they are wanted in it. */
  private shelf(): ListedShelf {
    return {
      noun: 'take',
      large: true,
      items: async () => (await this.all()).map((take) => storableTake(take, textOf)),
      takeIn: async (things): Promise<TakenIn> => {
        const here = await this.all();
        const read = things.map((thing) => parseKeptTake(thing, samplesOf));
        const takes = new Map(read.flatMap((take) => (take === null ? [] : [[take.id, take] as const])));
        const fresh = [...takes.values()].filter(({ id }) => here.every((each) => each.id !== id));
        const fit = fresh.filter((_, i) => sizeOf([...here, ...fresh.slice(0, i + 1)]) <= MOST_TAKE_BYTES);
        const trouble = fit.length > 0 ? await this.put(fit) : null;
        const unread = read.filter((take) => take === null).length;
        this.show(await this.all());
        return {
          added: trouble === null ? fit.length : 0,
          known: takes.size - fresh.length,
          ...{ copied: 0, newIds: new Map() },
          problems: [
            ...(unread > 0 ? [`${unread} of the takes could not be read and were left out.`] : []),
            ...(fit.length < fresh.length
              ? [
                  `For ${fresh.length - fit.length} of the takes there is no room: ${MOST_TAKE_BYTES / 1e6} MB are kept at most.`,
                ]
              : []),
            ...(trouble === null ? [] : [trouble]),
          ],
        };
      },
    };
  }
}
