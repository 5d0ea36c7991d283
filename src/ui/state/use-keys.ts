import { useEffect } from 'react';
import type { PageCommands, PageSession } from '../../app/session/page-session';
import { asEpochMs } from '../../core/theory/units';
import { useSession } from './session-context';

const BARS_IN_LINE = 4;

const toggleRepeat = (session: PageSession): void => {
  const { settings, now } = session.store.getState();
  const bar = now.formBar ?? 0;
  session.commands.repeat(settings.plan.repeat === null ? { from: bar, to: bar } : null);
};

type Action = (commands: PageCommands, session: PageSession, at: number) => void;

/** What only makes sense while calls are traded. */
const whileTrading =
  (action: Action): Action =>
  (commands, session, at) => {
    if (session.store.getState().settings.trade.on) action(commands, session, at);
  };

const ACTIONS: Readonly<Record<string, Action>> = {
  ' ': (commands) => commands.toggle(),
  ArrowLeft: (commands) => commands.moveBy(-1),
  ArrowRight: (commands) => commands.moveBy(1),
  ArrowUp: (commands) => commands.moveBy(-BARS_IN_LINE),
  ArrowDown: (commands) => commands.moveBy(BARS_IN_LINE),
  '+': (commands) => commands.nudgeTempo(2),
  '=': (commands) => commands.nudgeTempo(2),
  '-': (commands) => commands.nudgeTempo(-2),
  p: (commands) => commands.pause(),
  MediaPlayPause: (commands) => commands.toggle(),
  MediaStop: (commands) => commands.stop(),
  MediaTrackNext: (commands) => commands.nextSong(),
  MediaTrackPrevious: (commands) => commands.previousSong(),
  t: (commands, _, at) => commands.tap(asEpochMs(at)),
  f: (commands) => commands.toggleStage(),
  n: (commands) => commands.nextSong(),
  b: (commands) => commands.previousSong(),
  PageDown: (commands) => commands.nextSong(),
  PageUp: (commands) => commands.previousSong(),
  l: (commands) => commands.toggleListening(),
  r: (_, session) => toggleRepeat(session),
  a: whileTrading((commands) => commands.callAgain()),
  k: whileTrading((commands) => commands.tapAnswer()),
  1: whileTrading((commands) => commands.markAnswer('clean')),
  2: whileTrading((commands) => commands.markAnswer('nearly')),
  3: whileTrading((commands) => commands.markAnswer('again')),
};

/** Buttons of the head, the transport, the chart and Stage: space plays and stops there too, Enter still presses them. */
const SPACE_PLAYS = '.bar, .play, .pause, .mute, .listen, .tempo-row button, .masthead button, .stage button';

/** Page keys turn the songs of a set, as foot pedals send them; where none runs they scroll as ever. */
const scrolls = (event: KeyboardEvent, session: PageSession): boolean =>
  event.key.startsWith('Page') && session.store.getState().book.running === null;

/** Keys meant for a control that has the focus are left to it. */
const belongsToControl = (event: KeyboardEvent): boolean => {
  const { target } = event;
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest('input:not([type="checkbox"]), select, textarea, [data-own-keys]')) return true;
  return (
    event.key === ' ' && !target.closest(SPACE_PLAYS) && target.closest('button, input, summary') !== null
  );
};

/** Some browsers press a button when space is let go: not where space has played already. */
const onKeyUp = (event: KeyboardEvent): void => {
  if (event.key === ' ' && event.target instanceof HTMLElement && event.target.closest(SPACE_PLAYS))
    event.preventDefault();
};

/** Text fields undo what is typed in them. */
const TYPED_IN = 'input:not([type="checkbox"]):not([type="range"]), textarea';

/** Control or Command with Z undoes a choice, with Shift too it makes one again. */
const undoOrRedo = (event: KeyboardEvent, commands: PageCommands): void => {
  const { target } = event;
  if (event.altKey || event.key.toLowerCase() !== 'z') return;
  if (target instanceof HTMLElement && target.closest(TYPED_IN)) return;
  event.preventDefault();
  if (event.shiftKey) commands.redoChoice();
  else commands.undoChoice();
};

/** Calls back when the question mark is pressed where nothing is being typed. */
export const useHelpKey = (onHelp: () => void): void => {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== '?' || event.ctrlKey || event.metaKey || belongsToControl(event)) return;
      event.preventDefault();
      onHelp();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onHelp]);
};

/** The page's keys: space plays and stops, p pauses, arrows move by bar and line, + and − change the tempo, Ctrl+Z undoes. */
export const useKeys = (): void => {
  const session = useSession();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey) undoOrRedo(event, session.commands);
      if (event.ctrlKey || event.metaKey || event.altKey || belongsToControl(event)) return;
      const action = ACTIONS[event.key.length === 1 ? event.key.toLowerCase() : event.key];
      if (!action || scrolls(event, session)) return;
      event.preventDefault();
      action(session.commands, session, event.timeStamp);
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('keyup', onKeyUp);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('keyup', onKeyUp);
    };
  }, [session]);
};
