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
import { type ReactElement, useState } from 'react';
import type { Session } from '../app/session';
import { BandSheet } from './band-sheet';
import { BandTurnSign } from './band-turn-sign';
import { CareSheet } from './care-sheet';
import { ChartSheet } from './chart-sheet';
import { ChartView } from './chart-view';
import { CountInSign } from './count-in-sign';
import { HarpMap } from './harp-map';
import { HarpSheet } from './harp-sheet';
import { HolesTogether } from './holes-together';
import { Masthead, type SheetId } from './masthead';
import { MixerSheet } from './mixer-sheet';
import { NextHarpSign } from './next-harp-sign';
import { Notices } from './notices';
import { PracticeProvider } from './practice-context';
import { PractiseSheet } from './practise-sheet';
import { PrintView } from './print-view';
import { SessionProvider, useSelected } from './session-context';
import { SongSheet } from './song-sheet';
import { TakeAwaySheet } from './take-away-sheet';
import { TransportBar } from './transport-bar';
import { TurnSign } from './turn-sign';
import { useKeys } from './use-keys';
import { useLook } from './use-look';
import { useNarrow } from './use-narrow';
import { WarmUpSign } from './warm-up-sign';
import { WhatFits } from './what-fits';

type OpenSheet = SheetId | 'song';

const SHEETS: Readonly<Record<OpenSheet, (props: { readonly onClose: () => void }) => ReactElement>> = {
  song: SongSheet,
  harp: HarpSheet,
  chart: ChartSheet,
  practise: PractiseSheet,
  band: BandSheet,
  mixer: MixerSheet,
  'take-away': TakeAwaySheet,
  care: CareSheet,
};

const Page = () => {
  const [open, setOpen] = useState<OpenSheet | null>(null);
  const narrow = useNarrow();
  const drawing = useSelected((state) => state.settings.drawing);
  useLook();
  useKeys();
  const toggle = (id: OpenSheet): void => setOpen((now) => (now === id ? null : id));
  const Open = open === null ? null : SHEETS[open];
  return (
    <div className="page">
      <Masthead open={open === 'song' ? null : open} onOpen={toggle} />
      <Notices />
      <main className="stand" data-drawing={drawing}>
        <div className="form">
          <ChartView />
          <CountInSign />
          <BandTurnSign />
          <NextHarpSign />
          <TurnSign />
          <WarmUpSign />
          <HolesTogether />
        </div>
        <div className="reading">
          <WhatFits />
          <HarpMap />
        </div>
      </main>
      <TransportBar narrow={narrow} onSetUp={() => toggle('song')} />
      {Open !== null && <Open key={open} onClose={() => setOpen(null)} />}
    </div>
  );
};

/** The whole page on a session. */
export const App = ({ session }: { readonly session: Session }) => (
  <SessionProvider session={session}>
    <PracticeProvider>
      <Page />
      <PrintView />
    </PracticeProvider>
  </SessionProvider>
);
