import type { StoreApi } from 'zustand/vanilla';
import type { Playhead } from '../../core/arranger/playhead';
import type { EarLive } from '../ear/ear-live';
import type { Commands } from './commands';
import type { SessionState } from './session-state';

/** Values that change too often for the store; read them in an animation frame. */
export interface Live {
  playhead(): Playhead | null;
  readonly ear: EarLive;
}

/** A command as the page gives it: what carries it out may still be on its way, so that no answer comes at once. */
type Given<Do> = Do extends (...given: infer Parts) => infer Answer
  ? (...given: Parts) => Answer extends Promise<unknown> ? Answer : void
  : never;

/** What the page can ask for. */
export type PageCommands = { readonly [Name in keyof Commands]: Given<Commands[Name]> };

/** The session as the page sees it: its state is there from the first picture on, its commands are carried out once what does it has been fetched. */
export interface PageSession {
  readonly store: Pick<StoreApi<SessionState>, 'getState' | 'getInitialState' | 'subscribe'>;
  readonly commands: PageCommands;
  readonly live: Live;
}
