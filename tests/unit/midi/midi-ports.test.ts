import { describe, expect, it } from 'vitest';
import { createMidiPorts } from '../../../src/midi/create-midi-ports';
import { createFakeMidi } from '../../helpers/fake-midi';
import { MIDI_BEHAVIOURS, midiStage } from '../../helpers/midi-contract';

// Web MIDI API (W3C): MIDIPort.state, MIDIPort.connection, MIDIInput.onmidimessage, MIDIOutput.send.
describe('keyboards and instruments', () => {
  it.each(MIDI_BEHAVIOURS)('$does', async ({ act, expected }) => {
    const hardware = createFakeMidi();
    expect(await act(midiStage(createMidiPorts(hardware.ground), hardware))).toEqual(expected);
  });
});
