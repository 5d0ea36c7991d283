// What kept npm from installing, told from npm's own report, in a sentence with a way on.
import { tmpdir } from 'node:os';
import { isAbsolute, join, relative } from 'node:path';

const AGAIN = 'then run the command again.';
const ELSEWHERE = `npm start --cache="${join(tmpdir(), 'npm-cache')}"`;

const isInside = (folder, path) => {
  const way = relative(folder, path);
  return !way.startsWith('..') && !isAbsolute(way);
};

const unwritable = ({ path, root, code }) => {
  if (path !== null && isInside(root, path)) {
    return `${path} cannot be written to (${code}). Give yourself the right to write to this folder, or copy the project to a folder of your own, ${AGAIN}`;
  }
  return (
    `npm may not write to ${path ?? 'the folder in which it keeps what it fetched'} (${code}): the home folder is read-only or belongs to somebody else.\n` +
    `The network is not the reason. Let npm keep its files elsewhere: ${ELSEWHERE}`
  );
};

const full = ({ code }) =>
  `The disk is full (${code}). Free some 300 MB where this project and npm's files lie, ${AGAIN}`;
const unreached = ({ code }) =>
  `The package registry could not be reached (${code}). Connect to the network, or set npm's proxy, ${AGAIN}\nWhat was fetched before is kept.`;
const distrusted = ({ code }) =>
  `The package registry's certificate is not trusted here (${code}), as behind a company's proxy. Tell npm the proxy's certificate (npm help config, "cafile") and check this machine's date, ${AGAIN}`;
const refused = ({ code }) =>
  `The package registry refused (${code}). Check npm's registry, proxy and login (npm config list), ${AGAIN}`;
const failing = ({ code }) => `The package registry is in trouble (${code}). Wait a little, ${AGAIN}`;
const spoiled = ({ code }) =>
  `A fetched package is not what package-lock.json says (${code}). Empty npm's store with: npm cache clean --force, ${AGAIN}`;
const inconsistent = ({ code }) =>
  `package.json and package-lock.json do not belong together (${code}): this copy of the project is incomplete or changed. Fetch it anew, ${AGAIN}`;
const tooMany = ({ code }) =>
  `This machine allows too few open files (${code}). Close other programs, ${AGAIN}`;

/** By npm's code: Node's names of system errors, OpenSSL's of certificates, npm's own. */
const SENTENCES = [
  [/^(EACCES|EPERM|EROFS)$/, unwritable],
  [/^(ENOSPC|EDQUOT)$/, full],
  [
    /^(ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ECONNABORTED|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|ENETDOWN|EPIPE)$/,
    unreached,
  ],
  [/^(ERR_SOCKET_TIMEOUT|EIDLETIMEOUT|FETCH_ERROR|ENOTCACHED)$/, unreached],
  [/CERT|^ERR_TLS|^ERR_SSL|^EPROTO$/, distrusted],
  [/^(E4\d\d|ENEEDAUTH)$/, refused],
  [/^E5\d\d$/, failing],
  [/^(EINTEGRITY|Z_DATA_ERROR|TAR_BAD_ARCHIVE)$/, spoiled],
  [/^(EUSAGE|EJSONPARSE|ELOCKVERIFY)$/, inconsistent],
  [/^(EMFILE|ENFILE)$/, tooMany],
];

/** A field of npm's report. Older versions begin its lines with "npm ERR!". */
const fieldOf = (output, name) =>
  new RegExp(`^npm (?:error|ERR!) ${name} (.+?)\\r?$`, 'm').exec(output)?.[1] ?? null;

/** npm only warns about files that it could not write, and says that all went well. */
const unwrittenIn = (output) => /^npm (?:warn|WARN) tar TAR_ENTRY_ERROR (E[A-Z]+)/m.exec(output)?.[1] ?? null;

/** Whether an installation that npm calls done has left files out. */
export const leftFilesOut = (output) => unwrittenIn(output) !== null;

/**
 * What kept npm from installing and what to do about it.
 * @param output npm's error output
 * @param root the folder that was installed in
 */
export const npmTrouble = (output, root) => {
  const told = fieldOf(output, 'code') ?? unwrittenIn(output);
  // A folder that cannot be made in a read-only one is reported as missing.
  const code = told === 'ENOENT' && fieldOf(output, 'syscall') === 'mkdir' ? 'EROFS' : told;
  const sentence = code && SENTENCES.find(([codes]) => codes.test(code))?.[1];
  if (sentence) return sentence({ code: told, path: fieldOf(output, 'path'), root });
  return `npm's own message is above${told ? ` (${told})` : ''}. Mend what it names, ${AGAIN}`;
};
