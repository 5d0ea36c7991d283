import type { Harp } from '../harp/harp';
import { soundId, type TabStyle, tab } from '../harp/tab';
import { onHarp } from '../phrase/phrase';
import type { PhraseReading } from '../phrase/read-phrase';
import type { Trading } from '../practice/trading';

/** What typed calls are looked at against. */
export interface CallContext {
  readonly harp: Harp;
  readonly tabStyle: TabStyle;
  /** The calls laid over a chorus, or null when the player does not trade. */
  readonly trading: Trading | null;
}

const missingSentences = ({ phrase }: PhraseReading, { harp, tabStyle }: CallContext): readonly string[] => {
  const { missing } = onHarp(phrase, harp);
  const sounds = phrase.notes.flatMap((note) => note.sounds);
  const words = missing.flatMap((id) => {
    const sound = sounds.find((each) => soundId(each) === id);
    return sound === undefined ? [] : [tab(sound, tabStyle)];
  });
  if (words.length === 0) return [];
  return [
    `The harp in hand does not have ${words.join(', ')}; ${words.length === 1 ? 'it stays' : 'they stay'} silent.`,
  ];
};

/**
 * What to know about each typed call, in its order, beside what could not be read: sounds the harp in hand does not
 * have, an end that is cut off because an answer needs its room, a call there is no line for. Plain sentences.
 */
export const callRemarks = (
  readings: readonly PhraseReading[],
  context: CallContext,
): readonly (readonly string[])[] => {
  const calls = context.trading?.calls ?? [];
  const played = readings.filter(({ phrase }) => phrase.notes.length > 0);
  return readings.map((reading) => {
    const index = played.indexOf(reading);
    if (index < 0) return [];
    const call = calls[index];
    const cut =
      call?.cut === true
        ? [`It is too long for its line: it ends after ${call.bars} bars, so that you have room to answer.`]
        : [];
    const unplayed =
      context.trading !== null && call === undefined
        ? [`The chorus has room for ${calls.length} calls; this one is not played.`]
        : [];
    return [...missingSentences(reading, context), ...cut, ...unplayed];
  });
};
