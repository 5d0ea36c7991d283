import { useReducer } from 'react';
import type { MeterName } from '../../../core/chart/chart';
import type { Phrase } from '../../../core/phrase/phrase';
import { printPhrase } from '../../../core/phrase/print-phrase';
import { type PhraseReading, readPhrase } from '../../../core/phrase/read-phrase';
import { type History, record, redo, startHistory, undo } from '../../../core/song/history';

type Step = { readonly text: string } | 'undo' | 'redo';

/** Typing that goes on at one end of the text is one step. */
const goesOn = (before: string, after: string): boolean =>
  after.startsWith(before) && after.length === before.length + 1 && !/\s$/.test(after);

const take = (history: History<string>, step: Step): History<string> => {
  if (step === 'undo') return undo(history);
  if (step === 'redo') return redo(history);
  const { past, present } = history;
  return goesOn(present, step.text) && past.length > 0
    ? { past, present: step.text, future: [] }
    : record(history, step.text);
};

/** A phrase as it is written: one text, seen as tab and as a grid, with a way back. */
export interface PhraseDraft {
  readonly text: string;
  readonly reading: PhraseReading;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly type: (text: string) => void;
  readonly draw: (phrase: Phrase) => void;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** The phrase being written, from its text on. */
export const usePhraseDraft = (first: string, meter: MeterName): PhraseDraft => {
  const [history, dispatch] = useReducer(take, first, startHistory<string>);
  const { past, present, future } = history;
  return {
    text: present,
    reading: readPhrase(present, meter),
    canUndo: past.length > 0,
    canRedo: future.length > 0,
    type: (text) => dispatch({ text }),
    draw: (phrase) => dispatch({ text: printPhrase(phrase, 'signs') }),
    undo: () => dispatch('undo'),
    redo: () => dispatch('redo'),
  };
};
