import type { MouseEvent } from 'react';

/** What the link leads to. */
export const PLAY_ID = 'play';

const lead = (event: MouseEvent): void => {
  event.preventDefault();
  document.getElementById(PLAY_ID)?.focus();
};

/** The first stop of the Tab key: leads past the head and the chart to Play. */
export const SkipLink = () => (
  <a className="skip-link tool" href={`#${PLAY_ID}`} onClick={lead}>
    Skip to Play
  </a>
);
