import { Unzip, UnzipInflate } from 'fflate';

/**
 * Bytes unpacked at a time: deflated text grows to some 1030 times its length at most (RFC 1951: a pair of two bits
 * stands for 258 bytes), so that no step makes more than 4 MB.
 */
const STEP = 4096;

/**
 * What a compressed file (ZIP) holds under a name; null where it holds nothing of that name. Unpacking ends as soon as
 * there is more than is wanted, whatever size the file says it has: a small file could keep the page busy for minutes.
 * Throws where it is damaged, and RangeError where the part is larger.
 * @param most bytes of the part.
 */
export const unpack = (bytes: Uint8Array, name: string, most: number): Uint8Array | null => {
  const pieces: Uint8Array[] = [];
  const found = { isThere: false, isWhole: false, length: 0 };
  const unzip = new Unzip((file) => {
    if (file.name !== name || found.isThere) return;
    found.isThere = true;
    file.ondata = (error, piece, isLast) => {
      if (error !== null) throw error;
      found.length += piece.length;
      if (found.length > most) throw new RangeError(`${name} has more than ${most} bytes`);
      pieces.push(piece);
      found.isWhole = isLast;
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  for (let at = 0; at < bytes.length && !found.isWhole; at += STEP)
    unzip.push(bytes.subarray(at, at + STEP), at + STEP >= bytes.length);
  if (!found.isThere) return null;
  const whole = new Uint8Array(found.length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
};
