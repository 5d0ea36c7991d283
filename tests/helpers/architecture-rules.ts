/** A folder of src and what it may import; `type x` allows `import type` only. `.` is src itself. */
export interface FolderRule {
  readonly folder: string;
  /** What lives there, as DEVELOPERS.md says it. */
  readonly holds: string;
  readonly imports: readonly string[];
}

/** The folders of core, each of which may import what stands before it. */
const CORE = [
  'core/theory',
  'core/chart',
  'core/chart-text',
  'core/harp',
  'core/fit',
  'core/lines',
  'core/score',
  'core/feels',
  'core/players',
  'core/arranger',
  'core/signal',
  'core/grips',
  'core/hearing',
  'core/bends',
  'core/phrase',
  'core/judging',
  'core/practice',
  'core/midi',
  'core/settings',
  'core/phrasebook',
  'core/formats',
  'core/sheets',
  'core/melody',
  'core/song',
  'core/book',
  'core/takes',
  'core/log',
  'core/today',
];

const coreRow = (name: string, holds: string, ...imports: readonly string[]): FolderRule => ({
  folder: `core/${name}`,
  holds,
  imports: imports.map((each) => (each.startsWith('type ') ? `type core/${each.slice(5)}` : `core/${each}`)),
});

const CORE_ROWS: readonly FolderRule[] = [
  coreRow(
    'theory',
    'units, pitch, temperament, chords, seeded chance, medians; values from outside, and the words for them',
  ),
  coreRow('chart', 'forms and keys become bars of chords', 'theory'),
  coreRow('chart-text', 'reading and printing typed charts', 'theory', 'chart'),
  coreRow('harp', 'reeds, tunings, techniques, positions, reach, tab, the case', 'theory'),
  coreRow(
    'fit',
    'what the harp has over a chart: fit, gaps, grips, guide moves, advice',
    'theory',
    'chart',
    'harp',
  ),
  coreRow('lines', 'lines through the changes: slots, cost, search', 'theory', 'chart', 'harp'),
  coreRow(
    'score',
    'what a score is: note events, parts and voices, the grid of a swung beat, finishing, slicing, silence',
    'theory',
    'chart',
  ),
  coreRow(
    'feels',
    'a row a feel (meter, swing, tempo, usual players), and one file each with every pattern',
    'theory',
    'chart',
    'score',
  ),
  coreRow(
    'players',
    'bass, comping, drums, lead and click: how each plays a feel over a chart',
    'theory',
    'chart',
    'harp',
    'score',
    'feels',
  ),
  coreRow(
    'arranger',
    'the program and its sections: count-in, opening, choruses in an arc, closing',
    'theory',
    'chart',
    'score',
    'feels',
    'players',
  ),
  coreRow(
    'signal',
    'samples made ready to listen to: filtered, decimated, without the band’s own sound',
    'theory',
  ),
  coreRow(
    'grips',
    'which holes sound together, by what is known of the harp’s reeds',
    'theory',
    'signal',
    'harp',
  ),
  coreRow(
    'hearing',
    'samples become pitch frames, frames become heard notes, alone or several at once',
    'theory',
    'signal',
    'harp',
    'grips',
  ),
  coreRow(
    'bends',
    'bend practice: targets in order, exercises, verdicts, what results come to; a harp’s own tuning',
    'theory',
    'harp',
    'type hearing',
  ),
  coreRow(
    'phrase',
    'what a phrase is: its value, as tab, as signs and words, as the harp voice plays it',
    'theory',
    'chart',
    'type chart-text',
    'harp',
    'score',
    'players',
  ),
  coreRow(
    'judging',
    'what was heard against what was asked: aligned, judged note by note, said in a sentence',
    'theory',
    'chart',
    'harp',
    'score',
    'phrase',
  ),
  coreRow(
    'practice',
    'calls and who plays when, what was heard of a chorus, the warm-up',
    'theory',
    'chart',
    'harp',
    'fit',
    'lines',
    'score',
    'players',
    'type hearing',
    'phrase',
    'judging',
  ),
  coreRow(
    'midi',
    'bytes of keyboards and pedals become messages, held keys chords, presses actions; what the band sends out',
    'theory',
    'harp',
    'score',
  ),
  coreRow(
    'settings',
    'every choice declared once; total parsing of stored choices',
    'theory',
    'chart',
    'harp',
    'bends',
    'lines',
    'score',
    'feels',
    'players',
    'arranger',
    'practice',
    'midi',
  ),
  coreRow(
    'phrasebook',
    'the library of phrases: kept, found, checked, for the levels of a class; the starter set',
    'theory',
    'chart',
    'harp',
    'lines',
    'feels',
    'phrase',
    'practice',
    'settings',
  ),
  {
    folder: 'core/formats',
    holds: 'MIDI, WAV, MusicXML and Opus files from core values',
    imports: CORE.slice(0, CORE.indexOf('core/formats')),
  },
  coreRow(
    'sheets',
    'sheets of music from files read as typed charts, and written',
    'theory',
    'chart',
    'chart-text',
  ),
  coreRow(
    'melody',
    'melodies from note names and files, and the harps, positions and tab that play them',
    'theory',
    'chart',
    'harp',
    'phrase',
    'formats',
    'sheets',
  ),
  {
    folder: 'core/song',
    holds:
      'what choices come to: tune, key coupling, program and sound, what is shown of a bar, chart drafts',
    imports: CORE.slice(0, CORE.indexOf('core/song')),
  },
  {
    folder: 'core/book',
    holds: 'songs kept by name, sets of them, the harps they need',
    imports: CORE.slice(0, CORE.indexOf('core/book')),
  },
  {
    folder: 'core/takes',
    holds:
      'what was played: its sound, its notes as tab under the bars and as MIDI, what was hit in a chorus',
    imports: CORE.slice(0, CORE.indexOf('core/book')),
  },
  coreRow(
    'log',
    'the log of what was played and heard: its entries, how they come about, its files and pictures',
    'theory',
    'harp',
    'practice',
  ),
  coreRow(
    'today',
    'what to practise today: items, grades, the schedule, the steps',
    'theory',
    'chart',
    'harp',
    'fit',
    'bends',
    'phrasebook',
    'book',
  ),
];

