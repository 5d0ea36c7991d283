import { abcMelody } from '../core/melody/abc-melody';
import type { Melody } from '../core/melody/melody';
import { midiMelodies } from '../core/melody/midi-melody';
import { musicXmlMelodies } from '../core/melody/musicxml-melody';
import { readAbc } from '../core/sheets/read-abc';
import { readMusicXml } from '../core/sheets/read-musicxml';
import type { ImportedChart } from '../core/sheets/sheet-bars';
import { childAt, type XmlNode } from '../core/sheets/xml-node';
import { unpack } from './unpack';

/** The largest file that is looked at, and the largest part of a compressed one, in bytes. */
const LARGEST_FILE = 4_000_000;
const LARGEST_PART = 20_000_000;

/** Deeper than any score; what is nested further is left out. */
const DEEPEST = 24;

const nodeOf = (element: Element, depth = 0): XmlNode => ({
  name: element.localName,
  attributes: Object.fromEntries([...element.attributes].map(({ name, value }) => [name, value])),
  children: depth < DEEPEST ? [...element.children].map((child) => nodeOf(child, depth + 1)) : [],
  text: [...element.childNodes]
    .map((child) => (child.nodeType === Node.TEXT_NODE ? child.nodeValue : ''))
    .join(''),
});

/** The root of a document; null where it is not well-formed. Entities of its own are refused unread. */
const parseXml = (text: string): XmlNode | null => {
  if (/<!ENTITY/i.test(text)) return null;
  const root = new DOMParser().parseFromString(text, 'application/xml').documentElement;
  const failed = root.localName === 'parsererror' || root.getElementsByTagName('parsererror').length > 0;
  return failed ? null : nodeOf(root);
};

const WRONG_XML = 'This file is not well-formed, so it could not be read. Save it again where it comes from.';

/** What reads a document's root. */
type ReadRoot<Read> = (root: XmlNode) => Read | string;

const readXmlText = <Read>(text: string, read: ReadRoot<Read>): Read | string => {
  const root = parseXml(text);
  return root === null ? WRONG_XML : read(root);
};

/** Text in UTF-8, or in UTF-16 where its mark says so. */
const decode = (bytes: Uint8Array): string => {
  const [first, second] = bytes;
  const wide =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : null;
  return new TextDecoder(wide ?? 'utf-8').decode(bytes);
};

const BROKEN_ZIP = 'This compressed score could not be unpacked: it is damaged or is none.';

/** The score in a compressed file (.mxl): `META-INF/container.xml` names it first (MusicXML 4.0, container.dtd). */
const readCompressed = <Read>(bytes: Uint8Array, read: ReadRoot<Read>): Read | string => {
  try {
    const container = unpack(bytes, 'META-INF/container.xml', LARGEST_PART);
    const root = container === null ? null : parseXml(decode(container));
    const path = childAt(root ?? undefined, 'rootfiles', 'rootfile')?.attributes['full-path'];
    const score = path === undefined ? null : unpack(bytes, path, LARGEST_PART);
    return score === null ? BROKEN_ZIP : readXmlText(decode(score), read);
  } catch (error) {
    return error instanceof RangeError
      ? 'This score unpacks to more than 20 MB; nothing of it was read.'
      : BROKEN_ZIP;
  }
};

/** What is made of each kind of file. */
interface Readers<Read> {
  readonly root: ReadRoot<Read>;
  readonly abc: (text: string) => Read | string;
}

const readAny = <Read>(bytes: Uint8Array, { root, abc }: Readers<Read>): Read | string => {
  if (bytes.length > LARGEST_FILE)
    return 'This file has more than 4 MB, more than any sheet; nothing of it was read.';
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return readCompressed(bytes, root);
  const text = decode(bytes).replace(/^\uFEFF/, '');
  return text.trimStart().startsWith('<') ? readXmlText(text, root) : abc(text);
};

/**
 * Reads the chords of a file of sheet music, whatever it is called: compressed or plain MusicXML, or ABC. A sentence
 * says why nothing could be read. Never throws.
 */
export const readSheet = (bytes: Uint8Array): ImportedChart | string =>
  readAny<ImportedChart>(bytes, { root: readMusicXml, abc: readAbc });

const MIDI_MARK = [0x4d, 0x54, 0x68, 0x64];

/**
 * Reads the melodies of a file, whatever it is called: MIDI, compressed or plain MusicXML, or ABC; the likeliest
 * first. A sentence says why there is none. Never throws.
 */
export const readMelodies = (bytes: Uint8Array): readonly Melody[] | string => {
  if (MIDI_MARK.every((byte, i) => bytes[i] === byte)) return midiMelodies(bytes);
  return readAny<readonly Melody[]>(bytes, {
    root: musicXmlMelodies,
    abc: (text) => {
      const melody = abcMelody(text);
      return typeof melody === 'string' ? melody : [melody];
    },
  });
};
