/** A folder of src and what it may import; `type x` allows `import type` only. `.` is src itself. */
export interface FolderRule {
  readonly folder: string;
  /** What lives there, as DEVELOPERS.md says it. */
  readonly holds: string;
  readonly imports: readonly string[];
}

const CORE = [
  'core/theory',
  'core/chart',
  'core/harp',
  'core/score',
  'core/feels',
  'core/players',
  'core/arranger',
  'core/hearing',
  'core/practice',
  'core/settings',
  'core/formats',
];

/** Every folder that may exist. Sub-folders of `ui` count as `ui`; any other sub-folder needs a line here. */
export const FOLDERS: readonly FolderRule[] = [
  { folder: 'core/theory', holds: 'units, pitch, temperament, chords, seeded chance', imports: [] },
  {
    folder: 'core/chart',
    holds: 'forms and keys become bars of chords; reading a typed chart',
    imports: ['core/theory'],
  },
  {
    folder: 'core/harp',
    holds: 'reeds, tunings, techniques, positions, tab, fit',
    imports: ['core/theory', 'core/chart'],
  },
  {
    folder: 'core/score',
    holds:
      'what a score is: note events, parts and voices, the grid of a swung beat, finishing, slicing, silence',
    imports: ['core/theory', 'core/chart'],
  },
  {
    folder: 'core/feels',
    holds: 'one file a feel: meter, swing, tempo, usual players and every pattern',
    imports: ['core/theory', 'core/chart', 'core/score'],
  },
  {
    folder: 'core/players',
    holds: 'bass, comping, drums, lead and click: how each plays a feel over a chart',
    imports: ['core/theory', 'core/chart', 'core/harp', 'core/score', 'core/feels'],
  },
  {
    folder: 'core/arranger',
    holds: 'the program and its sections: count-in, opening, choruses in an arc, closing',
    imports: ['core/theory', 'core/chart', 'core/score', 'core/feels', 'core/players'],
  },
  {
    folder: 'core/hearing',
    holds: 'samples become pitch frames, frames become heard notes',
    imports: ['core/theory', 'core/harp'],
  },
  {
    folder: 'core/practice',
    holds: 'phrases, exercises, judging, the practice log',
    imports: ['core/theory', 'core/chart', 'core/harp', 'core/score', 'core/players', 'type core/hearing'],
  },
  {
    folder: 'core/settings',
    holds: 'choices, defaults, total parsing of stored data',
    imports: CORE.filter((folder) => folder !== 'core/settings'),
  },
  {
    folder: 'core/formats',
    holds: 'MIDI, WAV and MusicXML files from core values',
    imports: CORE.filter((folder) => folder !== 'core/formats'),
  },
  { folder: 'audio/voices', holds: 'computed instruments: a note becomes samples', imports: CORE },
  {
    folder: 'audio',
    holds: 'band, mixer, transport, offline rendering on Tone.js',
    imports: [...CORE, 'audio/voices'],
  },
  { folder: 'mic', holds: 'permission, worklet, stream of frames', imports: CORE },
  { folder: 'storage', holds: 'versioned keeping of settings and log', imports: CORE },
  {
    folder: 'offline',
    holds: 'the service worker that keeps the program, and its registration',
    imports: [],
  },
  {
    folder: 'app',
    holds: 'the session: state and commands, joining core and devices',
    imports: [...CORE, 'type audio', 'type mic', 'type storage', 'type offline'],
  },
  { folder: 'ui', holds: 'React components and styles', imports: [...CORE, 'app'] },
  {
    folder: '.',
    holds: '`main.tsx` builds devices, session and page',
    imports: [...CORE, 'audio', 'mic', 'storage', 'offline', 'app', 'ui'],
  },
];

/** Package of `dependencies` -> folders that may import it. */
export const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  '@fontsource-variable/atkinson-hyperlegible-next': ['ui'],
  '@fontsource/noto-music': ['ui'],
  react: ['ui', '.'],
  'react-dom': ['ui', '.'],
  spessasynth_core: ['audio'],
  tonal: ['core/theory', 'core/chart'],
  tone: ['audio'],
  valibot: ['core/settings', 'core/practice', 'core/formats'],
  zustand: ['app', 'ui'],
};

/** Source files that are not style sheets stay readable at one sitting. */
export const LONGEST_FILE = 300;

/** Folders whose code must be a function of its arguments alone: no clock, no chance, no browser. */
export const isPure = (folder: string): boolean => folder.startsWith('core/') || folder === 'audio/voices';

/** The rule's imports as a reader wants them: all of core is one word. */
export const importsInWords = ({ folder, imports }: FolderRule): string => {
  const core = imports.filter((name) => name.startsWith('core/'));
  const others = imports.filter((name) => !name.startsWith('core/'));
  const allOfCore = CORE.every((name) => core.includes(name) || name === folder);
  const names = [...(allOfCore ? ['core'] : core.map((name) => name.slice('core/'.length))), ...others];
  return names.map((name) => name.replace('type core/', 'type ')).join(', ') || 'nothing';
};

/** The packages a folder may import, in words. */
export const packagesInWords = (folder: string): string =>
  Object.keys(PACKAGES)
    .filter((name) => PACKAGES[name]?.includes(folder))
    .join(', ') || 'none';