const device = (folder: string, holds: string, ...imports: readonly string[]): FolderRule => ({
  folder,
  holds,
  imports: [...CORE, ...imports],
});

const VOICES = ['audio/synthesis', 'audio/drums', 'audio/voices'];

const DEVICES: readonly FolderRule[] = [
  { folder: 'listeners', holds: 'who wants to hear of what a device tells', imports: [] },
  device('audio/synthesis', 'what computed instruments are made of, and what a voice is'),
  device('audio/drums', 'computed drums and cymbals', 'audio/synthesis'),
  device('audio/voices', 'computed instruments: a note becomes samples', 'audio/synthesis', 'audio/drums'),
  device('audio/transport', 'sections on the clock of the sound, a window ahead', ...VOICES),
  device('audio/mixer', 'channels, room, limiter; loudness of the feels', ...VOICES),
  device('audio/bank', 'sounds computed in a worker and kept', ...VOICES, 'audio/transport'),
  device(
    'audio/soundfont',
    'sounds from a file: the recorded instruments, or one of the player’s own',
    'listeners',
    ...VOICES,
    'audio/bank',
  ),
  device(
    'audio/band',
    'the band that plays: one engine of transport, bank and mixer',
    'listeners',
    ...VOICES,
    'audio/transport',
    'audio/mixer',
    'audio/bank',
  ),
  device(
    'audio/export',
    'the band rendered and compressed to files',
    ...VOICES,
    'audio/transport',
    'audio/mixer',
    'audio/bank',
    'audio/band',
  ),
  device('mic', 'permission, worklet, stream of frames', 'listeners'),
  device('tape', 'recordings read from files, heard through and played back', 'mic'),
  {
    folder: 'midi',
    holds: 'keyboards and pedals that the browser hands out',
    imports: ['listeners'],
  },
  {
    folder: 'link',
    holds: 'songs packed into the page’s address, and out of it',
    imports: [],
  },
  {
    folder: 'screen',
    holds: 'the screen kept awake, and filled by the page; media keys and the lock screen',
    imports: ['listeners'],
  },
  device('sheet', 'files of sheet music unpacked and parsed'),
  device('storage', 'versioned keeping of settings and log', 'listeners'),
  {
    folder: 'tabs',
    holds: 'what the tabs of the page tell one another of playing',
    imports: ['listeners'],
  },
  {
    folder: 'offline',
    holds: 'the service worker that keeps the program, and its registration',
    imports: ['listeners'],
  },
];

