import { harpKind } from '../../core/bends/bend-results';
import { FORMS } from '../../core/chart/forms';
import { harpName } from '../../core/fit/advice-words';
import type { LogFacts, LogKind } from '../../core/log/log-entry';
import { songTitle } from '../../core/song/song-files';
import { formOf } from '../../core/song/tune';
import { ENGLISH } from '../../core/theory/note-names';
import type { BookState } from '../book/book-state';
import type { ChartsState } from '../charts/charts-state';
import type { SongState } from '../song/song-state';

/** What of the page's state an entry is named by. */
export type Named = Pick<SongState, 'settings' | 'tune'> & BookState & Pick<ChartsState, 'ownCharts'>;

const TITLES: Readonly<Record<Exclude<LogKind, 'song'>, string>> = {
  bends: 'Bends',
  'warm-up': 'Warm-up',
  drill: 'Name it',
};

/** The name of the song of the book that the stand still holds: same form, key and feel; empty where it holds another. */
const bookName = ({ settings, book }: Named): string => {
  const song = book.songs.find(({ id }) => id === book.onStand);
  const same =
    song !== undefined &&
    song.choices.formId === settings.formId &&
    song.choices.harpKey === settings.harpKey &&
    song.choices.position === settings.position &&
    song.choices.style.feel === settings.style.feel;
  return same ? song.name : '';
};

/** What is on the stand, as the log names it. */
export const factsOf = (state: Named, kind: LogKind): LogFacts => {
  const { settings, tune, ownCharts } = state;
  const form = formOf(settings, ownCharts);
  const { chart, harp } = tune;
  return {
    kind,
    song: kind === 'song' ? bookName(state) || songTitle(settings, tune, ENGLISH) : TITLES[kind],
    form: typeof form === 'string' ? FORMS[form].name : form.name,
    key: `${chart.tonic}${chart.mode === 'minor' ? ' minor' : ''}`,
    harp: harpName(harp),
    harpKind: harpKind(harp),
    position: settings.position,
  };
};

/** Whether both are the same song on the same harp, so that one entry goes on. */
export const isSameSong = (a: LogFacts, b: LogFacts): boolean =>
  a.kind === b.kind && a.song === b.song && a.form === b.form && a.key === b.key && a.harpKind === b.harpKind;
