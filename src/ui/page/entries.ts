/**
 * What can be opened, grouped by what a player does: seven entries at most stand at the top of the page. A page has a
 * name beside its neighbours (`text`) and one that a sentence about it begins with (`title`).
 */
export const ENTRIES = [
  {
    text: 'Song',
    pages: [
      { id: 'song', text: 'Choices', title: 'The song panel' },
      { id: 'chart', text: 'Charts', title: 'The chart panel' },
    ],
  },
  { text: 'Harp', pages: [{ id: 'harp', text: 'Harp', title: 'The harp panel' }] },
  {
    text: 'Band',
    pages: [
      { id: 'band', text: 'Players', title: 'The band panel' },
      { id: 'mixer', text: 'Mixer', title: 'The mixer' },
      { id: 'midi', text: 'MIDI', title: 'The panel of keyboards and pedals' },
    ],
  },
  {
    text: 'Practise',
    pages: [
      { id: 'practise', text: 'Over the band', title: 'The practice panel' },
      { id: 'today', text: 'Today', title: 'The panel for today' },
      { id: 'phrases', text: 'Phrases', title: 'The phrases' },
      { id: 'bends', text: 'Bends', title: 'The practice of bends' },
      { id: 'ear', text: 'Ear', title: 'The ear panel' },
      { id: 'played', text: 'Played', title: 'The panel of what you played' },
    ],
  },
  {
    text: 'Book',
    pages: [
      { id: 'songs', text: 'Songs', title: 'The songs of the book' },
      { id: 'sets', text: 'Sets', title: 'The sets of the book' },
      { id: 'log', text: 'Log', title: 'The log' },
    ],
  },
  { text: 'Take away', pages: [{ id: 'take-away', text: 'Take away', title: 'The panel for taking away' }] },
  {
    text: 'Help',
    pages: [
      { id: 'help', text: 'Shortcuts', title: 'The help panel' },
      { id: 'signs', text: 'Signs', title: 'The list of signs' },
      { id: 'care', text: 'Care', title: 'The care panel' },
    ],
  },
] as const;

export type Entry = (typeof ENTRIES)[number];
/** A page of an entry at the top: what opens as one panel. */
export type PanelPage = Entry['pages'][number];
/** Which panel is open. */
export type PanelId = PanelPage['id'];

/** What panels are given. */
export interface PanelProps {
  readonly onClose: () => void;
}

/** Every page of every entry. */
export const PAGES: readonly PanelPage[] = ENTRIES.flatMap(({ pages }) => [...pages]);

/** The entry a panel is found under. */
export const entryOf = (panel: PanelId): Entry => {
  const found = ENTRIES.find(({ pages }) => pages.some(({ id }) => id === panel));
  if (found === undefined) throw new Error(`No entry leads to the panel ${panel}`);
  return found;
};
