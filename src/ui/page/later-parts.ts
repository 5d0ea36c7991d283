/** What the page is not first drawn with: every panel, and the paper. One file, so that one fetch brings them all. */
export { BandPanel } from '../panels/band/band-panel';
export { SetsPanel } from '../panels/book/sets-panel';
export { SongsPanel } from '../panels/book/songs-panel';
export { CarePanel } from '../panels/care/care-panel';
export { ChartPanel } from '../panels/chart/chart-panel';
export { HarpPanel } from '../panels/harp/harp-panel';
export { HelpPanel } from '../panels/help/help-panel';
export { SignsPanel } from '../panels/help/signs-panel';
export { MixerPanel } from '../panels/mixer/mixer-panel';
export { PractisePanel } from '../panels/practise/practise-panel';
export { SongPanel } from '../panels/song/song-panel';
export { TakeAwayPanel } from '../panels/take-away/take-away-panel';
export { Paper } from '../print/paper';
export { Tour } from './tour';
