import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** The files whose sentences the player reads. */
const files = ['src/app', 'src/audio', 'src/ui'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name)),
);

describe('advice', () => {
  it('never asks to reload: without a network that could lose the page', () => {
    expect(files.length).toBeGreaterThan(100);
    const advising = files.filter((file) =>
      /\breload (the|this|your) page/i.test(readFileSync(file, 'utf8')),
    );
    expect(advising).toEqual([]);
  });
});
