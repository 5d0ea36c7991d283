import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readSheet } from '../../src/sheet/read-sheet';

const SCORE = (harmony: string): string =>
  `<?xml version="1.0"?><score-partwise version="4.0"><work><work-title>Lantern Walk</work-title></work><part-list/><part id="P1"><measure number="1"><attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4</beat-type></time></attributes>${harmony}<note><rest/><duration>4</duration></note></measure></part></score-partwise>`;
const G7 = '<harmony><root><root-step>G</root-step></root><kind>dominant</kind></harmony>';

const opened = (bytes: Uint8Array) => {
  const read = readSheet(bytes);
  return typeof read === 'string' ? read : read.text.split('\n').at(-1);
};

describe('files of sheet music', () => {
  it('are told by what is in them, not by their names', () => {
    expect(opened(strToU8('X:1\nT:Ferry\nM:4/4\nL:1/4\nK:C\n"C7"C4|'))).toBe('| C7 |');
    expect(opened(strToU8(SCORE(G7)))).toBe('| G7 |');
    expect(opened(new Uint8Array([0xef, 0xbb, 0xbf, ...strToU8(SCORE(G7))]))).toBe('| G7 |');
  });

  it('are unpacked where they are compressed, by what the container names', () => {
    const container = '<container><rootfiles><rootfile full-path="a/score.xml"/></rootfiles></container>';
    const files = { 'META-INF/container.xml': strToU8(container), 'a/score.xml': strToU8(SCORE(G7)) };
    expect(opened(zipSync(files))).toBe('| G7 |');
    expect(opened(zipSync({ 'a/score.xml': strToU8(SCORE(G7)) }))).toContain('could not be unpacked');
    expect(opened(strToU8('PK nothing of the kind'))).toContain('could not be unpacked');
  });

  it('with entities of their own, too large or damaged are refused in words', () => {
    const bomb = '<!DOCTYPE s [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><score-partwise>&b;</score-partwise>';
    expect(opened(strToU8(bomb))).toContain('not well-formed');
    expect(opened(new Uint8Array(4_000_001))).toContain('more than 4 MB');
    const container = '<container><rootfiles><rootfile full-path="s.xml"/></rootfiles></container>';
    const swollen = zipSync({
      'META-INF/container.xml': strToU8(container),
      's.xml': new Uint8Array(20_000_001),
    });
    expect(opened(swollen)).toContain('more than 20 MB');
    // A file may say that it is smaller than it is (PKWARE APPNOTE 4.4.9, uncompressed size, here in the directory at the end).
    const names = [...swollen.keys()].filter((at) =>
      [80, 75, 1, 2].every((byte, i) => swollen[at + i] === byte),
    );
    for (const at of names) swollen.set([100, 0, 0, 0], at + 24);
    expect(opened(swollen)).toContain('more than 20 MB');
  });
});
