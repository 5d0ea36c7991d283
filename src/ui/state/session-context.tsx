import { createContext, type ReactNode, useContext } from 'react';
import { useStore } from 'zustand';
import type { Session } from '../../app/session/session';
import type { SessionState } from '../../app/session/session-state';

const SessionContext = createContext<Session | null>(null);

/** Makes a session known to every component below. */
export const SessionProvider = ({
  session,
  children,
}: {
  readonly session: Session;
  readonly children: ReactNode;
}) => <SessionContext value={session}>{children}</SessionContext>;

/** The page's session. Throws where no provider is above. */
export const useSession = (): Session => {
  const session = useContext(SessionContext);
  if (session === null) throw new Error('useSession needs a SessionProvider above it');
  return session;
};

/** One value of the session's state; the component renders again only when that value changes. */
export const useSelected = <Value,>(select: (state: SessionState) => Value): Value =>
  useStore(useSession().store, select);
