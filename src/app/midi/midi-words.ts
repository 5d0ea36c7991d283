import type { MidiStatus, MidiTrouble } from '../../midi/midi-ports';
import type { Notice } from '../keeping/notice';

const TROUBLE: Readonly<Record<MidiTrouble, string>> = {
  unsupported:
    'This browser gives pages no keyboards and pedals (MIDI). Other current browsers do, on https addresses and on this machine’s own. Pedals that turn pages work as they are: they send arrow and page keys.',
  denied:
    'The browser was told not to let this page have keyboards and pedals. Allow MIDI beside the address, and try again.',
  failed:
    'The keyboards and pedals of this machine could not be opened. Close other programs that use them, plug them in again, and try again.',
};

/** What to tell of keyboards and pedals; null while all is well. */
export const midiNotice = (status: MidiStatus): Notice | null => {
  if (status.kind === 'trouble') return { id: 'midi', tone: 'trouble', text: TROUBLE[status.why] };
  if (status.kind !== 'open' || status.gone.length === 0) return null;
  const names = status.gone.map((name) => `“${name}”`).join(', ');
  return {
    id: 'midi',
    tone: 'note',
    text: `${names} was unplugged. Nothing else stops, and it is taken up by itself when it is back.`,
  };
};
