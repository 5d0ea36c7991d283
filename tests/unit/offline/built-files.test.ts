import { describe, expect, it } from 'vitest';
import { needlessShelves, shelfName, sourceOf } from '../../../src/offline/built-files';

const SCOPE = 'https://hall.example/stand/';
const PATHS = new Set(['', 'icon.svg', 'assets/index-a1.js']);

describe('where an answer comes from', () => {
  const ask = (url: string, { method = 'GET', mode = 'cors', range = false } = {}) =>
    sourceOf({ method, url: new URL(url, SCOPE).href, mode, range }, SCOPE, PATHS);

  it.each(['', 'index.html', '?from=home', '#top'])('opens the page kept: “%s”', (url) => {
    expect(ask(url, { mode: 'navigate' })).toEqual({ from: 'kept', path: '' });
  });

  it.each(['icon.svg', 'assets/index-a1.js'])('gives a file of the list: %s', (path) => {
    expect(ask(path)).toEqual({ from: 'kept', path });
  });

  it('looks at the version before for a part that is not in this one', () => {
    expect(ask('assets/index-b2.js')).toEqual({ from: 'earlier' });
  });

  it.each([
    ['a file that is not of the program', 'notes.txt', {}],
    ['another page', 'other.html', { mode: 'navigate' }],
    ['a folder above', '../', { mode: 'navigate' }],
    ['a neighbour with a like name', '../stand2/icon.svg', {}],
    ['another origin', 'https://elsewhere.example/stand/icon.svg', {}],
    ['another port', 'https://hall.example:8443/stand/icon.svg', {}],
    ['a question to the server', 'icon.svg?size=2', {}],
    ['something sent', 'icon.svg', { method: 'POST' }],
    ['a HEAD', 'icon.svg', { method: 'HEAD' }],
    ['a part of a file', 'icon.svg', { range: true }],
    ['a blob', 'blob:https://hall.example/1234', {}],
  ])('leaves to the network: %s', (_, url, how) => {
    expect(ask(url, how)).toBeNull();
  });
});

describe('which kept versions are needless', () => {
  const own = (version: string) => shelfName(SCOPE, version);

  it('are those older than the one before this', () => {
    expect(needlessShelves([own('1'), own('2'), own('3')], SCOPE, '3')).toEqual([own('1')]);
    expect(needlessShelves([own('3'), own('1'), own('2')], SCOPE, '3')).toEqual([own('1')]);
    expect(needlessShelves([own('1'), own('2')], SCOPE, '2')).toEqual([]);
  });

  it('are never those of another page on the server', () => {
    const others = [
      shelfName('https://hall.example/', '1'),
      shelfName('https://hall.example/stand/old/', '1'),
    ];
    expect(needlessShelves([...others, 'pictures', own('1')], SCOPE, '2')).toEqual([]);
  });
});
