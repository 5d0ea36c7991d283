import { afterEach, describe, expect, it, vi } from 'vitest';
import { ensureChromium, findChromium } from '../../../.dev/chromium.mjs';

describe('the browser to test in', () => {
  afterEach(() => vi.unstubAllEnvs());

  it('is the one CHROMIUM_PATH names, and nothing else is tried when that does not start', async () => {
    vi.stubEnv('CHROMIUM_PATH', '/no/such/browser');
    await expect(findChromium()).rejects.toThrow(
      'CHROMIUM_PATH is /no/such/browser, but no browser starts there',
    );
    await expect(ensureChromium()).rejects.toThrow('CHROMIUM_PATH');
    vi.stubEnv('CHROMIUM_PATH', process.execPath);
    expect(await findChromium()).toBe(process.execPath);
  });
});
