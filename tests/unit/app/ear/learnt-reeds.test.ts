import { describe, expect, it } from 'vitest';
import type { KnownReeds } from '../../../../src/core/grips/known-reeds';
import { LEARNT_HARPS } from '../../../../src/core/grips/learnt-harp';
import { asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

/** So many reeds heard in eight windows each. */
const knownOf = (count: number): KnownReeds => ({
  common: [0, 1.5],
  colour: [-2],
  reeds: Array.from({ length: count }, (_, i) => ({ id: `${i + 1}B`, levels: [0, -4], windows: [8, 8] })),
});

/** A session that listens, on what was kept before. */
const listening = async (storage = createFakeStorage()) => {
  const opened = openSession(createKeptValues(() => storage, new EventTarget()));
  await opened.commands.listenToMe();
  const reedsNow = () => opened.microphone.choices.at(-1)?.reeds;
  const learn = (count: number): void =>
    opened.microphone.learn({ key: reedsNow()?.key ?? '', known: knownOf(count) });
  return { ...opened, storage, reedsNow, learn };
};

describe('how a harp sounds', () => {
  it('is kept for harp and microphone, and there again at the next visit and when that harp comes back', async () => {
    const { commands, microphone, state, storage, reedsNow, learn } = await listening();
    expect([reedsNow()?.known, state().ear.learnt]).toEqual([null, 0]);
    const asked = microphone.choices.length;
    learn(3);
    // The ear knows it already: it is not begun anew.
    expect([state().ear.learnt, microphone.choices.length]).toEqual([3, asked]);
    commands.choose({ harpKey: asPitchClass(7) });
    expect([reedsNow()?.known, state().ear.learnt]).toEqual([null, 0]);
    commands.choose({ harpKey: asPitchClass(0) });
    expect(reedsNow()?.known).toEqual(knownOf(3));
    const later = await listening(storage);
    expect([later.reedsNow()?.known, later.state().ear.learnt]).toEqual([knownOf(3), 3]);
  });

  it('belongs to the harp it was learnt of, though another is in hand when it is told', async () => {
    const { commands, microphone, reedsNow, state } = await listening();
    const key = reedsNow()?.key ?? '';
    commands.choose({ harpKey: asPitchClass(7) });
    microphone.learn({ key, known: knownOf(2) });
    expect(state().ear.learnt).toBe(0);
    commands.choose({ harpKey: asPitchClass(0) });
    expect(state().ear.learnt).toBe(2);
  });

  it('is forgotten with the calibration, in the ear too, and what comes late is not taken up again', async () => {
    const { commands, microphone, state, reedsNow, learn } = await listening();
    learn(3);
    const key = reedsNow()?.key ?? '';
    commands.forgetCalibration();
    expect([state().ear.learnt, reedsNow()?.known, reedsNow()?.key === key]).toEqual([0, null, false]);
    microphone.learn({ key, known: knownOf(3) });
    expect(state().ear.learnt).toBe(0);
  });

  it('goes into the file of everything and comes out of it, the one that heard more staying', async () => {
    const here = await listening();
    here.learn(3);
    await here.commands.saveEverything();
    const text = new TextDecoder().decode(Uint8Array.from(here.takeAway.files.at(-1)?.bytes ?? []));
    const there = await listening();
    expect(await there.commands.restoreEverything(text, false)).toContain('1 learnt harp added.');
    expect(there.state().ear.learnt).toBe(3);
    there.learn(5);
    expect(await there.commands.restoreEverything(text, false)).toContain('1 learnt harp here already.');
    expect(there.state().ear.learnt).toBe(5);
  });

  it('is kept of so many harps, the first going', async () => {
    const { commands, storage, learn } = await listening();
    for (let i = 0; i <= LEARNT_HARPS; i += 1) {
      commands.choose({ harpKey: asPitchClass(i), harpOctave: -Math.floor(i / 12) });
      learn(1);
    }
    const kept = Array.from({ length: storage.length }, (_, i) => storage.key(i) ?? '').find((name) =>
      name.endsWith('reeds'),
    );
    const things: readonly unknown[] = JSON.parse(storage.getItem(kept ?? '') ?? '[]');
    expect(JSON.stringify(things)).not.toContain('"0 0 ');
    expect(JSON.stringify(things).match(/"known"/g)).toHaveLength(LEARNT_HARPS);
  });
});
