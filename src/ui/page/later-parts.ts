import type { ComponentType } from 'react';
import { BandPanel } from '../panels/band/band-panel';
import { BendsPanel } from '../panels/bends/bends-panel';
import { SetsPanel } from '../panels/book/sets-panel';
import { SongsPanel } from '../panels/book/songs-panel';
import { CarePanel } from '../panels/care/care-panel';
import { ChartPanel } from '../panels/chart/chart-panel';
import { EarPanel } from '../panels/ear/ear-panel';
import { HarpPanel } from '../panels/harp/harp-panel';
import { HelpPanel } from '../panels/help/help-panel';
import { SignsPanel } from '../panels/help/signs-panel';
import { LogPanel } from '../panels/log/log-panel';
import { MidiPanel } from '../panels/midi/midi-panel';
import { MixerPanel } from '../panels/mixer/mixer-panel';
import { PhrasesPanel } from '../panels/phrases/phrases-panel';
import { PlayedPanel } from '../panels/played/played-panel';
import { PractisePanel } from '../panels/practise/practise-panel';
import { SongPanel } from '../panels/song/song-panel';
import { TakeAwayPanel } from '../panels/take-away/take-away-panel';
import { TodayPanel } from '../panels/today/today-panel';
import type { PanelId, PanelProps } from './entries';

/** What the page is not first drawn with: every panel, the paper, and the signs of what has not begun. One file, so that one fetch brings them all. */
export { BandTurnSign } from '../chart/band-turn-sign';
export { ChorusMarks } from '../chart/chorus-marks';
export { CountInSign } from '../chart/count-in-sign';
export { NextHarpSign } from '../chart/next-harp-sign';
export { SetSign } from '../chart/set-sign';
export { TodaySign } from '../chart/today-sign';
export { TradeResult } from '../chart/trade-result';
export { TurnSign } from '../chart/turn-sign';
export { WarmUpSign } from '../chart/warm-up-sign';
export { ChorusSign } from '../ear/chorus-sign';
export { Paper } from '../print/paper';
export { Announcer } from './announcer';
export { Tour } from './tour';

/** The panels of `ENTRIES`. */
export const PANELS: Readonly<Record<PanelId, ComponentType<PanelProps>>> = {
  song: SongPanel,
  chart: ChartPanel,
  harp: HarpPanel,
  band: BandPanel,
  mixer: MixerPanel,
  today: TodayPanel,
  midi: MidiPanel,
  practise: PractisePanel,
  phrases: PhrasesPanel,
  bends: BendsPanel,
  ear: EarPanel,
  played: PlayedPanel,
  songs: SongsPanel,
  sets: SetsPanel,
  log: LogPanel,
  'take-away': TakeAwayPanel,
  help: HelpPanel,
  signs: SignsPanel,
  care: CarePanel,
};
