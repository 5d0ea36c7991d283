import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './tokens.css';
import './base.css';
import './layout.css';
import '../controls/controls.css';
import '../controls/slider.css';
import '../ear/ear.css';
import './transport.css';
import './contrast.css';
import '../controls/panel.css';
import '../panels/mixer/mixer.css';
import '../panels/midi/midi.css';
import '../chart/chart.css';
import '../chart/signs.css';
import '../panels/bends/bends.css';
import '../panels/book/book.css';
import '../panels/played/played.css';
import '../panels/chart/chart-editor.css';
import '../panels/ear/ear-panel.css';
import '../fit/fit.css';
import '../harp-map/map.css';
import '../harp-map/pill.css';
import '../harp-map/comb.css';
import '../harp-map/keys.css';
import '../harp-map/look-up.css';
import '../print/print.css';
import '../controls/failed.css';
import { memo, type ReactNode, Suspense, useCallback, useDeferredValue, useRef, useState } from 'react';
import type { PageSession } from '../../app/session/page-session';
import { Boundary } from '../controls/boundary';
import { Guarded } from '../controls/guarded';
import { PrintView } from '../print/print-view';
import { PanelPagesContext, PanelRoomContext } from '../state/panel-context';
import { PracticeProvider } from '../state/practice-context';
import { SessionProvider } from '../state/session-context';
import { TourContext } from '../state/tour-context';
import { useHelpKey, useKeys } from '../state/use-keys';
import { useLook } from '../state/use-look';
import { useNarrow } from '../state/use-narrow';
import { entryOf, type PanelId, type PanelPage } from './entries';
import { Announcements, LATER_PARTS, Paper, type PartProps, panelOf, Tour, VIEWS } from './page-parts';
import { SkipLink } from './skip-link';
import { StagePlace } from './stage-place';
import { TransportBar } from './transport-bar';
import { useRoom } from './use-room';

/** The parts of one place, each of which fails alone; drawn anew only where what they are given is another. */
const Parts = memo(({ place, ...given }: PartProps & { readonly place: keyof typeof VIEWS }) =>
  VIEWS[place].map(({ title, Show }) => (
    <Guarded key={title} part={title}>
      <Show {...given} />
    </Guarded>
  )),
);

/** The page with its panel, for which it moves over in tasks of its own. What is in the panel comes when there is room for it. */
const Whole = ({ open, children }: { readonly open: PanelId | null; readonly children: ReactNode }) => {
  const room = useDeferredValue(open);
  const whole = useRef<HTMLDivElement>(null);
  useRoom(whole, room);
  return (
    <div className="whole" ref={whole}>
      <PanelRoomContext value={room === open}>{children}</PanelRoomContext>
    </div>
  );
};

/** In the place of a panel that is still being fetched. */
const Awaited = ({ title, onClose }: { readonly title: string; readonly onClose: () => void }) => (
  <section className="panel" aria-label={title}>
    <header>
      <h2>{title}</h2>
      <button type="button" className="plain" onClick={onClose}>
        Close
      </button>
    </header>
    <p className="panel-body" role="status">
      One moment: this panel is being fetched.
    </p>
  </section>
);

/** The open panel with its neighbours under the same entry. */
const OpenPanel = ({
  open,
  onOpen,
}: {
  readonly open: PanelId;
  readonly onOpen: (id: PanelId | null) => void;
}) => {
  const panel = panelOf(open);
  const close = (): void => onOpen(null);
  const neighbours: readonly PanelPage[] = entryOf(open).pages;
  const onNeighbour = (id: string): void => onOpen(neighbours.find((each) => each.id === id)?.id ?? null);
  return (
    <PanelPagesContext value={{ pages: neighbours, open, onOpen: onNeighbour }}>
      <Boundary key={open} part={panel.title} onLeave={close} onFailed={LATER_PARTS.forgetFailure}>
        <Suspense fallback={<Awaited title={panel.title} onClose={close} />}>
          <panel.Show onClose={close} />
        </Suspense>
      </Boundary>
    </PanelPagesContext>
  );
};

const Page = () => {
  const [open, setOpen] = useState<PanelId | null>(null);
  const [touring, setTouring] = useState(false);
  const narrow = useNarrow();
  useHelpKey(useCallback(() => setOpen('help'), []));
  const startTour = useCallback(() => {
    setOpen(null);
    setTouring(true);
  }, []);
  const leaveTour = useCallback(() => setTouring(false), []);
  const onOpen = useCallback((id: PanelId): void => setOpen((now) => (now === id ? null : id)), []);
  const given: Omit<PartProps, 'open'> = { onOpen, narrow };
  return (
    <Whole open={open}>
      <SkipLink />
      <div className="page">
        <Parts place="head" open={open} {...given} />
        <main className="stand">
          <div className="form">
            <Parts place="form" open={null} {...given} />
          </div>
          <div className="reading">
            <Parts place="reading" open={null} {...given} />
          </div>
        </main>
        <TransportBar>
          <Parts place="transport" open={null} {...given} />
        </TransportBar>
      </div>
      <TourContext value={startTour}>
        {open !== null && <OpenPanel open={open} onOpen={setOpen} />}
      </TourContext>
      {touring && (
        <Boundary part="The tour" onLeave={leaveTour} onFailed={LATER_PARTS.forgetFailure}>
          <Suspense>
            <Tour onLeave={leaveTour} />
          </Suspense>
        </Boundary>
      )}
    </Whole>
  );
};

/** What holds for the page whichever view is open. */
const Habits = () => {
  useLook();
  useKeys();
  return null;
};

/** The whole page on a session. */
export const App = ({ session }: { readonly session: PageSession }) => (
  <SessionProvider session={session}>
    <PracticeProvider>
      <Habits />
      <StagePlace>
        <Page />
      </StagePlace>
      <Guarded part="The announcements">
        <Announcements />
      </Guarded>
      <Guarded part="The paper" onFailed={LATER_PARTS.forgetFailure}>
        <PrintView paper={Paper} />
      </Guarded>
    </PracticeProvider>
  </SessionProvider>
);
