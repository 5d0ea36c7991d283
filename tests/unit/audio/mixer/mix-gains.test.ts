import { describe, expect, it } from 'vitest';
import { masterGain, partGains } from '../../../../src/audio/mixer/mix-gains';
import type { PartId } from '../../../../src/core/score/score';
import { DEFAULT_MIX } from '../../../../src/core/settings/defaults';
import type { Channel, Mix } from '../../../../src/core/settings/mix';

const rest: Channel = { gain: 0.75, muted: false, solo: false, pan: 0 };
const mixOf = (changes: Partial<Record<PartId, Partial<Channel>>>, master = DEFAULT_MIX.master): Mix => {
  const channel = (part: PartId): Channel => ({ ...rest, ...changes[part] });
  const channels = {
    drums: channel('drums'),
    bass: channel('bass'),
    chords: channel('chords'),
    second: channel('second'),
    lead: channel('lead'),
    click: channel('click'),
  };
  return { channels, master };
};

describe('gains of the parts', () => {
  it.each([
    ['1 at rest', mixOf({}), { drums: 1, bass: 1, chords: 1, second: 1, lead: 1, click: 1 }],
    [
      '0 when muted',
      mixOf({ bass: { muted: true } }),
      { drums: 1, bass: 0, chords: 1, second: 1, lead: 1, click: 1 },
    ],
    ['in proportion to the fader', mixOf({ drums: { gain: 0.375 } }), { drums: 0.5, bass: 1 }],
    [
      '0 for all but a solo and the click',
      mixOf({ bass: { solo: true } }),
      { drums: 0, bass: 1, chords: 0, second: 0, lead: 0, click: 1 },
    ],
    [
      '1 for two solos',
      mixOf({ bass: { solo: true }, drums: { solo: true } }),
      { drums: 1, bass: 1, chords: 0 },
    ],
    ['0 for a muted solo', mixOf({ bass: { solo: true, muted: true } }), { drums: 0, bass: 0, chords: 0 }],
  ])('are %s', (_, mix, gains) => {
    expect(partGains(mix)).toMatchObject(gains);
  });

  it('leave the master at 1 where it rests', () => {
    expect(masterGain(DEFAULT_MIX)).toBe(1);
    expect(masterGain(mixOf({}, 0))).toBe(0);
  });
});
