// Draws the icons of public/ anew from public/icon.svg: `node .dev/icons.mjs`, after the drawing has changed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureChromium } from './chromium.mjs';
import { ROOT, runMain, say } from './run.mjs';

const PUBLIC = join(ROOT, 'public');

/**
 * `full`: the ground goes to the edges, since the system cuts the shape itself; at 0.85 the comb then lies within the
 * circle of 0.8 of the side that is always shown (Web Application Manifest, W3C, "icon masks and safe zone").
 */
const ICONS = [
  { name: 'icon-192.png', size: 192 },
  { name: 'icon-512.png', size: 512 },
  { name: 'icon-maskable-512.png', size: 512, full: 0.85 },
  { name: 'icon-180.png', size: 180, full: 1 },
];

const drawing = ({ size, full }) => {
  const svg = readFileSync(join(PUBLIC, 'icon.svg'), 'utf8').replace('<svg ', `<svg width="${size}" `);
  if (full === undefined) return svg;
  const ground = /<rect [^>]*fill="(#\w+)"/.exec(svg)?.[1];
  return `<div style="background: ${ground}; width: ${size}px"><div style="transform: scale(${full})">${svg}</div></div>`;
};

await runMain(async () => {
  const { chromium } = await import('playwright-core');
  const browser = await chromium.launch({
    executablePath: await ensureChromium(),
    chromiumSandbox: process.getuid?.() !== 0,
  });
  for (const icon of ICONS) {
    const { name, size } = icon;
    const page = await browser.newPage({ viewport: { width: size, height: size } });
    await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${drawing(icon)}`);
    await page.screenshot({ path: join(PUBLIC, name), omitBackground: true });
    await page.close();
    say(name);
  }
  await browser.close();
});
