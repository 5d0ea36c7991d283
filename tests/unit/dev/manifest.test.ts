import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const page = readFileSync('index.html', 'utf8');
const manifest = JSON.parse(readFileSync('public/combshed.webmanifest', 'utf8'));
const [day, night] = [...readFileSync('src/ui/page/tokens.css', 'utf8').matchAll(/--ground: (#\w+)/g)].map(
  ([, colour]) => colour,
);

/** Width, height and colour type of a PNG, by the IHDR chunk of "Portable Network Graphics", W3C, 11.2.1. */
const headerOf = (path: string) => {
  const png = readFileSync(path);
  return { size: [png.readUInt32BE(16), png.readUInt32BE(20)], colourType: png.readUInt8(25) };
};
/** Colour without transparency. */
const TRUECOLOUR = 2;

describe('what is needed to install the page', () => {
  it('is told by the page: manifest, icons, colours of both looks', () => {
    for (const link of [
      'rel="manifest" href="./combshed.webmanifest"',
      'rel="apple-touch-icon" href="./icon-180.png"',
      `name="theme-color" content="${day}" media="(prefers-color-scheme: light)"`,
      `name="theme-color" content="${night}" media="(prefers-color-scheme: dark)"`,
    ])
      expect(page).toContain(link);
  });

  it('has a name, a start and a scope beside the page wherever it lies, and the day look’s colours', () => {
    expect(manifest).toMatchObject({
      name: 'Combshed',
      short_name: 'Combshed',
      start_url: './',
      scope: './',
      display: 'standalone',
      theme_color: day,
      background_color: day,
    });
  });

  it('has icons of the sizes it names, one that may be cut to any shape and so has no holes', () => {
    const drawn = manifest.icons.filter(({ type }: { type: string }) => type === 'image/png');
    for (const { src, sizes } of drawn) {
      expect([src, headerOf(`public/${src}`).size.join('x')]).toEqual([src, sizes]);
    }
    expect(drawn.map(({ sizes, purpose = 'any' }: Record<string, string>) => `${sizes} ${purpose}`)).toEqual([
      '192x192 any',
      '512x512 any',
      '512x512 maskable',
    ]);
    expect(headerOf('public/icon-180.png')).toEqual({ size: [180, 180], colourType: TRUECOLOUR });
    expect(headerOf('public/icon-maskable-512.png').colourType).toBe(TRUECOLOUR);
  });
});
