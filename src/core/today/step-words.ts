import { degreeText, type NoteNames } from '../theory/note-names';
import type { Exercise, PracticeItem } from './practice-item';
import type { TodayStep } from './today-plan';

const exerciseWords = (exercise: Exercise): string => {
  switch (exercise.kind) {
    case 'bend':
      return 'Play the note, let it sink to the bend and hold it there. Softly: it comes from the mouth, not from more air.';
    case 'tone':
      return `Play what you like, and land on the ${degreeText(exercise.degree)} whenever ${degreeText(exercise.roman)} comes.`;
    case 'phrase':
      return 'Hear the call, and give it back the same.';
    case 'song':
      return `Play it at ${exercise.tempo}. After each chorus say how it was, or let the ear do it.`;
    default:
      return 'The scale is on the map. Go up and down through it, then make short phrases of it.';
  }
};

/** An item's name: a harp in it by the names of the page, what the player has named as it is. */
const itemName = ({ name, exercise }: PracticeItem, names: NoteNames): string =>
  exercise.kind === 'bend' ? names.key(name) : name;

/** A step in a few words: what it is, and what to do. */
export const stepWords = (
  step: TodayStep,
  names: NoteNames,
): { readonly title: string; readonly words: string } => {
  switch (step.kind) {
    case 'warm-up':
      return { title: 'Warm-up', words: 'Breath, long tones and what your lips need to wake up.' };
    case 'rest':
      return { title: 'Rest', words: 'Put the harp down, let your jaw go, breathe as usual.' };
    case 'joy':
      return { title: 'For joy', words: 'A song for its own sake. Nothing is asked.' };
    default:
      return {
        title: `${step.kind === 'new' ? 'New: ' : ''}${itemName(step.item, names)}`,
        words: exerciseWords(step.item.exercise),
      };
  }
};