const DEVICE_TYPES = DEVICES.map(({ folder }) => `type ${folder}`).filter(
  (name) => !VOICES.some((voices) => name === `type ${voices}`),
);

const feature = (name: string, holds: string, ...features: readonly string[]): FolderRule => ({
  folder: `app/${name}`,
  holds,
  imports: [...CORE, ...DEVICE_TYPES, 'listeners', 'app', ...features.map((each) => `app/${each}`)],
});

const APP: readonly FolderRule[] = [
  {
    folder: 'app',
    holds: 'what a feature sees of the state of the page, and how its long work lets the page go on',
    imports: [],
  },
  feature('keeping', 'settings, shelves and copies in the storage; notices'),
  feature('song', 'the song on the stand: choosing, playing, showing', 'keeping'),
  feature('charts', 'charts of the player’s own: drafts, saving, tabs', 'keeping', 'song'),
  feature('book', 'the player’s book: songs, sets, playing through a set', 'keeping', 'song', 'charts'),
  feature(
    'soundfont',
    'sounds from files: the recorded instruments; the player’s own to load, choose, keep',
    'song',
  ),
  feature('export', 'files to take away', 'keeping', 'song', 'charts', 'book'),
  feature('warm-up', 'warm-ups that run by themselves', 'keeping', 'song', 'charts', 'book'),
  feature('stage', 'the view for playing: open or not, the screen awake', 'song', 'warm-up'),
  feature('offline', 'how the program is kept, and a newer version of it', 'song'),
  feature(
    'ear',
    'what the microphone hears: asking for it, the harp listened for, notes placed in the music',
    'keeping',
    'song',
  ),
  feature(
    'bends',
    'bends practised one by one: turns, what is kept of them, what they decide',
    'keeping',
    'song',
    'ear',
  ),
  feature(
    'phrases',
    'trading with what is heard: turns judged, repeated and heard again; phrases and exercises kept',
    'keeping',
    'song',
    'charts',
    'ear',
  ),
  feature(
    'takes',
    'the last minutes played, and recordings from files: heard, written down, kept, saved',
    'keeping',
    'song',
    'ear',
  ),
  feature(
    'midi',
    'keyboards and pedals: a held chord answered, the harp played, switches taught',
    'keeping',
    'song',
    'book',
    'ear',
  ),
  feature('media-keys', 'media keys and the lock screen play, pause and turn songs', 'song', 'book'),
  feature('tabs', 'one band among the tabs of the page', 'song'),
  feature(
    'lasting',
    'whether the browser keeps for good what the player made',
    'keeping',
    'song',
    'charts',
    'book',
    'phrases',
  ),
  feature('choruses', 'what choruses come to: the tempo ladder, playing from memory', 'song', 'ear'),
  feature(
    'log',
    'the log that writes itself: what was played and heard, kept and deleted',
    'keeping',
    'song',
    'charts',
    'book',
    'warm-up',
    'ear',
    'bends',
    'phrases',
    'choruses',
  ),
  feature(
    'today',
    'what to practise today, led through on the stand',
    'keeping',
    'song',
    'book',
    'warm-up',
    'ear',
    'bends',
    'phrases',
    'choruses',
    'log',
  ),
  feature(
    'session',
    'the features composed to one session; knows nothing else',
    'keeping',
    'song',
    'charts',
    'book',
    'soundfont',
    'export',
    'warm-up',
    'stage',
    'ear',
    'bends',
    'takes',
    'offline',
    'phrases',
    'lasting',
    'choruses',
    'log',
    'today',
    'midi',
    'media-keys',
    'tabs',
  ),
];

const APP_FOLDERS = APP.map(({ folder }) => folder);

const view = (name: string, holds: string, ...views: readonly string[]): FolderRule => ({
  folder: `ui/${name}`,
  holds,
  imports: [...CORE, ...APP_FOLDERS, ...views.map((each) => `ui/${each}`)],
});

