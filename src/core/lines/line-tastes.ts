/** How a line is chosen, in plain words. */
export type LineTaste = 'gentle' | 'even' | 'bold';

/** All tastes with what they mean for the player. */
export const LINE_TASTES: readonly {
  readonly id: LineTaste;
  readonly name: string;
  readonly about: string;
}[] = [
  { id: 'gentle', name: 'Gentle', about: 'Keeps to easy notes and near holes, even if the tune leaps.' },
  { id: 'even', name: 'Even', about: 'Weighs easy playing and a smooth tune alike.' },
  { id: 'bold', name: 'Bold', about: 'Takes bends and overbends wherever they make the smoothest tune.' },
];
