// A small static server for the built page, with the headers the page is meant to live under.
import { createServer } from 'node:http';
import { basename, extname, sep } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { openServedFile } from './served-file.mjs';

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

/**
 * The worker that plays SoundFonts unpacks compressed ones with WebAssembly, and the one that makes MP3 files encodes with
 * it; nothing else may compile any.
 */
const COMPILING_WORKER = /^(?:font|mp3)-worker-[\w-]+\.js$/;
const COMPILING_POLICY = CONTENT_SECURITY_POLICY.replace(
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

/** Bounds on what one client can take up: bytes of headers, milliseconds, open connections. */
const LIMITS = {
  headerBytes: 16_384,
  headersMs: 10_000,
  requestMs: 15_000,
  idleMs: 30_000,
  connections: 128,
};

/**
 * This machine's own names, at any port (a tunnel may end at another one). Whoever comes under another name was led
 * here by a page of somebody else's, whose name stands for this machine's address.
 */
const OWN_HOST = /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d{1,5})?$/i;

const isForUs = (request) => {
  const hosts = request.headersDistinct.host ?? [];
  return hosts.length === 1 && OWN_HOST.test(hosts[0]);
};

const refuse = (response, code, text) => {
  response.writeHead(code, { ...HEADERS, 'content-type': TYPES['.txt'], connection: 'close' });
  response.end(`${text}\n`);
};

const headersFor = (path, bytes) => {
  const hashed = path.includes(`${sep}assets${sep}`);
  return {
    ...HEADERS,
    ...(hashed && COMPILING_WORKER.test(basename(path))
      ? { 'content-security-policy': COMPILING_POLICY }
      : {}),
    'content-type': TYPES[extname(path)] ?? 'application/octet-stream',
    'content-length': bytes,
    'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
};

const answer = async (folder, request, response) => {
  if (!isForUs(request)) return refuse(response, 421, 'This page is served to this machine only.');
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(response, 405, 'Only reading is possible here.');
  const file = await openServedFile(folder, request.url ?? '/');
  if (!file) return refuse(response, 404, 'There is nothing at this address.');
  const { handle, path, bytes } = file;
  response.writeHead(200, headersFor(path, bytes));
  if (request.method === 'HEAD' || bytes === 0) {
    await handle.close();
    return response.end();
  }
  return pipeline(handle.createReadStream({ end: bytes - 1 }), response);
};

const serverOf = (folder, limits) => {
  const server = createServer(
    {
      maxHeaderSize: limits.headerBytes,
      headersTimeout: limits.headersMs,
      requestTimeout: limits.requestMs,
      connectionsCheckingInterval: Math.min(1000, limits.headersMs),
    },
    // Whatever goes wrong with one request ends that request and nothing else.
    (request, response) => void answer(folder, request, response).catch(() => response.destroy()),
  );
  server.maxConnections = limits.connections;
  server.setTimeout(limits.idleMs);
  return server;
};

const listen = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      // A connection that could not be taken is the loss of who asked for it.
      server.on('error', () => {});
      resolve(server.address().port);
    });
  });

/**
 * Serves a folder on this machine only, to who asks for it by this machine's names. Port 0 takes any free one.
 * Resolves with the address and a `close`; rejects with the system's error when the port cannot be had.
 */
export const serveFolder = async (folder, port, limits = {}) => {
  const server = serverOf(folder, { ...LIMITS, ...limits });
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
