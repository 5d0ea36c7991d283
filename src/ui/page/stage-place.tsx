import { Activity, type ReactNode, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { Boundary } from '../controls/boundary';
import { useSelected, useSession } from '../state/session-context';
import { Notices } from './notices';

type Fetched = typeof import('../stage/stage');

/** Fetches what Stage is made of; asked again, it is here already. */
export const fetchStage = (): Promise<Fetched> => import('../stage/stage');

/** The button that opens Stage. */
export const StageButton = () => {
  const { commands } = useSession();
  return (
    <button type="button" className="tool stage-button" aria-keyshortcuts="f" onClick={commands.toggleStage}>
      Stage
    </button>
  );
};

const Shown = ({ fetched, failed }: { readonly fetched: Fetched | null; readonly failed: unknown }) => {
  if (failed)
    throw new Error('Its file could not be fetched. See that the program that serves this page still runs.');
  return fetched === null ? null : (
    <fetched.Stage>
      <Notices />
    </fetched.Stage>
  );
};

/** The page, and in its place Stage while that is open: fetched when it is first wanted, the page kept as it was. */
export const StagePlace = ({ children }: { readonly children: ReactNode }) => {
  const { commands } = useSession();
  const open = useSelected((state) => state.stage.open);
  const [fetched, setFetched] = useState<Fetched | null>(null);
  const [failed, setFailed] = useState<unknown>(null);
  const opener = useRef<Element | null>(null);
  useLayoutEffect(() => {
    if (open) opener.current = document.activeElement;
    else if (opener.current instanceof HTMLElement) opener.current.focus();
  }, [open]);
  useEffect(() => {
    if (!open || fetched !== null) return;
    setFailed(null);
    fetchStage().then(setFetched, setFailed);
  }, [open, fetched]);
  return (
    <>
      <Activity mode={open && fetched !== null ? 'hidden' : 'visible'}>{children}</Activity>
      {open && (
        <Boundary part="Stage" tryAgainOn={failed} onLeave={commands.leaveStage}>
          <Shown fetched={fetched} failed={failed} />
        </Boundary>
      )}
    </>
  );
};
