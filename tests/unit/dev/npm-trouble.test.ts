import { describe, expect, it } from 'vitest';
import { leftFilesOut, npmTrouble } from '../../../.dev/npm-trouble.mjs';

const ROOT = '/home/player/combshed';

/** Reports of npm 11.19.1 as it printed them, captured by taking away what it needs; paths changed. */
const CAPTURED = {
  foreignHome: `npm error code EACCES
npm error syscall mkdir
npm error path /home/player/.npm
npm error errno EACCES
npm error
npm error Your cache folder contains root-owned files, due to a bug in previous versions of npm which has since been addressed.
npm error
npm error To permanently fix this problem, please run:
npm error   sudo chown -R 65534:65534 "/home/player/.npm"
npm error Log files were not written due to an error writing to the directory: /home/player/.npm/_logs`,
  readOnlyHome: `npm error code ENOENT
npm error syscall mkdir
npm error path /home/player/.npm
npm error errno ENOENT
npm error enoent Invalid response body while trying to fetch https://registry.npmjs.org/zustand: ENOENT: no such file or directory, mkdir '/home/player/.npm'
npm error enoent This is related to npm not being able to find a file.`,
  fullCache: `npm error code ENOSPC
npm error syscall write
npm error errno -28
npm error nospc ENOSPC: no space left on device, write
npm error nospc There appears to be insufficient space on your system to finish.`,
  fullFolder: `npm warn tar TAR_ENTRY_ERROR ENOSPC: no space left on device, write
npm warn tar TAR_ENTRY_ERROR ENOSPC: no space left on device, write`,
  noName: `npm error code ENOTFOUND
npm error syscall getaddrinfo
npm error errno ENOTFOUND
npm error network request to http://registry.invalid/zustand failed, reason: getaddrinfo ENOTFOUND registry.invalid
npm error network This is a problem related to network connectivity.`,
  refused: `npm error code ECONNREFUSED
npm error syscall connect
npm error errno ECONNREFUSED
npm error FetchError: request to http://127.0.0.1:1/zustand failed, reason: connect ECONNREFUSED 127.0.0.1:1
npm error   code: 'ECONNREFUSED',`,
};

describe('what kept npm from installing', () => {
  it.each([
    ['foreignHome', /may not write to \/home\/player\/\.npm \(EACCES\).*\n.*npm start --cache="/],
    ['readOnlyHome', /may not write to \/home\/player\/\.npm \(ENOENT\).*\n.*npm start --cache="/],
    ['fullCache', /disk is full \(ENOSPC\)/],
    ['fullFolder', /disk is full \(ENOSPC\)/],
    ['noName', /could not be reached \(ENOTFOUND\)/],
    ['refused', /could not be reached \(ECONNREFUSED\)/],
  ] as const)('is told: %s', (name, words) => {
    expect(npmTrouble(CAPTURED[name], ROOT)).toMatch(words);
  });

  it('is not called the network where it is something else', () => {
    for (const name of ['foreignHome', 'readOnlyHome'] as const)
      expect(npmTrouble(CAPTURED[name], ROOT)).toContain('The network is not the reason');
    for (const name of ['fullCache', 'fullFolder'] as const)
      expect(npmTrouble(CAPTURED[name], ROOT)).not.toMatch(/network|registry/);
  });

  it('is seen where npm says that all went well', () => {
    expect(leftFilesOut(CAPTURED.fullFolder)).toBe(true);
    expect(leftFilesOut('npm warn deprecated thing@1.0.0: use another')).toBe(false);
  });

  // Codes by name: Node's system errors, OpenSSL's verification errors and npm's own (docs.npmjs.com, "Common errors").
  it.each([
    ['EROFS', /may not write/],
    ['EPERM', /may not write/],
    ['EDQUOT', /disk is full/],
    ['EAI_AGAIN', /could not be reached/],
    ['ETIMEDOUT', /could not be reached/],
    ['ERR_SOCKET_TIMEOUT', /could not be reached/],
    ['SELF_SIGNED_CERT_IN_CHAIN', /certificate/],
    ['UNABLE_TO_GET_ISSUER_CERT_LOCALLY', /certificate/],
    ['CERT_HAS_EXPIRED', /certificate/],
    ['E403', /registry refused/],
    ['E503', /in trouble/],
    ['EINTEGRITY', /not what package-lock\.json says/],
    ['EUSAGE', /do not belong together/],
    ['EMFILE', /too few open files/],
    ['EWHATEVER', /npm's own message is above \(EWHATEVER\)/],
  ])('has a sentence for %s, as old and new versions of npm print it', (code, words) => {
    expect(npmTrouble(`npm error code ${code}`, ROOT)).toMatch(words);
    expect(npmTrouble(`npm notice x\r\nnpm ERR! code ${code}\r\nnpm ERR! y`, ROOT)).toMatch(words);
    expect(npmTrouble(`npm error code ${code}`, ROOT)).toMatch(/run the command again|npm start --cache/);
  });

  it('tells a folder of the project that cannot be written to from npm’s own', () => {
    const report = `npm error code EACCES\nnpm error path ${ROOT}/node_modules/react`;
    expect(npmTrouble(report, ROOT)).toMatch(/node_modules\/react cannot be written to.*copy the project/);
  });

  it('says something where npm said nothing', () => {
    expect(npmTrouble('', ROOT)).toMatch(/npm's own message is above\. Mend/);
  });
});
