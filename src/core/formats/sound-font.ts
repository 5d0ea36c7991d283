/**
 * Whether bytes are a whole SoundFont file, looked at before anything is made of them. Structure and rules: SoundFont
 * Technical Specification 2.04, sections 4 (file), 5 (versions), 6 (samples) and 7 (articulation data), which asks
 * readers to reject files that break them; version 3 files keep the structure and hold Ogg Vorbis in place of PCM.
 */

/** Larger files are refused: all of it has to lie in memory beside the page. */
export const MOST_SOUND_FONT_BYTES = 200e6;

/** What is wrong with a file, and where that can be said, how much. */
export type SoundFontFlaw =
  | { readonly kind: 'empty' }
  | { readonly kind: 'too large'; readonly bytes: number }
  /** Another kind of file. */
  | { readonly kind: 'other' }
  | { readonly kind: 'cut short'; readonly missing: number }
  | { readonly kind: 'other version'; readonly version: number }
  | { readonly kind: 'damaged'; readonly detail: string };

interface Chunk {
  readonly id: string;
  readonly from: number;
  readonly to: number;
}

/** The tables of the articulation data in their order, with the bytes of one record. */
const TABLES: readonly (readonly [id: string, record: number])[] = [
  ['phdr', 38],
  ['pbag', 4],
  ['pmod', 10],
  ['pgen', 4],
  ['inst', 22],
  ['ibag', 4],
  ['imod', 10],
  ['igen', 4],
  ['shdr', 46],
];

/** A table that points into another: where in its record the index stands. */
const POINTERS: readonly (readonly [table: string, offset: number, target: string])[] = [
  ['phdr', 24, 'pbag'],
  ['pbag', 0, 'pgen'],
  ['pbag', 2, 'pmod'],
  ['inst', 20, 'ibag'],
  ['ibag', 0, 'igen'],
  ['ibag', 2, 'imod'],
];

/** Generators whose amount is an index, and into what. */
const LINKS: readonly (readonly [table: string, generator: number, target: string])[] = [
  ['pgen', 41, 'inst'],
  ['igen', 53, 'shdr'],
];

const HEADER = 8;

/** More chunks than any list of such a file has: one that was filled with zeros would hold millions of empty ones. */
const MOST_CHUNKS = 1000;

const damaged = (detail: string): SoundFontFlaw => ({ kind: 'damaged', detail });

class Bytes {
  private readonly view: DataView;

  constructor(readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  word(at: number): number {
    return this.view.getUint16(at, true);
  }

  dword(at: number): number {
    return this.view.getUint32(at, true);
  }

  id(at: number): string {
    return String.fromCharCode(...this.bytes.subarray(at, at + 4));
  }

  /** The chunks between two places; null when one reaches past the end. The first thousand are enough. */
  chunks(from: number, to: number): readonly Chunk[] | null {
    const found: Chunk[] = [];
    for (let at = from; at + HEADER <= to && found.length < MOST_CHUNKS; ) {
      const size = this.dword(at + 4);
      const chunk = { id: this.id(at), from: at + HEADER, to: at + HEADER + size };
      if (chunk.to > to) return null;
      found.push(chunk);
      at = chunk.to + (size % 2);
    }
    return found;
  }
}

/** The content of a list of this type; null when it is not there or runs over. */
const listOf = (bytes: Bytes, chunk: Chunk | undefined, type: string): readonly Chunk[] | null => {
  if (chunk?.id !== 'LIST' || chunk.to - chunk.from < 4 || bytes.id(chunk.from) !== type) return null;
  return bytes.chunks(chunk.from + 4, chunk.to);
};

const findVersionFlaw = (bytes: Bytes, info: readonly Chunk[]): SoundFontFlaw | null => {
  const version = info.find(({ id }) => id === 'ifil');
  if (version === undefined || version.to - version.from !== 4) return damaged('it does not say its version');
  const major = bytes.word(version.from);
  return major === 2 || major === 3 ? null : { kind: 'other version', version: major };
};

interface Table extends Chunk {
  readonly record: number;
  /** Records, the closing one not counted. */
  readonly count: number;
}

const readTables = (articulation: readonly Chunk[]): ReadonlyMap<string, Table> | string => {
  const tables = new Map<string, Table>();
  for (const [index, [id, record]] of TABLES.entries()) {
    const chunk = articulation[index];
    if (chunk?.id !== id) return `its table ${id} is missing`;
    const size = chunk.to - chunk.from;
    if (size < record || size % record !== 0) return `its table ${id} is not whole`;
    tables.set(id, { ...chunk, record, count: size / record - 1 });
  }
  return tables;
};

/** Indices grow from record to record, and the closing record's is the last. */
const findPointerFlaw = (bytes: Bytes, tables: ReadonlyMap<string, Table>): string | null => {
  for (const [id, offset, target] of POINTERS) {
    const table = tables.get(id);
    const most = tables.get(target)?.count ?? 0;
    let last = 0;
    for (let at = (table?.from ?? 0) + offset; at < (table?.to ?? 0); at += table?.record ?? 1) {
      const index = bytes.word(at);
      if (index < last || index > most) return `its table ${id} points to nothing`;
      last = index;
    }
  }
  return null;
};

const findLinkFlaw = (bytes: Bytes, tables: ReadonlyMap<string, Table>): string | null => {
  for (const [id, generator, target] of LINKS) {
    const table = tables.get(id);
    const count = tables.get(target)?.count ?? 0;
    const end = (table?.from ?? 0) + (table?.count ?? 0) * 4;
    for (let at = table?.from ?? 0; at < end; at += 4) {
      if (bytes.word(at) === generator && bytes.word(at + 2) >= count)
        return `its table ${id} names ${target === 'inst' ? 'an instrument' : 'a sample'} that is not there`;
    }
  }
  return null;
};

/** What keeps bytes from being a SoundFont file of version 2 or 3; null when nothing does. Never throws. */
export const findSoundFontFlaw = (file: Uint8Array): SoundFontFlaw | null => {
  if (file.length === 0) return { kind: 'empty' };
  if (file.length > MOST_SOUND_FONT_BYTES) return { kind: 'too large', bytes: file.length };
  const bytes = new Bytes(file);
  if (file.length < 12 || bytes.id(0) !== 'RIFF' || bytes.id(8) !== 'sfbk') return { kind: 'other' };
  const end = HEADER + bytes.dword(4);
  if (end > file.length) return { kind: 'cut short', missing: end - file.length };
  const lists = bytes.chunks(12, end);
  if (lists === null) return damaged('a part of it is longer than the whole');
  if (lists.length >= MOST_CHUNKS) return damaged('it has too many parts');
  const [info, samples, articulation] = [
    listOf(bytes, lists[0], 'INFO'),
    listOf(bytes, lists[1], 'sdta'),
    listOf(bytes, lists[2], 'pdta'),
  ];
  if (info === null || samples === null || articulation === null)
    return damaged('its three parts are not all there');
  const version = findVersionFlaw(bytes, info);
  if (version !== null) return version;
  if (samples[0]?.id !== 'smpl') return damaged('it holds no samples');
  const tables = readTables(articulation);
  if (typeof tables === 'string') return damaged(tables);
  if (tables.get('phdr')?.count === 0) return damaged('it holds no instruments');
  const flaw = findPointerFlaw(bytes, tables) ?? findLinkFlaw(bytes, tables);
  return flaw === null ? null : damaged(flaw);
};
