import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../../src/storage/kept-values';
import { createFakeStorage } from '../../helpers/fake-storage';

const open = (items: Readonly<Record<string, string>> = {}) => {
  const storage = createFakeStorage(items);
  return { storage, kept: createKeptValues(() => storage, new EventTarget()) };
};

describe('kept values', () => {
  it('reads what it wrote', () => {
    const { kept } = open();
    expect(kept.write('x', { a: [1, null] })).toEqual({ kind: 'written' });
    expect(kept.read('x')).toMatchObject({ kind: 'value', value: { a: [1, null] } });
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

  it('sets each unreadable text aside once, the newest five at most', () => {
    const { kept, storage } = open();
    for (const raw of ['a', 'a', 'b', 'c', 'd', 'e', 'f']) kept.setAside('x', raw);
    expect([...storage.items.values()]).toEqual(['b', 'c', 'd', 'e', 'f']);
  });
});
