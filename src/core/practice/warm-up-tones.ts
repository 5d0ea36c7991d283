import { homeChord } from '../chart/home-chord';
import type { Sound } from '../harp/harp';
import { isInReach, NATURAL_NOTES, registerOf } from '../harp/reach';
import { tab } from '../harp/tab';
import { asPitchClass } from '../theory/units';
import type { Cue, WarmUpSpec, WarmUpStep } from './warm-up-step';
import { barSeconds, chartSeconds, heldChords } from './warm-up-time';

/** Seconds a tone is held, a comfortable breath, and how long the step is to be. */
const HOLD_SECONDS = 6;
const STEP_SECONDS = 80;

/**
 * Natural notes for long tones: those of the home chord in the lower octaves, or any there where it has none. Sounds
 * switched off are left out unless nothing else is left.
 */
export const easyTones = (spec: WarmUpSpec): readonly Sound[] => {
  const { harp, technique } = spec;
  const low = harp.sounds.filter(
    (sound) => isInReach(sound, NATURAL_NOTES) && registerOf(sound.pitch, harp) !== 'high',
  );
  const on = low.filter((sound) => isInReach(sound, technique));
  const naturals = on.length > 0 ? on : low;
  const home = new Set<number>(homeChord(spec.chart).tones.map(({ pitchClass }) => pitchClass));
  const inChord = naturals.filter(({ pitch }) => home.has(asPitchClass(Math.round(pitch))));
  return inChord.length > 0 ? inChord : naturals;
};

/** Long single notes over the home chord, each followed by a rest as long as half of it. */
export const longToneStep = (spec: WarmUpSpec): WarmUpStep => {
  const { chart, tempo, tabStyle } = spec;
  const bar = barSeconds(chart.meter, tempo);
  const hold = Math.max(1, Math.round(HOLD_SECONDS / bar));
  const rest = Math.max(1, Math.round(hold / 2));
  const tones = easyTones(spec);
  const count = Math.max(1, Math.round(STEP_SECONDS / ((hold + rest) * bar)));
  const cues = Array.from({ length: count }, (_, i): readonly Cue[] => {
    const sound = tones[i % tones.length];
    const start = i * (hold + rest);
    const held = sound === undefined ? 'any single note' : tab(sound, tabStyle);
    return [
      { bar: start, text: `Hold ${held}`, word: 'Hold', sound: sound ?? null },
      { bar: start + hold, text: 'Breathe', word: 'Breathe', sound: null },
    ];
  }).flat();
  const bars = Array.from({ length: count * (hold + rest) }, () => homeChord(spec.chart));
  const held = heldChords(chart, 'Long tones', bars);
  return {
    title: 'Long tones',
    instruction: 'Hold each note softly and evenly for as long as it stands here, then breathe.',
    band: { chart: held, passes: 1, sounding: 'band' },
    tempo,
    seconds: chartSeconds(held, 1, tempo),
    cues,
    lead: [],
  };
};
