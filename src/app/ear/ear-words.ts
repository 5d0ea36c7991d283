import { listed } from '../../core/theory/wording';
import type { MicInput, MicStatus, MicTrouble } from '../../mic/microphone';
import type { Notice } from '../keeping/notice';

const TROUBLES: Readonly<Record<MicTrouble, string>> = {
  denied:
    'The microphone is not allowed for this page, so it cannot hear you. Allow it in the browser (most have a sign for it beside the address) or in the system’s privacy settings, then press Listen again. Everything else works without it.',
  missing:
    'No microphone was found. Plug one in, or switch it on in the system’s sound settings; then press Listen again.',
  unplugged:
    'The microphone is gone. Plug it in again and listening goes on by itself, or choose another under Practise, Ear.',
  busy: 'The microphone is held by another program, or the system does not hand it out. Close what else uses it (a call, a recorder), then press Listen again.',
  unsupported:
    'This browser gives pages no microphone, or not to a page at this address. Open Combshed in a current browser on this machine.',
  failed:
    'Listening broke off. Press Listen to try again; if that does not help, open Combshed in another tab. Your choices are kept.',
};

const SILENCES = {
  muted:
    'The microphone is switched off outside this page: at the device itself, by a key, or in the system. Switch it on there and listening goes on by itself.',
  suspended:
    'The browser holds the page’s sound up, so nothing can be heard either way. Click anywhere in the page and listening goes on.',
} as const;

/** What is said while the browser asks. */
const ASKING =
  'The browser asks whether this page may use the microphone. What it hears is worked out on this machine, never sent anywhere, and no sound is kept unless you choose to keep it.';

/** What the browser does to the sound although it was asked not to; null where it does nothing. */
const processingWords = ({ processing }: Pick<MicInput, 'processing'>): string | null =>
  processing.length === 0
    ? null
    : `The browser keeps ${listed(processing)} on for this microphone, which can swallow held notes. Switch it off in the system’s sound settings, or use another browser or microphone, where bends are not heard.`;

/** What the player should know about the microphone, or null when all is well. */
export const earNotice = (status: MicStatus): Notice | null => {
  switch (status.kind) {
    case 'asking':
      return { id: 'ear', tone: 'note', text: ASKING };
    case 'silent':
      return { id: 'ear', tone: 'note', text: SILENCES[status.why] };
    case 'trouble':
      return { id: 'ear', tone: 'trouble', text: TROUBLES[status.why] };
    case 'listening': {
      const text = processingWords(status.input);
      return text === null ? null : { id: 'ear', tone: 'note', text };
    }
    case 'off':
      return null;
  }
};
