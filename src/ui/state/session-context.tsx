import { createContext, type ReactNode, useContext } from 'react';
import { useStore } from 'zustand';
import type { PageSession } from '../../app/session/page-session';
import type { SessionState } from '../../app/session/session-state';

const SessionContext = createContext<PageSession | null>(null);

/** Makes a session known to every component below. */
export const SessionProvider = ({
  session,
  children,
}: {
  readonly session: PageSession;
  readonly children: ReactNode;
}) => <SessionContext value={session}>{children}</SessionContext>;

/** The page's session. Throws where no provider is above. */
export const useSession = (): PageSession => {
  const session = useContext(SessionContext);
  if (session === null) throw new Error('useSession needs a SessionProvider above it');
  return session;
};

/** One value of the session's state; the component renders again only when that value changes. */
export const useSelected = <Value,>(select: (state: SessionState) => Value): Value =>
  useStore(useSession().store, select);
