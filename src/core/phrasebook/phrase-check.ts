import { METERS } from '../chart/build-chart';
import type { Harp } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import { spokenHole } from '../harp/tab';
import { COMFORTABLE_BEATS } from '../lines/line-cost';
import { longestBreath } from '../phrase/breath-balance';
import { onHarp, type Phrase } from '../phrase/phrase';
import type { Chord } from '../theory/chord';
import { asPitchClass } from '../theory/units';

/** What a phrase is looked at against. */
export interface PhraseGround {
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  /** The chord it is to end on. */
  readonly home: Chord;
}

/** What a player should know of a phrase before it is played; empty where all is well. Plain sentences. */
export const checkPhrase = (phrase: Phrase, { harp, technique, home }: PhraseGround): readonly string[] => {
  const { notes, missing } = onHarp(phrase, harp);
  const sounds = notes.flatMap((note) => note.sounds);
  const beyond = [...new Set(sounds.filter((each) => !isInReach(each, technique)).map(spokenHole))];
  const last = notes.at(-1)?.sounds ?? [];
  const lands = last.every(({ pitch }) =>
    home.tones.some(({ pitchClass }) => pitchClass === asPitchClass(Math.round(pitch))),
  );
  const breath = longestBreath(phrase) / METERS[phrase.meter].beatTicks;
  return [
    ...(missing.length > 0 ? [`The harp in hand lacks ${missing.join(', ')}.`] : []),
    ...(beyond.length > 0 ? [`It asks for ${beyond.join(', ')}, which you have not switched on.`] : []),
    ...(last.length > 0 && !lands ? ['It ends outside the home chord, so it stays open.'] : []),
    ...(breath > COMFORTABLE_BEATS
      ? [`${Math.round(breath)} beats go by on one breath: put a rest in, so that the air comes back.`]
      : []),
  ];
};
