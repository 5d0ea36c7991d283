import type { Settings } from '../settings/settings';

/** Another take: the same choices with other fills and lines. */
export const withTake = (settings: Settings, seed: number): Settings => ({
  ...settings,
  style: { ...settings.style, seed },
});
