import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/layout.css';
import './styles/controls.css';
import './styles/transport.css';
import './styles/sheet.css';
import './styles/mixer.css';
import './styles/chart.css';
import './styles/chart-editor.css';
import './styles/fit.css';
import './styles/map.css';
import './styles/print.css';
import './styles/failed.css';
import { useState } from 'react';
import type { Session } from '../app/session';
import { Boundary } from './boundary';
import { Guarded } from './guarded';
import { PANELS, type PanelId, type PartProps, VIEWS } from './page-parts';
import { PracticeProvider } from './practice-context';
import { PrintView } from './print-view';
import { SessionProvider, useSelected } from './session-context';
import { TransportBar } from './transport-bar';
import { useKeys } from './use-keys';
import { useLook } from './use-look';
import { useNarrow } from './use-narrow';

/** The parts of one place, each of which fails alone. */
const Parts = ({ place, ...given }: PartProps & { readonly place: keyof typeof VIEWS }) =>
  VIEWS[place].map(({ title, Show }) => (
    <Guarded key={title} part={title}>
      <Show {...given} />
    </Guarded>
  ));

const Page = () => {
  const [open, setOpen] = useState<PanelId | null>(null);
  const narrow = useNarrow();
  const drawing = useSelected((state) => state.settings.drawing);
  useLook();
  useKeys();
  const onOpen = (id: PanelId): void => setOpen((now) => (now === id ? null : id));
  const close = (): void => setOpen(null);
  const given: PartProps = { open, onOpen, narrow };
  const panel = open === null ? null : PANELS[open];
  return (
    <div className="page">
      <Parts place="head" {...given} />
      <main className="stand" data-drawing={drawing}>
        <div className="form">
          <Parts place="form" {...given} />
        </div>
        <div className="reading">
          <Parts place="reading" {...given} />
        </div>
      </main>
      <TransportBar>
        <Parts place="transport" {...given} />
      </TransportBar>
      {panel !== null && (
        <Boundary key={open} part={panel.title} onLeave={close}>
          <panel.Show onClose={close} />
        </Boundary>
      )}
    </div>
  );
};

/** The whole page on a session. */
export const App = ({ session }: { readonly session: Session }) => (
  <SessionProvider session={session}>
    <PracticeProvider>
      <Page />
      <Guarded part="The paper">
        <PrintView />
      </Guarded>
    </PracticeProvider>
  </SessionProvider>
);
