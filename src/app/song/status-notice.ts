import type { BandStatus } from '../../audio/band/band';
import type { Notice } from '../keeping/notice';

const FAILURES = {
  'no web audio':
    'This browser cannot make sound in a page (it has no Web Audio). The chart and the harp map work; for the band, open Combshed in a current browser.',
  load: 'The band could not be loaded. Press Play to try again; if that does not help, see that the program that serves this page still runs, and open Combshed in another tab. Your choices are kept.',
  device:
    'The sound output could not be opened. Check that a speaker or headphones are connected and not taken by another program, then press Play again.',
} as const;

/** For a band that plays on without the worker that computes its sounds. */
export const MAKESHIFT_NOTICE: Notice = {
  id: 'band-makeshift',
  tone: 'note',
  text: 'The helper that computes the band’s sounds could not be loaded, so the page computes them itself: the band plays, but the page may stick for moments. The next time you open Combshed it is tried again.',
};

/** What the player should know about the band's state, or `null` when all is well. */
export const statusNotice = (status: BandStatus): Notice | null => {
  switch (status.kind) {
    case 'blocked':
      return {
        id: 'band',
        tone: 'note',
        text: 'The browser keeps the page silent until you click or press a key in it: press Play once more. If that does not help, see that a loudspeaker or headphones are connected: some browsers stay silent without.',
      };
    case 'interrupted':
      return {
        id: 'band',
        tone: 'note',
        text: 'The sound was interrupted (a call, another program, a device unplugged). It goes on by itself when the device is back; otherwise press Play or the space bar. Your place is kept.',
      };
    case 'failed':
      return { id: 'band', tone: 'trouble', text: FAILURES[status.why] };
    default:
      return null;
  }
};
