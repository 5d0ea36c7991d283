import type { Playhead } from '../arranger/playhead';
import type { Program, Section } from '../arranger/program';
import { sectionAt } from '../arranger/section-at';
import { sectionSeconds } from '../song/song-sections';
import type { EndedNote, TakeNote } from './take-note';

/** Ticks of a section that have gone by after so many seconds of it, by its tempo steps. */
const ticksAfter = ({ tempo, chart }: Section, seconds: number): number => {
  let left = seconds;
  for (const [i, { at, bpm }] of tempo.entries()) {
    const perTick = 60 / (bpm * chart.meter.beatTicks);
    const until = tempo[i + 1]?.at;
    if (until === undefined || left < (until - at) * perTick) return at + left / perTick;
    left -= (until - at) * perTick;
  }
  return 0;
};

/** Where the playhead is so many seconds into a section. */
export const playheadIn = (section: Section, seconds: number): Playhead => {
  const { bars, meter } = section.chart;
  const ticks = ticksAfter(section, seconds);
  const bar = Math.max(
    0,
    bars.findLastIndex(({ at }) => at <= ticks),
  );
  return { section, bar, beat: Math.floor((ticks - (bars[bar]?.at ?? 0)) / meter.beatTicks), ticks };
};

/** Index of the first section that is a chorus. */
const firstChorus = (program: Program): number => {
  for (let index = 0; ; index += 1) {
    const section = sectionAt(program, index);
    if (section === null || section.kind === 'chorus') return index;
  }
};

/**
 * Places the notes of a recording in a song whose first chorus begins at a time of the recording, in seconds, and goes
 * on as the band would play it. What comes before, or after the song is over, has no place.
 */
export const placeInSong = (
  notes: readonly EndedNote[],
  program: Program,
  begins: number,
): readonly TakeNote[] => {
  let index = firstChorus(program);
  let section = sectionAt(program, index);
  let from = begins;
  return notes
    .toSorted((a, b) => a.from - b.from)
    .map((note) => {
      if (note.from < begins) return { note, playhead: null };
      while (section !== null && note.from >= from + sectionSeconds(section)) {
        from += sectionSeconds(section);
        index += 1;
        section = section.last ? null : sectionAt(program, index);
      }
      return { note, playhead: section === null ? null : playheadIn(section, note.from - from) };
    });
};
