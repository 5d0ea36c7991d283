import { prettyName } from '../theory/pitch';
import type { Exercise } from './practice-item';
import type { TodayStep } from './today-plan';

const exerciseWords = (exercise: Exercise): string => {
  switch (exercise.kind) {
    case 'bend':
      return 'Play the note, let it sink to the bend and hold it there. Softly: it comes from the mouth, not from more air.';
    case 'tone':
      return `Play what you like, and land on the ${prettyName(exercise.degree)} whenever ${prettyName(exercise.roman)} comes.`;
    case 'phrase':
      return 'Hear the call, and give it back the same.';
    case 'song':
      return `Play it at ${exercise.tempo}. After each chorus say how it was, or let the ear do it.`;
    default:
      return 'The scale is on the map. Go up and down through it, then make short phrases of it.';
  }
};

/** A step in a few words: what it is, and what to do. */
export const stepWords = (step: TodayStep): { readonly title: string; readonly words: string } => {
  switch (step.kind) {
    case 'warm-up':
      return { title: 'Warm-up', words: 'Breath, long tones and what your lips need to wake up.' };
    case 'rest':
      return { title: 'Rest', words: 'Put the harp down, let your jaw go, breathe as usual.' };
    case 'joy':
      return { title: 'For joy', words: 'A song for its own sake. Nothing is asked.' };
    default:
      return {
        title: step.kind === 'new' ? `New: ${step.item.name}` : step.item.name,
        words: exerciseWords(step.item.exercise),
      };
  }
};
