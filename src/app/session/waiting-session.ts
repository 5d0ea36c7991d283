import type { StoreApi } from 'zustand/vanilla';
import type { EarLive } from '../ear/ear-live';
import type { Notice } from '../keeping/notice';
import { createNoticeBoard } from '../keeping/notice-board';
import type { PageCommands, PageSession } from './page-session';
import type { Session } from './session';
import type { SessionState } from './session-state';

/** A session whose state is there at once, and what carries its commands out as soon as that has been fetched. */
export interface WaitingSession extends PageSession {
  /** Fetches it unless it is here or on its way. Rejects when it cannot be had, which is said; asked again, it tries again. */
  arrive(): Promise<Session>;
}

type Ask = (commands: Session['commands']) => unknown;

const SILENCE: EarLive = { sounding: () => null, frame: () => null, level: () => null, trace: () => [] };

const UNFETCHED: Notice = {
  id: 'unfetched',
  tone: 'trouble',
  text: 'The part of the program that plays and keeps what you choose could not be fetched, so that nothing you press is carried out yet. It is tried again by itself, and what you pressed is carried out then: see that the program that serves this page still runs.',
};

const isFunction = (value: unknown): value is (...given: readonly unknown[]) => unknown =>
  typeof value === 'function';

/** Commands by whatever name: each is the same function at every reading, and calls the command of its name. */
const createCommands = (carryOut: (ask: Ask) => unknown): PageCommands => {
  const known = new Map<PropertyKey, (...given: readonly unknown[]) => unknown>();
  const commandOf = (name: PropertyKey) => {
    const before = known.get(name);
    if (before !== undefined) return before;
    const command = (...given: readonly unknown[]): unknown =>
      carryOut((commands) => {
        const found: unknown = Reflect.get(commands, name);
        if (!isFunction(found)) throw new TypeError(`No command is called ${String(name)}`);
        return found(...given);
      });
    known.set(name, command);
    return command;
  };
  // The session has a command of every name of its type.
  return new Proxy({} as PageCommands, { get: (_, name) => commandOf(name) });
};

/**
 * Stands for a session until it is here: what is asked of it before is carried out in order when it comes.
 * @param load fetches what carries commands out, and joins it to the state
 */
export const createWaitingSession = (
  store: StoreApi<SessionState>,
  load: () => Promise<Session>,
): WaitingSession => {
  let here: Session | null = null;
  let coming: Promise<Session> | null = null;
  const waiting: (() => void)[] = [];
  const carryOut = (ask: Ask): unknown => {
    if (here !== null) return ask(here.commands);
    return new Promise((resolve, reject) => {
      waiting.push(() => {
        try {
          resolve(here && ask(here.commands));
        } catch (error) {
          reject(error);
        }
      });
    });
  };
  const board = createNoticeBoard(store);
  const take = (session: Session): Session => {
    here = session;
    board.dismiss(UNFETCHED.id);
    for (const go of waiting.splice(0)) go();
    return session;
  };
  const forget = (error: unknown): never => {
    coming = null;
    board.post(UNFETCHED);
    throw error;
  };
  return {
    store,
    commands: createCommands(carryOut),
    live: {
      playhead: () => here?.live.playhead() ?? null,
      get ear() {
        return here?.live.ear ?? SILENCE;
      },
    },
    arrive: () => {
      coming ??= load().then(take, forget);
      return coming;
    },
  };
};
