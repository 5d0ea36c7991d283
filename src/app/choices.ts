import type { Tuning } from '../core/harp/harp';
import type { OwnedHarp } from '../core/harp/harp-case';
import { harpKeyFor, positionOf, songKey } from '../core/harp/positions';
import { FEELS } from '../core/score/feels';
import type { FeelId } from '../core/score/style';
import type { Settings } from '../core/settings/settings';
import { asBpm, type PitchClass } from '../core/theory/units';

/** A new song key keeps the position and brings the harp that goes with it. */
export const withSongKey = (settings: Settings, key: PitchClass): Settings => ({
  ...settings,
  harpKey: harpKeyFor(key, settings.position),
});

/** Another harp in hand: the position stays and the song moves, unless the song is pinned; then the position moves. */
export const withHarpKey = (settings: Settings, harpKey: PitchClass): Settings => {
  if (!settings.songPinned) return { ...settings, harpKey };
  const song = songKey(settings.harpKey, settings.position);
  return { ...settings, harpKey, position: positionOf(harpKey, song) };
};

/** Another position on the same harp moves the song; with the song pinned it changes the harp. */
export const withPosition = (settings: Settings, position: number): Settings => {
  if (!settings.songPinned) return { ...settings, position };
  const song = songKey(settings.harpKey, settings.position);
  return { ...settings, position, harpKey: harpKeyFor(song, position) };
};

/** Other reeds: cents and valves were those of the old ones, so they go. */
export const withTuning = (settings: Settings, { id, name, blow, draw }: Tuning): Settings => ({
  ...settings,
  tuning: { id, name, blow, draw },
  intonation: typeof settings.intonation === 'string' ? settings.intonation : 'equal',
  valved: settings.valved.filter((hole) => hole <= blow.length),
});

/** A harp from the case, with its reeds, range, valves and reference pitch. */
export const withHarp = (settings: Settings, harp: OwnedHarp): Settings => ({
  ...withHarpKey(settings, harp.key),
  tuning: harp.tuning,
  harpOctave: harp.octave,
  intonation: harp.intonation,
  reference: harp.reference,
  valved: harp.valved,
});

/**
 * A feel brings its usual instruments in place of the usual ones of the feel before; those the player chose stay.
 * It brings its usual tempo only where the present one is out of its range.
 */
export const withFeel = (settings: Settings, id: FeelId): Settings => {
  const feel = FEELS[id];
  const { style } = settings;
  const before = FEELS[style.feel];
  const fits = settings.tempo >= feel.tempo.low && settings.tempo <= feel.tempo.high;
  return {
    ...settings,
    tempo: fits ? settings.tempo : asBpm(feel.tempo.usual),
    style: {
      ...style,
      feel: id,
      bass: style.bass === before.bass ? feel.bass : style.bass,
      chords: style.chords === before.chords ? feel.chords : style.chords,
      kit: style.kit === before.kit ? feel.kit : style.kit,
    },
  };
};

/** A repeated range that a form with so many bars does not have goes. */
export const withFittingRepeat = (settings: Settings, bars: number): Settings => {
  const { repeat } = settings.plan;
  if (repeat === null || repeat.to < bars) return settings;
  return { ...settings, plan: { ...settings.plan, repeat: null } };
};

/** Another form: a repeated range belongs to the bars it was marked on, so it goes. */
export const withForm = (settings: Settings, formId: string): Settings => ({
  ...settings,
  formId,
  plan: { ...settings.plan, repeat: null },
});
