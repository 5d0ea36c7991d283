/** One thing of the page, and what is said of it. */
export interface TourStep {
  readonly title: string;
  readonly text: string;
  /** What it is on the page: the first of these that can be seen. */
  readonly at: readonly string[];
}

/** The tour, in the order of a first practice. */
export const TOUR_STEPS: readonly TourStep[] = [
  {
    title: 'Your harp and your song',
    text: 'Choose the key of the harp you hold or of the song you want, and the other follows.',
    at: ['.transport .field:has(select[data-size="short"])', '.setup-only', '.song-line'],
  },
  {
    title: 'The band',
    text: 'Press Play, or the space bar, and the band counts in and plays until you stop it.',
    at: ['.transport .play'],
  },
  {
    title: 'The form',
    text: 'The dark bar is the one you hear; press any bar to go there.',
    at: ['.chart'],
  },
  {
    title: 'What fits now',
    text: 'Each tone of the chord stands beside the holes that give it: an arrow up is blow, down is draw, a stroke a semitone of bend.',
    at: ['.reading article[aria-label="Now"]', '.reading article'],
  },
  {
    title: 'What comes next',
    text: 'The next chord is there a bar ahead, with the shortest way into it.',
    at: ['.reading article[aria-label="Next"]'],
  },
  {
    title: 'The harp map',
    text: 'Filled sounds belong to the chord you hear; press one to hear it alone.',
    at: ['.map .comb', '.map'],
  },
  {
    title: 'Your technique',
    text: 'Switch on the bends and overbends you have, and the page counts on them.',
    at: ['.map .ticks', '.map'],
  },
  {
    title: 'Your ears and your breath',
    text: 'Keep the band soft enough to hear your breath on the reeds, and rest when you feel light-headed.',
    at: ['.volume'],
  },
  {
    title: 'Stage',
    text: 'With the harp in your mouth, open Stage: only what you need, large, and the screen stays on.',
    at: ['.stage-button'],
  },
  {
    title: 'And more',
    text: 'Charts of your own, the players, practice, files and paper are behind these buttons, and this tour is under Help.',
    at: ['.masthead nav', '.menu-button'],
  },
];
