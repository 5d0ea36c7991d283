import type { MidiGround } from './create-midi-ports';

/** The browser's own MIDI: absent in some browsers and on pages that are not secure, whatever the types say. */
export const webMidi = (): MidiGround => ({
  request: 'requestMIDIAccess' in navigator ? () => navigator.requestMIDIAccess() : undefined,
  granted: async () => (await navigator.permissions.query({ name: 'midi' })).state === 'granted',
  now: () => performance.now(),
  onLeaving: (listener) => {
    window.addEventListener('pagehide', listener);
    return () => window.removeEventListener('pagehide', listener);
  },
});
