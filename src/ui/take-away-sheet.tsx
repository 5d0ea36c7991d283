import { Sheet } from './sheet';

/** The song as paper. */
export const TakeAwaySheet = ({ onClose }: { readonly onClose: () => void }) => (
  <Sheet title="Take away" onClose={onClose}>
    <section className="group">
      <h3>Paper</h3>
      <button type="button" className="tool" onClick={() => window.print()}>
        Print
      </button>
    </section>
  </Sheet>
);
