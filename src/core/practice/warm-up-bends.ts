import { barTicks } from '../chart/build-chart';
import { homeChord } from '../chart/home-chord';
import type { Sound } from '../harp/harp';
import { isInReach } from '../harp/reach';
import { tab } from '../harp/tab';
import { leadNotes } from '../players/lead';
import type { NoteEvent } from '../score/score';
import type { Chord } from '../theory/chord';
import { chordOf } from '../theory/chords';
import { createRandom, seedFrom } from '../theory/random';
import { plainName } from '../theory/spelling';
import { asPitchClass, asTicks } from '../theory/units';
import type { Cue, WarmUpSpec, WarmUpStep } from './warm-up-step';
import { barSeconds, chartSeconds, heldChords } from './warm-up-time';
import { easyTones } from './warm-up-tones';

/** The band shows the note, the player answers, then both are silent for a breath. */
const TURN_BARS = 3;
/** Time for the twelve bends of a standard harp at the slowest tempo. */
const STEP_SECONDS = { least: 60, most: 175 } as const;

/** A sound with the chord that is held under it. */
interface Held {
  readonly sound: Sound;
  readonly chord: Chord;
}

/** The first chord of the song that holds the note; otherwise a dominant seventh on it. */
const chordUnder = (sound: Sound, { chart }: WarmUpSpec): Chord => {
  const pitchClass = asPitchClass(Math.round(sound.pitch));
  const chords = chart.bars.flatMap((bar) => bar.chords.map(({ chord }) => chord));
  const found = chords.find(({ tones }) => tones.some((tone) => tone.pitchClass === pitchClass));
  return found ?? chordOf({ root: plainName(pitchClass, chart.tonic), quality: '7' });
};

/** Every bend in reach, draw bends first, shallow before deep; where there is none, easy natural notes. */
const targetsOf = (spec: WarmUpSpec): readonly Held[] => {
  const bends =
    spec.bends ??
    spec.harp.sounds.filter((sound) => sound.technique === 'bend' && isInReach(sound, spec.technique));
  const inOrder = bends.toSorted(
    (a, b) => b.breath.localeCompare(a.breath) || a.hole - b.hole || a.bend - b.bend,
  );
  return inOrder.length > 0
    ? inOrder.map((sound) => ({ sound, chord: chordUnder(sound, spec) }))
    : easyTones(spec).map((sound) => ({ sound, chord: homeChord(spec.chart) }));
};

/**
 * All targets, over again while the step would be too short; of more than there is time for, as many in a row as fit,
 * from a place that changes with the seed.
 */
const turnsFor = (
  targets: readonly Held[],
  turnSeconds: number,
  { seed, bendSeconds = STEP_SECONDS }: WarmUpSpec,
): readonly Held[] => {
  const most = Math.max(1, Math.floor(bendSeconds.most / turnSeconds));
  const least = Math.min(most, Math.ceil(bendSeconds.least / turnSeconds));
  if (targets.length > most) {
    const from = Math.floor(createRandom(seedFrom(seed, 'bends'))() * targets.length);
    return [...targets.slice(from), ...targets.slice(0, from)].slice(0, most);
  }
  const rounds = Math.max(1, Math.ceil(least / targets.length));
  return Array.from({ length: rounds }, () => targets)
    .flat()
    .slice(0, Math.max(least, targets.length));
};

const leadFor = (turns: readonly Held[], bar: number): readonly NoteEvent[] =>
  leadNotes(turns.map(({ sound }, i) => ({ at: asTicks(i * TURN_BARS * bar), length: asTicks(bar), sound })));

/** Each bend against a held chord that it belongs to: hear it, play it, rest. */
export const bendStep = (spec: WarmUpSpec): WarmUpStep => {
  const { chart, tempo, tabStyle } = spec;
  const turns = turnsFor(targetsOf(spec), TURN_BARS * barSeconds(chart.meter, tempo), spec);
  const bends = turns.some(({ sound }) => sound.technique === 'bend');
  const chords = turns.flatMap(({ chord }) => Array.from({ length: TURN_BARS }, () => chord));
  const held = heldChords(
    chart,
    bends ? 'Bends' : 'Soft starts',
    chords.length > 0 ? chords : [homeChord(spec.chart)],
  );
  const cues = turns.flatMap(({ sound }, i): readonly Cue[] => [
    { bar: i * TURN_BARS, text: `Listen: ${tab(sound, tabStyle)}`, word: 'Listen', sound },
    { bar: i * TURN_BARS + 1, text: `Your turn: ${tab(sound, tabStyle)}`, word: 'Your turn', sound },
    { bar: i * TURN_BARS + 2, text: 'Breathe', word: 'Breathe', sound: null },
  ]);
  return {
    title: bends ? 'Bends' : 'Soft starts',
    instruction: bends
      ? 'Hear the bend over its chord, then play it and let it settle. If it does not come, leave it.'
      : 'Hear the note, then start it as softly as you can and let it grow.',
    band: { chart: held, passes: 1, sounding: 'band' },
    tempo,
    seconds: chartSeconds(held, 1, tempo),
    cues,
    lead: leadFor(turns, barTicks(chart.meter)),
  };
};
