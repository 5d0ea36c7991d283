import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { DEFAULT_PLAN, DEFAULT_SETTINGS, DEFAULT_STYLE } from '../../../src/core/settings/defaults';
import { placeInSong } from '../../../src/core/takes/place-in-song';
import { writtenPasses } from '../../../src/core/takes/take-bars';
import { takeMidi } from '../../../src/core/takes/take-midi';
import { takePasses } from '../../../src/core/takes/take-passes';
import { asBpm, asPitchClass, asSeconds } from '../../../src/core/theory/units';
import { makeTake } from '../../helpers/hearing/corpus';
import { hearWholeTake } from '../../helpers/hearing/hear-take';
import { noteScore } from '../../helpers/hearing/scores';
import { notesOf, readMidi } from '../../helpers/midi-reading';

describe('a take with the band leaking at −6 dB', () => {
  const take = makeTake({ seed: 4307, kind: 'line', seconds: 8, leak: -6 });
  const notes = hearWholeTake(take).map((note) => ({ ...note, to: asSeconds(note.to) }));
  const program = {
    chart: buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }),
    style: DEFAULT_STYLE,
    tempo: asBpm(120),
    plan: { ...DEFAULT_PLAN, countInBars: 0, intro: 'none', choruses: null, repeat: null },
  } as const;
  const passes = takePasses(placeInSong(notes, program, 0).map((heard) => ({ kind: 'note', heard })));

  it('is written down under its bars with 96 % of its notes at least, from the tab as from the file', () => {
    const bars = writtenPasses(passes, { settings: DEFAULT_SETTINGS, harp: take.harp }).flatMap((pass) =>
      pass.kind === 'free' ? [] : pass.bars,
    );
    const written = bars.flatMap((bar, i) =>
      bar.notes.map(({ share, pitch }) => ({
        // A bar of 4/4 at 120 lasts two seconds.
        from: 2 * (i + share),
        to: 2 * (i + share) + 0.1,
        hz: take.reference * 2 ** ((pitch - 69) / 12),
      })),
    );
    // The truth by the key of each note: tab and MIDI know no cents.
    const truth = take.notes.map(({ from, to, sounds }) => ({
      from,
      to,
      hz: take.reference * 2 ** ((sounds[0].pitch - 69) / 12),
    }));
    expect(truth.length).toBeGreaterThan(15);
    expect(noteScore(truth, written).recall).toBeGreaterThanOrEqual(0.96);
    const file = readMidi(takeMidi(passes, { title: '', voices: { bass: 'upright-bass', chords: 'piano' } }));
    const read = notesOf(file.tracks.find(({ name }) => name === 'Harmonica')).map(({ from, to, key }) => ({
      from: from / 960,
      to: to / 960,
      hz: take.reference * 2 ** ((key - 69) / 12),
    }));
    expect(noteScore(truth, read).recall).toBeGreaterThanOrEqual(0.96);
  });
});
