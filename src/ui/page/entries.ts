/** What can be opened, grouped by what a player does: seven entries at most stand at the top of the page. */
export const ENTRIES = [
  { id: 'song', text: 'Song', pages: ['song', 'chart'] },
  { id: 'harp', text: 'Harp', pages: ['harp'] },
  { id: 'band', text: 'Band', pages: ['band', 'mixer'] },
  { id: 'practise', text: 'Practise', pages: ['practise', 'ear'] },
  { id: 'book', text: 'Book', pages: ['songs', 'sets'] },
  { id: 'take-away', text: 'Take away', pages: ['take-away'] },
  { id: 'help', text: 'Help', pages: ['help', 'signs', 'care'] },
] as const;

export type Entry = (typeof ENTRIES)[number];
export type PanelId = Entry['pages'][number];

/** What the pages of an entry are called. */
export const PAGE_TEXTS: Readonly<Record<PanelId, string>> = {
  song: 'Choices',
  chart: 'Charts',
  harp: 'Harp',
  band: 'Players',
  mixer: 'Mixer',
  practise: 'Over the band',
  ear: 'Ear',
  songs: 'Songs',
  sets: 'Sets',
  'take-away': 'Take away',
  help: 'Keyboard',
  signs: 'Signs',
  care: 'Care',
};

/** The entry a panel is found under. */
export const entryOf = (panel: PanelId): Entry => {
  const found = ENTRIES.find(({ pages }) => (pages as readonly PanelId[]).includes(panel));
  if (found === undefined) throw new Error(`No entry leads to the panel ${panel}`);
  return found;
};
