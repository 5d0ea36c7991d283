import { Component, type ReactNode } from 'react';
import { messageOf } from '../../core/theory/thrown';
import { FetchingTrouble } from '../state/fetched';
import { KeptText } from './kept-text';

interface Props {
  /** What stands inside, as a sentence about it begins: `The map`. */
  readonly part: string;
  readonly children: ReactNode;
  /** A text of the player's that is shown inside, to be copied when the inside fails. */
  readonly text?: string | undefined;
  /** More ways out, as buttons. */
  readonly actions?: ReactNode;
  /** When this changes, what failed is tried again. */
  readonly tryAgainOn?: unknown;
  /** Leaves what failed; without it, a button to bring it back stays in its place. */
  readonly onLeave?: (() => void) | undefined;
  /** Told once what stands inside has failed, before it is tried again. */
  readonly onFailed?: (() => void) | undefined;
}

interface State {
  readonly failed: { readonly detail: string; readonly fetching: boolean } | null;
  readonly gone: boolean;
}

const WHOLE: State = { failed: null, gone: false };

/** Keeps a failure inside one part of the page: says so in words and offers to try again or to go on without it. */
export class Boundary extends Component<Props, State> {
  override state = WHOLE;

  static getDerivedStateFromError(error: unknown): Partial<State> {
    const detail = messageOf(error);
    return { failed: { detail, fetching: error instanceof FetchingTrouble } };
  }

  override componentDidCatch(): void {
    this.props.onFailed?.();
  }

  override componentDidUpdate(before: Props): void {
    if (this.state.failed !== null && before.tryAgainOn !== this.props.tryAgainOn)
      this.setState({ failed: null });
  }

  override render(): ReactNode {
    const { part, children, text, actions, onLeave } = this.props;
    const { failed, gone } = this.state;
    if (gone) {
      return (
        <p className="failed-gone">
          <button type="button" className="tool" onClick={() => this.setState(WHOLE)}>
            {part}: show it again
          </button>
        </p>
      );
    }
    if (failed === null) return children;
    return (
      <section className="failed" role="alert">
        {failed.fetching ? (
          <p>
            <strong>{part} could not be fetched.</strong> See that the program that serves this page runs and
            can be reached, then try again. The rest of the page goes on, and what you made is kept.
          </p>
        ) : (
          <p>
            <strong>{part} cannot be shown.</strong> That is a fault of this program. The rest of the page
            goes on, and what you made is kept.
          </p>
        )}
        <p className="hint">What went wrong: {failed.detail}</p>
        {text !== undefined && <KeptText label={`${part}: its text`} text={text} />}
        <div className="failed-ways">
          {actions}
          <button type="button" className="tool" onClick={() => this.setState({ failed: null })}>
            Try again
          </button>
          <button type="button" className="tool" onClick={onLeave ?? (() => this.setState({ gone: true }))}>
            Go on without it
          </button>
        </div>
      </section>
    );
  }
}
