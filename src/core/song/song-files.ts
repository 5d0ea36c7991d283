import type { Section } from '../arranger/program';
import { isFormId } from '../chart/forms';
import { FEELS, feelOf } from '../feels/feels';
import type { PartId } from '../score/score';
import { type Mix, openParts } from '../settings/mix';
import type { Settings } from '../settings/settings';
import type { NoteNames } from '../theory/note-names';
import type { Tune } from './tune';

const keyOf = ({ chart }: Tune): string => `${chart.tonic}${chart.mode === 'minor' ? ' minor' : ''}`;

const isOwn = ({ formId }: Settings): boolean => !isFormId(formId);

/** What a song is called in its files: `Shuffle in B♭`, or the name the player gave it. */
export const songTitle = (settings: Settings, tune: Tune, names: NoteNames): string =>
  isOwn(settings) ? tune.chart.title : `${feelOf(settings.style.feel).name} in ${names.key(keyOf(tune))}`;

/**
 * A title that was kept, for the page: one that `songTitle` made of feel and key by the names of the page, any other as
 * the player gave it.
 */
export const songName = (title: string, names: NoteNames): string => {
  const [, feel = '', key = ''] = /^(.+) in ([A-G][♭♯]?(?: minor)?)$/.exec(title) ?? [];
  return FEELS.some(({ name }) => name === feel) ? `${feel} in ${names.key(key)}` : title;
};

/** Only what every system takes in the name of a file; accents go, other signs become dashes. */
export const plainName = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');

/** The key for the name of a file: `B-flat`. */
const keyWords = (tune: Tune): string =>
  keyOf(tune)
    .replaceAll('#', '-sharp')
    .replace(/(?<=^[A-G]b*)b/g, '-flat');

/**
 * The name of a file without its ending: feel (or the song's own name), key and tempo: `shuffle-b-flat-104bpm`.
 * @param part added for a file that holds one part alone.
 */
export const fileStem = (settings: Settings, tune: Tune, part: PartId | null = null): string => {
  const key = keyWords(tune);
  const { feel } = settings.style;
  const name = (isOwn(settings) && plainName(tune.chart.title)) || feel;
  const words = [name, key, `${Math.round(settings.tempo)}bpm`, ...(part === null ? [] : [part])];
  return words.map(plainName).join('-');
};

/** The name of a song's file in a set, without its ending: `03-wet-boots-g-104bpm`. */
export const setFileStem = (number: number, name: string, settings: Settings, tune: Tune): string => {
  const key = keyWords(tune);
  const words = [String(number).padStart(2, '0'), name, key, `${Math.round(settings.tempo)}bpm`];
  return words
    .map(plainName)
    .filter((word) => word !== '')
    .join('-');
};

/** The open parts that have something to play in these sections. */
export const soundingParts = (mix: Mix, sections: readonly Section[]): readonly PartId[] =>
  openParts(mix).filter((part) =>
    sections.some(({ score }) => score.events.some((event) => event.part === part)),
  );
