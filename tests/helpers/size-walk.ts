import type { Page } from 'playwright-core';
import { lasting, layoutProblems, resize } from './page-layout';

/** Desktop, laptop, tablets both ways, phones both ways, and a desktop at 200 % zoom. */
export const SIZES = [
  [1440, 900],
  [1366, 768],
  [1180, 820],
  [1024, 768],
  [820, 1180],
  [390, 844],
  [844, 390],
  [720, 450],
] as const;

export type Size = readonly [width: number, height: number];

/** Presses Play and waits until the band plays. */
export const play = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Play' }).click();
  await page.getByRole('button', { name: 'Stop' }).waitFor();
};

/** The sizes, all of them, from one of them on. */
export const sizesFrom = (from: number): readonly Size[] => [...SIZES.slice(from), ...SIZES.slice(0, from)];

/** What stands in the way at every size, which the open page is given one after the other, by state and size. */
export const problemsIn = async (
  page: Page,
  state: string,
  {
    covered = () => false,
    sizes = SIZES,
  }: { readonly covered?: (size: Size) => boolean; readonly sizes?: readonly Size[] } = {},
): Promise<readonly string[]> => {
  const problems: string[] = [];
  for (const size of sizes) {
    await resize(page, size);
    const found = await lasting(() => layoutProblems(page, { covered: covered(size) }));
    problems.push(...found.map((problem) => `${state} at ${size[0]} × ${size[1]}: ${problem}`));
  }
  return problems;
};
