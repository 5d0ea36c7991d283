/** What a file of music says of itself. */
export interface AudioTags {
  readonly title: string;
  /** What it belongs to: the name of the set; empty where it stands alone. */
  readonly album: string;
  /** Its place there, from 1, and how many there are; null where it stands alone. */
  readonly track: { readonly number: number; readonly of: number } | null;
}

/** The tags of a file that stands alone. */
export const titleOnly = (title: string): AudioTags => ({ title, album: '', track: null });

/** Letters that readers of RIFF information know: Latin 1, so accidentals are written as on a keyboard. */
const latin = (text: string): string =>
  text
    .replaceAll('♭', 'b')
    .replaceAll('♯', '#')
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/[–—]/g, '-')
    .replace(/[^\u0020-\u007e\u00a0-\u00ff]/g, '?');

/** A chunk of RIFF information: its name, its length with the zero at the end, its text, an even number of bytes. */
const infoChunk = (name: string, text: string): readonly number[] => {
  const bytes = [...latin(text)].map((letter) => letter.charCodeAt(0));
  const size = bytes.length + 1;
  return [
    ...[...name].map((letter) => letter.charCodeAt(0)),
    ...[size & 255, (size >> 8) & 255, (size >> 16) & 255, 0],
    ...bytes,
    0,
    ...(size % 2 === 1 ? [0] : []),
  ];
};

/**
 * The list of information that stands behind the samples of a WAV file ("Multimedia Programming Interface and Data
 * Specifications 1.0", 1991, LIST INFO): title, album, track. `ITRK` is what readers commonly take for the track.
 */
export const wavInfo = ({ title, album, track }: AudioTags): Uint8Array => {
  const chunks = [
    ...infoChunk('INAM', title),
    ...(album === '' ? [] : infoChunk('IPRD', album)),
    ...(track === null ? [] : infoChunk('ITRK', `${track.number}/${track.of}`)),
  ];
  const size = chunks.length + 4;
  return Uint8Array.from([
    ...[...'LIST'].map((letter) => letter.charCodeAt(0)),
    ...[size & 255, (size >> 8) & 255, (size >> 16) & 255, 0],
    ...[...'INFO'].map((letter) => letter.charCodeAt(0)),
    ...chunks,
  ]);
};

/** The comments of an Ogg stream (Vorbis comment header, as RFC 7845, 5.2 takes it): `NAME=value`. */
export const oggComments = ({ title, album, track }: AudioTags): readonly string[] => [
  `TITLE=${title}`,
  ...(album === '' ? [] : [`ALBUM=${album}`]),
  ...(track === null ? [] : [`TRACKNUMBER=${track.number}`, `TRACKTOTAL=${track.of}`]),
];

/** A size in seven bits a byte, the largest first (ID3v2.3 structure, 3.1). */
const sevenBits = (size: number): readonly number[] => [21, 14, 7, 0].map((by) => (size >> by) & 127);

const eightBits = (size: number): readonly number[] => [24, 16, 8, 0].map((by) => (size >> by) & 255);

/** UTF-16 with its byte order mark, the only kind of text that is more than Latin 1 there (ID3v2.3 structure, 3.3). */
const textFrame = (id: string, text: string): readonly number[] => {
  const units = Array.from({ length: text.length }, (_, at) => text.charCodeAt(at));
  const bytes = [1, 0xff, 0xfe, ...units.flatMap((unit) => [unit & 255, unit >> 8])];
  return [...Array.from(id, (letter) => letter.charCodeAt(0)), ...eightBits(bytes.length), 0, 0, ...bytes];
};

/**
 * The tag before the frames of an MP3 or AAC file: title, album, track. In ID3v2.3, since players of its time (cars,
 * old telephones) do not read 2.4 (common practice, no source).
 */
export const id3Tag = ({ title, album, track }: AudioTags): Uint8Array => {
  const frames = [
    ...textFrame('TIT2', title),
    ...(album === '' ? [] : textFrame('TALB', album)),
    ...(track === null ? [] : textFrame('TRCK', `${track.number}/${track.of}`)),
  ];
  return Uint8Array.from([0x49, 0x44, 0x33, 3, 0, 0, ...sevenBits(frames.length), ...frames]);
};