const UI: readonly FolderRule[] = [
  view('state', 'hooks on the session: what components read'),
  view('controls', 'what panels and views are made of, with the look of each', 'state'),
  view('chart', 'the bars, and the signs of what is going on', 'state', 'controls', 'ear'),
  view('fit', 'what fits now and next', 'state', 'controls'),
  view('ear', 'what the microphone hears, as it is shown', 'state', 'controls'),
  view('harp-map', 'the two drawings of the harp', 'state', 'controls', 'ear'),
  view(
    'stage',
    'the view for playing, fetched when it is opened',
    'state',
    'controls',
    'chart',
    'fit',
    'ear',
    'harp-map',
  ),
  view('print', 'what is printed', 'state', 'controls', 'chart', 'harp-map'),
  view('panels/*', 'one folder a panel; none knows another', 'state', 'controls', 'chart', 'ear'),
  view(
    'page',
    'the whole page, and the last resort',
    'state',
    'controls',
    'chart',
    'fit',
    'ear',
    'harp-map',
    'stage',
    'print',
    'panels/*',
  ),
];

/** Every folder that may exist. */
export const FOLDERS: readonly FolderRule[] = [
  ...CORE_ROWS,
  ...DEVICES,
  ...APP,
  ...UI,
  {
    folder: '.',
    holds: '`main.tsx` draws the page, `devices.ts` makes what it stands on',
    imports: [...CORE, ...DEVICES.map(({ folder }) => folder), ...APP_FOLDERS, 'ui/state', 'ui/page'],
  },
];

/** Package of `dependencies` -> folders that may import it. */
export const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  '@fontsource-variable/atkinson-hyperlegible-next': ['ui/page'],
  '@fontsource/noto-music': ['ui/page'],
  fflate: ['sheet'],
  'fft.js': ['core/hearing', 'core/signal'],
  react: [...UI.map(({ folder }) => folder), '.'],
  'react-dom': ['ui/chart', 'ui/print', '.'],
  spessasynth_core: ['audio/soundfont'],
  tonal: ['core/theory', 'core/chart-text'],
  tone: ['audio/band', 'audio/mixer', 'audio/export'],
  'ts-fsrs': ['core/today'],
  valibot: ['core/bends', 'core/settings', 'core/practice', 'core/formats', 'core/log', 'core/today'],
  'wasm-media-encoders': ['audio/export'],
  zustand: ['app/session', 'ui/state'],
};

/** Rooms stay small enough to know by heart. */
export const MOST_FILES = 30;

/** Source files that are not style sheets stay readable at one sitting. */
export const LONGEST_FILE = 300;

/** Folders whose code must be a function of its arguments alone: no clock, no chance, no browser. */
export const isPure = (folder: string): boolean => folder.startsWith('core/') || VOICES.includes(folder);

/** Rows that go by one word where a rule allows them all. */
const GROUPS: readonly (readonly [string, readonly string[]])[] = [
  ['voices', VOICES],
  ['types of devices', DEVICE_TYPES],
  ['devices', DEVICES.map(({ folder }) => folder)],
  ['app', APP_FOLDERS],
];

/** The rule's imports as a reader wants them: all of core is one word, and so are other groups. */
export const importsInWords = ({ folder, imports }: FolderRule): string => {
  const core = imports.filter((name) => name.startsWith('core/'));
  const allOfCore = CORE.every((name) => core.includes(name) || name === folder);
  let others = imports.filter((name) => !name.startsWith('core/'));
  const groups: string[] = [];
  for (const [word, members] of GROUPS.toReversed()) {
    if (!members.every((name) => others.includes(name))) continue;
    others = others.filter((name) => !members.includes(name));
    groups.unshift(word);
  }
  const names = [
    ...(allOfCore ? ['core'] : core.map((name) => name.slice('core/'.length))),
    ...groups,
    ...others,
  ];
  return names.map((name) => name.replace('type core/', 'type ')).join(', ') || 'nothing';
};

/** The packages a folder may import, in words. */
export const packagesInWords = (folder: string): string =>
  Object.keys(PACKAGES)
    .filter((name) => PACKAGES[name]?.includes(folder))
    .join(', ') || 'none';
