import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../src/storage/kept-values';
import { showLastResort } from '../../src/ui/page/last-resort';
import { createFakeStorage } from '../helpers/fake-storage';

const show = (stop: (() => void) | null = null) => {
  const storage = createFakeStorage({ 'combshed.settings': '{"a":1}', 'combshed.charts': '[]', other: 'x' });
  const done: string[] = [];
  document.body.innerHTML = '<div id="page"></div>';
  const page = document.getElementById('page');
  if (page === null) throw new Error('no page');
  showLastResort({
    document,
    page,
    error: new Error('no reeds'),
    kept: createKeptValues(() => storage, window),
    reload: () => done.push('reload'),
    stop,
  });
  const press = (name: RegExp): void => {
    const found = [...document.querySelectorAll('button')].find((each) => name.test(each.textContent ?? ''));
    if (found === undefined) throw new Error(`No button ${name}`);
    found.click();
  };
  return { storage, done, press };
};

describe('the last resort', () => {
  it('says what went wrong, takes the focus, and tries again', () => {
    const { done, press } = show();
    expect(document.body.textContent).toMatch(/Combshed cannot be shown.*What went wrong: no reeds/);
    expect(document.activeElement?.tagName).toBe('H1');
    expect(document.querySelector('#page')).toBeNull();
    press(/^Try again/);
    expect(done).toEqual(['reload']);
  });

  it('starts with fresh settings and keeps the old ones', () => {
    const { storage, done, press } = show();
    press(/fresh settings/);
    expect([...storage.items]).toEqual([
      ['combshed.charts', '[]'],
      ['other', 'x'],
      ['combshed.settings.unread.1', '{"a":1}'],
    ]);
    expect(done).toEqual(['reload']);
  });

  it('puts everything of this page away, and nothing else', () => {
    const { storage, press } = show();
    press(/everything/);
    expect([...storage.items.keys()].sort()).toEqual([
      'combshed.charts.unread.1',
      'combshed.settings.unread.1',
      'other',
    ]);
  });

  it('says so when the browser lets nothing be changed', () => {
    const { storage, done, press } = show();
    storage.refuse = new Error('no');
    storage.removeItem = () => {
      throw new Error('no');
    };
    press(/fresh settings/);
    expect(document.querySelector('[role="alert"]')?.textContent).toMatch(/did not work/);
    expect(storage.items.get('combshed.settings')).toBe('{"a":1}');
    expect(done).toEqual([]);
  });

  it('can stop the band', () => {
    let stopped = 0;
    const { press } = show(() => {
      stopped += 1;
    });
    press(/^Stop$/);
    expect(stopped).toBe(1);
  });
});
