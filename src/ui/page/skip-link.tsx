/** The first stop of the Tab key: leads past the head and the chart to Play. */
export const SkipLink = () => (
  <button
    type="button"
    className="skip-link tool"
    onClick={() => document.querySelector<HTMLElement>('.transport .play')?.focus()}
  >
    Skip to Play
  </button>
);
