/** What the browser's stereo panner does (Web Audio API, "StereoPanner algorithm"): equal power. */

/** Gains of a mono sound to the left and to the right; −1 left … 1 right. */
export const panGains = (pan: number): readonly [left: number, right: number] => {
  const angle = ((pan + 1) / 2) * (Math.PI / 2);
  return [Math.cos(angle), Math.sin(angle)];
};

/** Where the sides of a stereo sound go: gains from each side to each. */
export interface SideGains {
  readonly leftToLeft: number;
  readonly rightToLeft: number;
  readonly leftToRight: number;
  readonly rightToRight: number;
}

/** The side that is turned away from goes over to the other; in the middle both stay. */
export const sideGains = (pan: number): SideGains => {
  if (pan === 0) return { leftToLeft: 1, rightToLeft: 0, leftToRight: 0, rightToRight: 1 };
  const angle = (pan < 0 ? pan + 1 : pan) * (Math.PI / 2);
  const [cosine, sine] = [Math.cos(angle), Math.sin(angle)];
  return pan < 0
    ? { leftToLeft: 1, rightToLeft: cosine, leftToRight: 0, rightToRight: sine }
    : { leftToLeft: cosine, rightToLeft: 0, leftToRight: sine, rightToRight: 1 };
};
