/** How the files of a set are made: fetched with the rest of what makes files. */
import type { Program } from '../../core/arranger/program';
import { type BookSong, withBookSong } from '../../core/book/book-song';
import type { GigSet } from '../../core/book/gig-set';
import { OPEN_CHORUSES } from '../../core/book/song-facts';
import type { AudioTags } from '../../core/formats/audio-tags';
import { FRESH_RUN } from '../../core/practice/trade-run';
import type { BandSound } from '../../core/song/band-sound';
import { chartFor } from '../../core/song/chosen-chart';
import { setFileStem, soundingParts } from '../../core/song/song-files';
import { soundOf, withRecordedTaken } from '../../core/song/song-program';
import { songSeconds } from '../../core/song/song-sections';
import { tuneFor, withFittingRepeat } from '../../core/song/tune';
import type { BookState } from '../book/book-state';
import type { Song } from '../song/song-state';
import { type JobReins, mustFitWav, saveAudioFiles, type TakeAwayDevices } from './export-audio';
import type { ExportState } from './export-state';
import { EncoderTrouble, SavingTrouble } from './export-trouble';
import { collectSections, formatOf } from './export-work';

/** What a set is made into files from, as it was when it was asked for. */
export interface SetOrder {
  readonly state: Song & ExportState & BookState;
  readonly set: GigSet;
  readonly programOf: (state: Song) => Program;
}

/** What became of a set. */
export interface SavedSet {
  readonly names: readonly string[];
  /** Names of songs that could not be made, each with why. */
  readonly left: readonly string[];
  /** Sounds that could not be computed and are missing. */
  readonly missing: number;
}

/** Seconds in which the last sound dies away; a file is no longer than its stated length by more. */
const RING = 0.9;

/** A song of the set as if it stood on the stand. */
const onStand = (state: SetOrder['state'], song: BookSong): Song => {
  const { chart } = song;
  const known = chart === null || state.ownCharts.some(({ id }) => id === chart.id);
  const ownCharts = known ? state.ownCharts : [...state.ownCharts, chart];
  const asked = withBookSong(state.settings, song);
  const form = chartFor(asked, ownCharts);
  const settings = withFittingRepeat(asked, form.bars.length);
  const tune = tuneFor(settings, form);
  return {
    ...state,
    ...{ settings, tune, ownCharts, form, lastChorus: null, harpHeard: null, tradeRun: FRESH_RUN },
  };
};

interface SetFile {
  readonly state: Song;
  readonly program: Program;
  readonly sound: BandSound;
  readonly stem: string;
  readonly tags: AudioTags;
}

const filesOf = ({ state, set, programOf }: SetOrder): readonly SetFile[] =>
  set.entries.flatMap(({ song: id }, index) => {
    const song = state.book.songs.find((each) => each.id === id);
    if (song === undefined) return [];
    const standing = onStand(state, song);
    const { settings, tune } = standing;
    return [
      {
        state: standing,
        program: programOf(standing),
        sound: soundOf(withRecordedTaken(standing)),
        stem: setFileStem(index + 1, song.name, settings, tune),
        tags: {
          title: song.name,
          album: set.name,
          track: { number: index + 1, of: set.entries.length },
        },
      },
    ];
  });

const makeOne = async (
  file: SetFile,
  { state: { takeAway } }: SetOrder,
  devices: TakeAwayDevices,
  reins: JobReins,
): Promise<{ readonly name: string; readonly missing: number }> => {
  const format = formatOf(takeAway.choices, takeAway.encodings);
  const { plan } = file.program;
  const extent = {
    choruses: plan.choruses ?? OPEN_CHORUSES,
    countIn: plan.countInBars > 0,
    ending: true,
  };
  const seconds = songSeconds(file.program, extent);
  if (!('bitrate' in format)) mustFitWav(format, seconds);
  const sections = await collectSections(file.program, extent, reins.signal);
  const parts = soundingParts(file.state.settings.mix, sections);
  if (parts.length === 0) throw new SavingTrouble('every part is muted in the mixer');
  const name = `${file.stem}.${'bitrate' in format ? format.extension : 'wav'}`;
  const missing = await saveAudioFiles(
    {
      tags: file.tags,
      files: [{ name, parts }],
      sections,
      style: file.state.settings.style,
      sound: file.sound,
      format,
      cutAt: seconds + RING,
      fade: RING,
    },
    devices,
    reins,
  );
  return { name, missing };
};

/**
 * Makes every song of a set into a file of its own, one after another, each handed over as soon as it is done. A song
 * that cannot be made is left out and named. Rejects with the signal's reason when aborted.
 * @param onSong told of each song as it begins, from 1.
 */
export const makeSet = async (
  order: SetOrder,
  devices: TakeAwayDevices,
  reins: JobReins,
  onSong: (number: number, of: number) => void,
): Promise<SavedSet> => {
  const files = filesOf(order);
  if (files.length === 0) throw new SavingTrouble('The set holds no song that is still in your book.');
  const names: string[] = [];
  const left: string[] = [];
  let missing = 0;
  for (const [index, file] of files.entries()) {
    onSong(index + 1, files.length);
    try {
      const made = await makeOne(file, order, devices, reins);
      names.push(made.name);
      missing += made.missing;
    } catch (error) {
      // What is wrong with one song is no reason to lose the others; an encoder that broke down is wrong with all.
      const ofOne = error instanceof SavingTrouble && !(error instanceof EncoderTrouble);
      if (!ofOne || reins.signal.aborted) throw error;
      left.push(`${file.tags.title}: ${error.message}`);
    }
  }
  return { names, left, missing };
};
