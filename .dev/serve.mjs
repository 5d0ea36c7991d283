// A small static server for the built page, with the headers the page is meant to live under.
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { basename, extname, join, normalize, sep } from 'node:path';

const TYPES = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/**
 * Everything comes from the page's own address. Workers and worklets may also come from blobs, because the
 * audio library starts its clock that way; media and downloads may, because rendered audio is one.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "media-src 'self' blob:",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** The worker that plays SoundFonts unpacks compressed ones with WebAssembly; nothing else may compile any. */
const UNPACKING_WORKER = /^font-worker-[\w-]+\.js$/;
const UNPACKING_POLICY = CONTENT_SECURITY_POLICY.replace(
  "script-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
);

const HEADERS = {
  'content-security-policy': CONTENT_SECURITY_POLICY,
  'cross-origin-embedder-policy': 'require-corp',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=(self)',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

/** The file an address stands for, or null: nothing outside the folder, no dotfiles. */
const fileFor = (folder, url) => {
  let path;
  try {
    path = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
  } catch {
    return null;
  }
  if (path.includes('\0') || path.split(sep).some((part) => part.startsWith('.'))) return null;
  const file = join(folder, path.endsWith(sep) ? join(path, 'index.html') : path);
  return statSync(file, { throwIfNoEntry: false })?.isFile() ? file : null;
};

const answer = (folder, request, response) => {
  const headers = { ...HEADERS };
  const fail = (code, text) => {
    response.writeHead(code, { ...headers, 'content-type': TYPES['.txt'] });
    response.end(`${text}\n`);
  };
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return fail(405, 'Only reading is possible here.');
  const file = fileFor(folder, request.url ?? '/');
  if (!file) return fail(404, 'There is nothing at this address.');
  headers['content-type'] = TYPES[extname(file)] ?? 'application/octet-stream';
  headers['content-length'] = statSync(file).size;
  const hashed = file.includes(`${sep}assets${sep}`);
  if (hashed && UNPACKING_WORKER.test(basename(file))) headers['content-security-policy'] = UNPACKING_POLICY;
  headers['cache-control'] = hashed ? 'public, max-age=31536000, immutable' : 'no-cache';
  response.writeHead(200, headers);
  if (request.method === 'HEAD') return response.end();
  return createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
};

const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve(server.address().port);
    });
  });

/**
 * Serves a folder on this machine only. Port 0 takes any free one.
 * Resolves with the address and a `close`; rejects with the system's error when the port cannot be had.
 */
export const serveFolder = async (folder, port) => {
  const server = createServer((request, response) => answer(folder, request, response));
  const taken = await listen(server, port);
  return {
    port: taken,
    address: `http://127.0.0.1:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};
