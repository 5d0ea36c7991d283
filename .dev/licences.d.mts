import type { Licence } from '../src/ui/panels/help/licence-texts';

/** The licences of every package shipped, those of one text together. Reads the installed packages. */
export const shippedLicences: (root?: string) => readonly Licence[];
/** The version of the program, as package.json has it. */
export const programVersion: (root?: string) => string;
