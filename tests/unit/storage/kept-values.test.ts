import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../../src/storage/kept-values';
import { countedEvents } from '../../helpers/counted-events';
import { createFakeStorage } from '../../helpers/fake-storage';
import { createFakeTabs } from '../../helpers/fake-tabs';

const open = (items: Readonly<Record<string, string>> = {}) => {
  const storage = createFakeStorage(items);
  return { storage, kept: createKeptValues(() => storage, new EventTarget()) };
};
const REFUSED = { kind: 'refused', detail: 'not here' };

describe('kept values', () => {
  it('reads what it wrote', () => {
    const { kept } = open();
    expect(kept.write('x', { a: [1, null] })).toEqual({ kind: 'written' });
    expect(kept.read('x')).toMatchObject({ kind: 'value', value: { a: [1, null] } });
    expect(kept.names()).toEqual(['x']);
  });

  it('tells nothing from something it cannot read', () => {
    const { kept } = open({ 'combshed.x': '{broken' });
    expect(kept.read('y')).toEqual({ kind: 'nothing' });
    expect(kept.read('x')).toEqual({ kind: 'unreadable', raw: '{broken' });
  });

  it('tells full from refused', () => {
    const { kept, storage } = open();
    storage.refuse = new DOMException('no room', 'QuotaExceededError');
    expect(kept.write('x', 1)).toEqual({ kind: 'full' });
    storage.refuse = new DOMException('no', 'SecurityError');
    expect(kept.write('x', 1)).toEqual({ kind: 'refused', detail: 'no' });
  });

  it('says so in words, and never throws, where the browser has no storage', () => {
    const kept = createKeptValues(() => {
      throw new Error('not here');
    }, new EventTarget());
    expect([kept.read('x'), kept.write('x', 1), kept.setAside('x', 'a'), kept.retire('x')]).toEqual(
      Array(4).fill(REFUSED),
    );
    expect([kept.copies(), kept.names(), kept.forgetCopy('x.unread.1')]).toEqual([[], [], REFUSED]);
  });

  it('hears of what another tab wrote, not of its own writing', () => {
    const tabs = createFakeTabs();
    const [one, two] = [tabs.open(), tabs.open()];
    const heard: unknown[] = [];
    for (const tab of [one, two]) tab.onWrittenElsewhere('x', (value) => heard.push([tab === one, value]));
    one.write('x', 7);
    one.write('y', 8);
    expect(heard).toEqual([[false, 7]]);
  });

  it('listens once for any number of values, and no longer than anyone asks', () => {
    const events = countedEvents();
    const kept = createKeptValues(() => createFakeStorage(), events);
    const ends = Array.from({ length: 12 }, (_, i) => kept.onWrittenElsewhere(`x${i}`, () => {}));
    expect(events.count()).toBe(1);
    for (const end of ends.slice(1)) end();
    expect(events.count()).toBe(1);
    for (const end of ends) end();
    expect(events.count()).toBe(0);
  });
});

describe('copies', () => {
  it('are made of each text once, are never thrown away unasked, and are listed in order', () => {
    const { kept } = open();
    const texts = Array.from({ length: 12 }, (_, i) => `text ${i}`);
    for (const raw of [...texts, ...texts]) kept.setAside('x', raw);
    kept.setAside('charts', 'other');
    expect(kept.copies().map(({ name, raw }) => `${name}: ${raw}`)).toEqual([
      'charts: other',
      ...texts.map((raw) => `x: ${raw}`),
    ]);
    expect(kept.names()).toEqual([]);
  });

  it('go when they are deleted; values in use do not', () => {
    const { kept } = open({ 'combshed.x': '1' });
    kept.setAside('x', 'a');
    kept.setAside('x', 'b');
    kept.forgetCopy(kept.copies()[0]?.id ?? '');
    kept.forgetCopy('x');
    expect(kept.copies().map(({ raw }) => raw)).toEqual(['b']);
    expect(kept.read('x')).toMatchObject({ value: 1 });
  });

  it('are what a retired value becomes, without room for two', () => {
    const { kept, storage } = open({ 'combshed.x': 'y'.repeat(100) });
    storage.capacity = 130;
    expect(kept.retire('x')).toEqual({ kind: 'written' });
    expect(kept.read('x')).toEqual({ kind: 'nothing' });
    expect(kept.copies().map(({ raw }) => raw.length)).toEqual([100]);
    expect(kept.retire('x')).toEqual({ kind: 'written' });
  });

  it('that do not fit leave the value where it was', () => {
    const { kept, storage } = open({ 'combshed.x': 'y'.repeat(100) });
    storage.capacity = 112;
    expect(kept.setAside('x', 'y'.repeat(100))).toEqual({ kind: 'full' });
    expect(kept.retire('x')).toEqual({ kind: 'full' });
    expect(storage.items.get('combshed.x')).toBe('y'.repeat(100));
  });
});
