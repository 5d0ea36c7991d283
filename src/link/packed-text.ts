/**
 * Text packed for the fragment of a link: deflated (RFC 1951, by the platform's Compression Streams) and written in
 * the URL-safe alphabet of RFC 4648, section 5. A fragment is never sent to a server.
 */

/** Why a packed text could not be read, as a sentence for the player. */
export class UnreadableText extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UnreadableText';
  }
}

const DAMAGED = 'The link is damaged or cut short, so nothing was opened. Ask for it again, or for a file.';

const through = async (
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> => {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    length += read.value.length;
    if (length > most) {
      await reader.cancel();
      throw new UnreadableText(
        `The link holds more than the ${Math.round(most / 1000)} kB that a link may hold, so nothing was opened.`,
      );
    }
    chunks.push(read.value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
};

const toLetters = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');

const fromLetters = (letters: string): Uint8Array<ArrayBuffer> => {
  if (!/^[\w-]*$/.test(letters)) throw new UnreadableText(DAMAGED);
  try {
    const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
    return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
  } catch {
    throw new UnreadableText(DAMAGED);
  }
};

/** Packs a text. @param most bytes that `unpackText` will take: a longer text throws UnreadableText. */
export const packText = async (text: string, most: number): Promise<string> => {
  const bytes = new TextEncoder().encode(text);
  if (bytes.length > most) {
    throw new UnreadableText(
      `This holds more than the ${Math.round(most / 1000)} kB that a link may hold. Pass it on as a file: save the exercise under Practise, Phrases, or everything under Take away.`,
    );
  }
  return toLetters(await through(bytes, new CompressionStream('deflate-raw'), Number.POSITIVE_INFINITY));
};

/**
 * Reads a packed text back. Rejects with UnreadableText where it is damaged or holds more than it may: it stops
 * inflating there, so that a small link cannot fill the memory.
 * @param most bytes it may hold.
 */
export const unpackText = async (packed: string, most: number): Promise<string> => {
  const bytes = fromLetters(packed);
  try {
    const inflated = await through(bytes, new DecompressionStream('deflate-raw'), most);
    return new TextDecoder('utf-8', { fatal: true }).decode(inflated);
  } catch (error) {
    throw error instanceof UnreadableText ? error : new UnreadableText(DAMAGED);
  }
};
