// Which file of a folder an address stands for. Addresses come from whoever asks: nothing here may throw for one.
import { constants } from 'node:fs';
import { open, realpath, stat } from 'node:fs/promises';
import { isAbsolute, join, normalize, relative, sep } from 'node:path';

/** The path part of a request's target, or null when it is none or cannot be decoded. */
const pathOf = (target) => {
  if (!/^\/(?!\/)/.test(target)) return null;
  try {
    return normalize(decodeURIComponent(target.replace(/[?#].*$/s, '')));
  } catch {
    return null;
  }
};

const isHidden = (path) => path.split(sep).some((part) => part.startsWith('.'));

/** Links are followed by the system before we look, so the place a name leads to must itself be in the folder. */
const placeIn = async (folder, path) => {
  const wanted = join(folder, path.endsWith(sep) ? join(path, 'index.html') : path);
  const [root, place] = await Promise.all([realpath(folder), realpath(wanted)]);
  const inside = relative(root, place);
  if (isHidden(inside) || isAbsolute(inside)) return null;
  // Only files are opened: opening a pipe would wait for ever.
  const stats = await stat(place);
  return stats.isFile() ? { path: place, bytes: stats.size } : null;
};

/**
 * Opens the file a request's target stands for. Resolves with its handle, path and size in bytes, or with null where
 * there is nothing to serve: nothing outside the folder, not even through links, and no dotfiles.
 */
export const openServedFile = async (folder, target) => {
  const path = pathOf(target);
  if (path === null || path.includes('\0') || isHidden(path)) return null;
  try {
    const place = await placeIn(folder, path);
    if (place === null) return null;
    return { ...place, handle: await open(place.path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0)) };
  } catch {
    return null;
  }
};
