import { describe, expect, it } from 'vitest';
import { openSession } from '../../../helpers/fake-session';
import { createFakeTabs } from '../../../helpers/fake-tabs';

const open = () => openSession(createFakeTabs().open());

describe('what playing would need', () => {
  it('is computed ahead once the page rests, and is what play then asks for', async () => {
    const { session, band, commands } = open();
    expect(band.prepared).toEqual([]);
    session.prepare();
    await commands.play();
    expect(band.prepared).toHaveLength(1);
    expect(band.prepared[0]).toEqual({ program: band.programs[0], sound: band.sounds.at(-1), fromBar: 0 });
  });

  it('follows a choice made while the band rests, when no other follows at once', () => {
    const { session, band, commands, pass, state } = open();
    session.prepare();
    commands.typeTempo('90');
    commands.typeTempo('91');
    expect(band.prepared).toHaveLength(1);
    pass();
    expect(band.prepared.map(({ program }) => program.tempo).at(-1)).toBe(state().settings.tempo);
    expect(band.prepared).toHaveLength(2);
  });

  it('is left alone while the band plays, and before the page has rested', async () => {
    const { session, band, commands, pass } = open();
    commands.typeTempo('90');
    pass();
    expect(band.prepared).toEqual([]);
    await commands.play();
    session.prepare();
    commands.typeTempo('92');
    pass();
    expect(band.prepared).toEqual([]);
  });
});
