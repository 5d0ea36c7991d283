import { type FeelId, feelOf } from '../feels/feels';
import type { Breath, Tuning } from '../harp/harp';
import type { OwnedHarp } from '../harp/harp-case';
import { harpKeyFor, positionOf, songKey } from '../harp/positions';
import { sameRow } from '../harp/same-harp';
import type { Settings } from '../settings/settings';
import { asBpm, type Bpm, type PitchClass } from '../theory/units';

/** What of harp, position and song key stays when another of them is chosen. */
export type Kept = 'position' | 'song' | 'harp';

/** What the player keeps. */
export const keptOf = ({ songPinned, harpLocked }: Settings): Kept =>
  harpLocked ? 'harp' : songPinned ? 'song' : 'position';

/** The choice of one thing to keep: the others are let go. */
export const keeping = (kept: Kept): Pick<Settings, 'songPinned' | 'harpLocked'> => ({
  songPinned: kept === 'song',
  harpLocked: kept === 'harp',
});

/** A new song key keeps the position and brings the harp that goes with it; a harp that is kept changes position. */
export const withSongKey = (settings: Settings, key: PitchClass): Settings =>
  settings.harpLocked
    ? { ...settings, position: positionOf(settings.harpKey, key) }
    : { ...settings, harpKey: harpKeyFor(key, settings.position) };

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

const withNotes = (settings: Settings, { id, name, blow, draw }: Tuning): Settings => ({
  ...settings,
  tuning: { id, name, blow, draw },
  valved: settings.valved.filter((hole) => hole <= blow.length),
});

/**
 * Another tuning. Cents of the player's own belong to the reeds they were measured on: they stay when every reed
 * keeps its note, as when the tuning in hand is saved under a name, and go with the reeds otherwise.
 */
export const withTuning = (settings: Settings, tuning: Tuning): Settings => {
  const { blow, draw } = settings.tuning;
  const same = sameRow(blow, tuning.blow) && sameRow(draw, tuning.draw);
  return {
    ...withNotes(settings, tuning),
    intonation: same || typeof settings.intonation === 'string' ? settings.intonation : 'equal',
  };
};

/** The harp in hand with some reeds changed or added: those that keep their note keep their own cents. */
export const withReeds = (settings: Settings, tuning: Tuning): Settings => {
  const { intonation } = settings;
  if (typeof intonation === 'string') return withNotes(settings, tuning);
  const row = (breath: Breath): readonly number[] =>
    tuning[breath].map((reed, i) =>
      reed === settings.tuning[breath][i] ? (intonation.cents[breath][i] ?? 0) : 0,
    );
  return {
    ...withNotes(settings, tuning),
    intonation: { cents: { blow: row('blow'), draw: row('draw') } },
  };
};

/** A harp from the case, with its reeds, range, valves and reference pitch. */
export const withHarp = (settings: Settings, harp: OwnedHarp): Settings => ({
  ...withHarpKey(settings, harp.key),
  tuning: harp.tuning,
  harpOctave: harp.octave,
  intonation: harp.intonation,
  reference: harp.reference,
  stretch: harp.stretch,
  valved: harp.valved,
});

/**
 * A feel brings its usual instruments in place of the usual ones of the feel before; those the player chose stay.
 * It brings its usual tempo only where neither the one that was chosen nor the present one is in its range.
 * @param chosen what the player had chosen before feels that have no room for it were walked through.
 */
export const withFeel = (settings: Settings, id: FeelId, chosen: Bpm = settings.tempo): Settings => {
  const feel = feelOf(id);
  const { style } = settings;
  const before = feelOf(style.feel);
  const { low, usual, high } = feel.tempo;
  const tempo = [chosen, settings.tempo].find((each) => each >= low && each <= high) ?? asBpm(usual);
  return {
    ...settings,
    tempo,
    style: {
      ...style,
      feel: id,
      bass: style.bass === before.bass ? feel.bass : style.bass,
      chords: style.chords === before.chords ? feel.chords : style.chords,
      kit: style.kit === before.kit ? feel.kit : style.kit,
    },
  };
};

/** Another form: a repeated range belongs to the bars it was marked on, so it goes. */
export const withForm = (settings: Settings, formId: string): Settings => ({
  ...settings,
  formId,
  plan: { ...settings.plan, repeat: null },
});
