import { describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import { createSoundMaker } from '../../src/audio/bank/compute-sound';
import { soundKeyFor } from '../../src/audio/bank/sound-key';
import { allNotes, type ScheduledNote } from '../../src/audio/transport/scheduled-note';
import { placeSection } from '../../src/audio/transport/timeline';
import { VOICES } from '../../src/audio/voices/voices';
import type { Program } from '../../src/core/arranger/program';
import { FEEL_IDS, type FeelId } from '../../src/core/feels/feels';
import type { PartId } from '../../src/core/score/score';
import type { BandSound } from '../../src/core/song/band-sound';
import { allSections } from '../helpers/all-sections';
import { hann, spectrogram } from '../helpers/drum-spectrum';
import { loadOtherMeter } from '../helpers/ebur128';
import { integratedLoudness, truePeak } from '../helpers/loudness';
import { createSharedSounds, type HeardFile, renderHere, soundFor } from '../helpers/render-here';
import { blockLevels, peakBetween, riseBetween, widthAbove } from '../helpers/samples';
import { inSoak, soakIt } from '../helpers/soak';
import { testChart, testProgram } from '../helpers/test-charts';
import { MIX_OCTAVES, MIX_SPECTRA } from './mix-figures';

const RATE = 48_000;

/**
 * A chorus of every feel takes longer than all the rest, so that `npm run soak` renders them all. Here is one of each
 * chord instrument that the feels share, upright and electric bass, sticks and brushes.
 */
const FEELS_HEARD = inSoak<FeelId>(FEEL_IDS, ['shuffle', 'train']);

/** Power of both sides in the octaves from 125 Hz to 4 kHz, in dB re all from 63 Hz to 8 kHz. */
const octavesOf = (sides: readonly Float32Array[]): readonly number[] => {
  const size = 16_384;
  const powers = MIX_OCTAVES.map(() => 0);
  for (const side of sides) {
    const stretch = { from: 0, window: hann(size), size: size / RATE, hop: size / 2 };
    const frames = Math.floor(side.length / stretch.hop) - 1;
    spectrogram(side, RATE, { ...stretch, frames }, ({ power, binHz }) => {
      for (const [i, middle] of MIX_OCTAVES.entries())
        for (let bin = Math.ceil(middle / Math.SQRT2 / binHz); bin * binHz < middle * Math.SQRT2; bin += 1)
          powers[i] += power[bin];
    });
  }
  const all = powers.reduce((sum, power) => sum + power, 0);
  return powers.slice(1, -1).map((power) => 10 * Math.log10(power / all));
};

const short = (feel: FeelId, choruses = 1): Program =>
  testProgram(feel, { plan: { choruses, ending: 'stop' } });

describe('the band rendered to samples', () => {
  const shared = createSharedSounds();
  const loudnesses: number[] = [];

  const render = (program: Program, changes: Parameters<typeof renderHere>[2] = {}): Promise<HeardFile> =>
    renderHere(program, shared, changes);

  /** Every note of a program on the clock of its file. */
  const notesOf = (program: Program): ScheduledNote[] => {
    let at = 0;
    return allSections(program).flatMap((section) => {
      const placement = placeSection(section, at);
      at = placement.until;
      return allNotes(placement);
    });
  };

  /** Seconds the computed sound of a note takes to rise: what an onset may lag behind the score. */
  const riseOf = (note: ScheduledNote, sound: BandSound): number => {
    const key = soundKeyFor({ ...note.event, stroke: note.stroke }, sound);
    return riseBetween(createSoundMaker(VOICES)(key, RATE).samples, 0, 0.06 * RATE) / RATE;
  };

  const errorsOf = (audio: HeardFile, notes: readonly ScheduledNote[], sound: BandSound): number[] =>
    notes.map((note) => {
      const onset = riseBetween(audio.left, (note.at - 0.02) * RATE, (note.at + 0.06) * RATE) / RATE;
      return onset - note.at - riseOf(note, sound);
    });

  it('puts two choruses of backbeats within 2 ms of the score', async () => {
    const program = testProgram('shuffle', { plan: { choruses: 2, countInBars: 1, ending: 'stop' } });
    const sound = soundFor(program);
    const drums = notesOf(program).filter(({ event }) => event.part === 'drums');
    const alone = drums.filter(
      (note) =>
        note.event.pitch === 38 &&
        note.event.velocity > 80 &&
        !drums.some(
          (other) =>
            other !== note &&
            other.event.pitch !== 42 &&
            other.at > note.at - 0.1 &&
            other.at < note.at + 0.06,
        ),
    );
    expect(alone.length).toBeGreaterThan(10);
    const errors = errorsOf(await render(program, { parts: ['drums'] }), alone, sound);
    expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.002);
  });

  it('puts every click within 1 ms of the score, pushed or not, across the pieces it is made of', async () => {
    for (const push of [{}, { click: 25 }]) {
      const program = testProgram('swing', {
        style: { push },
        plan: { choruses: 1, sounding: 'click', ending: 'stop' },
      });
      const { channels } = RESTING_SOUND.mix;
      const sound = {
        ...soundFor(program),
        mix: { master: 0.5, channels: { ...channels, click: { ...channels.click, muted: false } } },
      };
      const late = (push.click ?? 0) / 1000;
      const clicks = notesOf(program).map((note) => ({ ...note, at: note.at + late }));
      expect(clicks.length).toBeGreaterThan(40);
      const errors = errorsOf(await render(program, { sound }), clicks, sound);
      expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.001);
    }
  });

  it('is the sum of its parts, and silent without them', async () => {
    const program = testProgram('jump', {
      chart: testChart('eight-v-second'),
      plan: { choruses: 1, ending: 'stop' },
    });
    const sound = soundFor(program, 0.15);
    const whole = await render(program, { sound });
    const parts: readonly PartId[] = ['drums', 'bass', 'chords'];
    const stems: HeardFile[] = [];
    for (const part of parts) stems.push(await render(program, { sound, parts: [part] }));
    const difference = Math.max(
      ...Array.from({ length: 25_000 }, (_, index) => {
        const frame = index * 23;
        return Math.abs(whole.right[frame] - stems.reduce((sum, { right }) => sum + (right[frame] ?? 0), 0));
      }),
    );
    expect(peakBetween(whole.right, 0, whole.frames)).toBeGreaterThan(0.05);
    expect(difference).toBeLessThan(1e-4);
    const muted = Object.fromEntries(
      Object.entries(sound.mix.channels).map(([part, channel]) => [part, { ...channel, muted: true }]),
    ) as BandSound['mix']['channels'];
    const none = await render(program, { sound: { ...sound, mix: { master: 0.7, channels: muted } } });
    expect(peakBetween(none.left, 0, none.frames)).toBe(0);
  });

  it('sounds the same wherever its pieces are cut, behind an organ’s turning speaker too', async () => {
    // Two bars are four turns of the speaker at 96 beats a minute, and move where a piece ends by five seconds.
    const program = testProgram('shuffle', {
      chart: testChart('eight-v-second'),
      tempo: 96,
      plan: { choruses: 1, countInBars: 2, ending: 'stop' },
    });
    const [countIn, ...music] = allSections(program);
    const changes = { sound: { ...soundFor(program, 0.15), chords: 'organ' }, parts: ['chords'] } as const;
    const later = await render(program, { ...changes, sections: [countIn, ...music] });
    const alone = await render(program, { ...changes, sections: music });
    const [from, count] = [5 * RATE, 17 * RATE];
    const level = (samples: Float32Array): number =>
      Math.max(...blockLevels(samples.subarray(0, count), RATE));
    expect(level(alone.left)).toBeGreaterThan(0.002);
    const difference = alone.left.map((sample, i) => sample - (later.left[from + i] ?? 0));
    expect(level(difference) / level(alone.left)).toBeLessThan(1e-4);
  });

  soakIt('needs no more memory for long music, and counts nothing missing', async () => {
    const { longestChunk, frames, counts } = await render(short('jump', 2));
    expect(longestChunk).toBeLessThanOrEqual(30 * RATE);
    expect(frames / RATE).toBeGreaterThan(31);
    expect(counts).toMatchObject({ substituted: 0, missing: 0, failed: [] });
  });

  it.each(FEELS_HEARD)(
    'plays %s at −18 LUFS, never above −1 dBTP, wide, and with the balance of octaves that other players have',
    async (feel) => {
      const { left, right, counts } = await render(short(feel));
      const loudness = integratedLoudness([left, right], RATE);
      loudnesses.push(loudness);
      expect(Math.abs(loudness + 18)).toBeLessThan(1);
      expect(truePeak([left, right])).toBeLessThanOrEqual(-1);
      expect(counts.failed).toEqual([]);
      // Chords once stood out around 250 and 500 Hz, over a bass too soft: 4.6 dB in train.
      octavesOf([left, right]).forEach((level, i) => {
        expect(Math.abs(level - MIX_SPECTRA[feel][i])).toBeLessThan(3);
      });
      // As wide as it is meant to be: a room 16 dB too soft and a narrow kit once left −12 to −16.
      const width = widthAbove([left, right], 300, RATE);
      expect(width).toBeGreaterThan(-8);
      expect(width).toBeLessThan(-5);
      const mono = left.map((sample, i) => (sample + right[i]) / 2);
      expect(loudness - integratedLoudness([mono, mono], RATE)).toBeLessThan(1.5);
    },
  );

  it('plays these feels within 1.5 LU of each other', () => {
    expect(loudnesses).toHaveLength(FEELS_HEARD.length);
    expect(Math.max(...loudnesses) - Math.min(...loudnesses)).toBeLessThan(1.5);
  });

  it('stays below −1 dBTP with every fader up, by two meters', async () => {
    const program = short('jump');
    const loud = (channel: BandSound['mix']['channels']['drums']) => ({ ...channel, gain: 1, muted: false });
    const { drums, bass, chords, second, lead, click } = RESTING_SOUND.mix.channels;
    const channels = {
      drums: loud(drums),
      bass: loud(bass),
      chords: loud(chords),
      second: loud(second),
      lead: loud(lead),
      click: loud(click),
    };
    const { left, right } = await render(program, {
      sound: { ...soundFor(program), mix: { master: 1, channels } },
    });
    expect(truePeak([left, right])).toBeLessThanOrEqual(-1);
    expect((await loadOtherMeter()).truePeak(RATE, left, right)).toBeLessThanOrEqual(-1);
  });
});
