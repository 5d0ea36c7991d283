import type { Band, BandSound } from '../audio/band';
import { temperamentOf } from '../core/harp/intonation';
import type { Program } from '../core/score/program';
import type { Mix } from '../core/settings/mix';
import type { Settings } from '../core/settings/settings';
import { asCents } from '../core/theory/units';
import { leadsOf } from './leads';
import type { SessionState } from './session-state';

const EQUAL = Array.from({ length: 12 }, () => asCents(0));

/** Nobody asks for the click alone in order not to hear it: its mute gives way. */
const audibleMix = ({ mix, plan }: Settings): Mix => {
  if (plan.sounding !== 'click') return mix;
  const click = { ...mix.channels.click, muted: false };
  return { ...mix, channels: { ...mix.channels, click } };
};

/** How the band is to sound. */
export const soundOf = ({ settings, tune, ownSounds }: SessionState): BandSound => {
  const { reference, style, bandFollowsHarp } = settings;
  const parts = settings.ownSounds;
  const opened = ownSounds.file?.opened;
  const offsets = bandFollowsHarp ? (temperamentOf(tune.harp, reference).cents ?? EQUAL) : EQUAL;
  return {
    mix: audibleMix(settings),
    tuning: { reference, offsets },
    bass: style.bass,
    chords: style.chords,
    kit: style.kit,
    ...(opened && parts.length > 0 ? { own: { source: opened.source, parts } } : {}),
  };
};

/** Whether two choices are different music, so that the band must be told. */
export const musicDiffers = (a: Settings, b: Settings): boolean =>
  a.style !== b.style ||
  a.tempo !== b.tempo ||
  a.plan !== b.plan ||
  a.harpKey !== b.harpKey ||
  a.position !== b.position ||
  a.formId !== b.formId ||
  a.line !== b.line ||
  a.trade !== b.trade ||
  a.technique !== b.technique ||
  a.tuning !== b.tuning ||
  a.harpOctave !== b.harpOctave;

/** What the band is to play. */
export const programOf = ({ settings, tune, lastChorus, ownCharts }: SessionState): Program => ({
  leads: leadsOf(settings, ownCharts),
  chart: tune.chart,
  style: settings.style,
  tempo: settings.tempo,
  plan: {
    ...settings.plan,
    choruses: lastChorus === null ? settings.plan.choruses : lastChorus + 1,
  },
});

/** Whether the band is in the middle of a song, interrupted or not. */
export const isUnderWay = (band: Band): boolean =>
  band.status().kind === 'playing' || band.status().kind === 'interrupted';
