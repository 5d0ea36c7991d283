/** Packages shipped with the program under one and the same text. */
export interface Licence {
  /** Name and version of each. */
  readonly packages: readonly string[];
  /** As the packages name it: `MIT`, `OFL-1.1`. */
  readonly licence: string;
  /** The whole text with its copyright lines. */
  readonly text: string;
}

/** Put in by the build (`.dev/licences.mjs`). */
declare const SHIPPED: readonly Licence[];

/** Of everything shipped. Some thirty kilobytes, so this file is fetched only when they are read. */
export const LICENCES = SHIPPED;
