import { spokenHole } from '../harp/tab';
import { apartWords } from '../theory/apart-words';
import { capital } from '../theory/wording';
import { type Fault, faultsOf } from './faults';
import type { Judgement, NoteVerdict } from './judge';
import { wayOut } from './way-out';

/** What was judged, as far as words need it. */
export interface JudgeWords {
  readonly judgement: Judgement;
  /** Seconds a beat lasted. */
  readonly beat: number;
  /** True where only the rhythm was given, by taps: the notes are then not spoken of as heard. */
  readonly tapped?: boolean;
}

const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const countWord = (count: number): string => COUNTS[count] ?? String(count);

/** A note by its place in the phrase: `the third note`, `the last note`. */
const placeOf = (note: NoteVerdict, { notes }: Judgement): string => {
  const index = notes.indexOf(note);
  if (notes.length > 2 && index === notes.length - 1) return 'the last note';
  const ordinal = ORDINALS[index];
  return ordinal === undefined ? `note ${index + 1}` : `the ${ordinal} note`;
};

/** The step at which notes stand in a phrase, from two of them on: 4 for every fourth; null where it is uneven. */
const stepOf = (those: readonly NoteVerdict[], { notes }: Judgement): number | null => {
  const places = those.map((note) => notes.indexOf(note));
  const [first = 0, second = 0] = places;
  const step = second - first;
  const even = places.every((place, i) => place === first + i * step);
  // All of that step are among them, so that "every fourth" is true.
  const all = first < step && first + places.length * step >= notes.length;
  return places.length > 1 && step > 1 && even && all ? step : null;
};

const beats = (count: number): string => {
  const rounded = Math.round(2 * count) / 2;
  if (rounded === 0.5) return 'half a beat';
  if (rounded === 1) return 'a beat';
  return `${Number.isInteger(rounded) ? countWord(rounded) : rounded} beats`;
};

const missedWords = (those: readonly NoteVerdict[], judgement: Judgement): string => {
  const [first] = those;
  const step = stepOf(those, judgement);
  if (step !== null)
    return `Every ${ORDINALS[step - 1] ?? `${step}th`} note did not sound: play it slower, until each of them speaks.`;
  if (first !== undefined && those.length === 1)
    return `${capital(placeOf(first, judgement))} did not sound, ${spokenHole(first.asked.sound)}: play that one alone, then the phrase again.`;
  return `${capital(countWord(those.length))} of ${judgement.notes.length} notes did not sound: take the phrase in halves, the first half first.`;
};

const otherWords = (those: readonly NoteVerdict[], judgement: Judgement): string => {
  const [first] = those;
  if (first === undefined) return '';
  const heard = first.played?.sounds[0];
  const instead = heard === undefined ? '' : `${spokenHole(heard)} instead of `;
  const others = those.length === 1 ? '' : `, and ${countWord(those.length - 1)} more`;
  return `${capital(placeOf(first, judgement))} was ${instead === '' ? 'not ' : instead}${spokenHole(first.asked.sound)}${others}: hear it once more, then play up to there.`;
};

const times = (count: number): string =>
  count === 1 ? '' : count === 2 ? ', twice' : `, ${countWord(count)} times`;

const tempoWords = (rate: number): string => {
  if (rate > 0.4 && rate < 0.6)
    return 'It came twice as fast as it was asked: let the drums carry you, each note has twice the time.';
  if (rate > 1.8 && rate < 2.2)
    return 'It came at half the speed it was asked: feel the beat in your foot, and move with it.';
  return rate < 1
    ? 'It ran ahead of the band: wait for each beat before you breathe into the next note.'
    : 'It fell behind the band: keep the breath moving, or take the tempo down.';
};

const strayWords = (kind: 'early' | 'late', those: readonly NoteVerdict[], judgement: Judgement): string => {
  const [first] = those;
  if (first === undefined) return '';
  const which =
    those.length === 1
      ? placeOf(first, judgement)
      : `${countWord(those.length)} notes, ${placeOf(first, judgement)} first,`;
  return kind === 'late'
    ? `${capital(which)} came late: have the mouth there before it is due.`
    : `${capital(which)} came early: give the note before it its whole length.`;
};

const faultWords = (fault: Fault, { judgement, beat }: JudgeWords): string => {
  switch (fault.kind) {
    case 'silent':
      return 'Nothing was heard in your turn: come closer to the microphone, or mark yourself with one key.';
    case 'tempo':
      return tempoWords(fault.rate);
    case 'start':
      return `The rhythm holds; start ${beats(Math.abs(fault.seconds) / beat)} ${fault.seconds < 0 ? 'later' : 'earlier'}.`;
    case 'missed':
      return missedWords(fault.notes, judgement);
    case 'other':
      return otherWords(fault.notes, judgement);
    case 'off':
      return `${capital(spokenHole(fault.sound))} was about ${Math.round(Math.abs(fault.cents) / 5) * 5} cents ${fault.cents > 0 ? 'high' : 'low'}${times(fault.count)}: ${wayOut(fault.sound, fault.cents)}.`;
    case 'extra':
      return fault.grazed
        ? 'Small notes slip in between: leave them out once, and add them again when the plain line stands.'
        : `${capital(countWord(fault.count))} ${fault.count === 1 ? 'note' : 'notes'} more than was asked: play fewer, and let the rests be heard.`;
    case 'lean':
      return `You are about ${apartWords(fault.seconds, { earlier: 'ahead of', later: 'behind' }, 5)} the beat as a rule: ${fault.seconds > 0 ? 'breathe in time to begin on it' : 'lean back and let it come to you'}.`;
    case 'early':
    case 'late':
      return strayWords(fault.kind, fault.notes, judgement);
    case 'short':
      return `${fault.notes.length === 1 && fault.notes[0] !== undefined ? capital(placeOf(fault.notes[0], judgement)) : `${capital(countWord(fault.notes.length))} notes`} stopped early: hold on until the next one.`;
  }
};

/** What was good, said first; empty where the fault is about it. */
const praise = (fault: Fault, { notes }: Judgement): string => {
  const aboutTime = ['tempo', 'early', 'late', 'lean', 'short'].includes(fault.kind);
  const inTune = notes.every(({ pitch }) => pitch === 'right');
  const onTime = notes.every(({ time }) => time === 'on time');
  if (aboutTime && inTune) return 'All the notes are right. ';
  return fault.kind === 'off' && onTime ? 'In time, every note in its place. ' : '';
};

/**
 * What a good teacher would say of a judgement in one breath: what was good, the one thing that helps most, and what
 * to do about it. Null of a phrase played as it was asked.
 */
export const judgeSentence = (words: JudgeWords): string | null => {
  const [fault] = faultsOf(words.judgement);
  if (fault === undefined) return null;
  const said = (words.tapped ? '' : praise(fault, words.judgement)) + faultWords(fault, words);
  return words.tapped
    ? said.replace('notes did not sound', 'notes were not tapped').replace('did not sound', 'was not tapped')
    : said;
};
