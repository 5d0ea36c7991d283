import { describe, expect, it } from 'vitest';
import { asPitchClass } from '../../../../src/core/theory/units';
import type { MicTrouble } from '../../../../src/mic/microphone';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { heardNote } from '../../../helpers/heard-note';
import { soon } from '../../../helpers/soon';

const open = () => {
  const storage = createFakeStorage({});
  return openSession(createKeptValues(() => storage, new EventTarget()));
};

/** A session that listens. */
const listening = async () => {
  const opened = open();
  await opened.commands.listenToMe();
  return opened;
};

describe('listening', () => {
  it('says before the browser asks that nothing is sent, and nothing more once it is allowed', async () => {
    const { commands, notices, state, session } = open();
    const said: string[] = [];
    session.store.subscribe(({ ear }) => {
      if (ear.status.kind === 'asking') said.push(notices());
    });
    await commands.listenToMe();
    expect(said.join()).toMatch(/never sent anywhere/);
    expect(state().ear.status.kind).toBe('listening');
    expect(notices()).toBe('');
  });

  it('borrows the sound of the page for as long as it listens', async () => {
    const { band, commands } = await listening();
    expect(band.asked).toEqual(['lend']);
    commands.stopListening();
    expect(band.asked).toEqual(['lend', 'give back']);
  });

  it('begins and stops with one command', async () => {
    const { commands, state } = await listening();
    commands.toggleListening();
    expect(state().ear.status).toEqual({ kind: 'off' });
    commands.toggleListening();
    await soon(() => expect(state().ear.status.kind).toBe('listening'));
  });

  it('stays off when it is stopped before the sound could be borrowed', async () => {
    const { commands, state, band } = open();
    const begun = commands.listenToMe();
    commands.stopListening();
    await begun;
    expect(state().ear.status).toEqual({ kind: 'off' });
    expect(band.asked).toEqual(['lend', 'give back']);
  });

  it.each<[MicTrouble, RegExp]>([
    ['denied', /not allowed.*Allow it.*press Listen again/],
    ['missing', /No microphone was found\. Plug one in/],
    ['unplugged', /gone\. Plug it in again and listening goes on by itself/],
    ['busy', /held by another program.*Close/],
    ['unsupported', /Open Combshed in a current browser/],
    ['failed', /Press Listen to try again/],
  ])('says what to do when the microphone is %s, and gives the sound back', async (why, sentence) => {
    const { commands, microphone, notices, band } = open();
    microphone.refuse(why);
    await commands.listenToMe();
    expect(notices()).toMatch(sentence);
    expect(band.asked.at(-1)).toBe('give back');
    microphone.refuse(null);
    await commands.listenToMe();
    expect(notices()).toBe('');
  });

  it.each([
    ['muted', /switched off outside this page/],
    ['suspended', /Click anywhere/],
  ] as const)('says it and goes on by itself when the microphone is %s', async (why, sentence) => {
    const { microphone, notices, state, band } = await listening();
    const { status } = state().ear;
    if (status.kind !== 'listening') throw new Error('it does not listen');
    microphone.report({ kind: 'silent', why, input: status.input });
    expect(notices()).toMatch(sentence);
    microphone.report(status);
    expect(notices()).toBe('');
    expect(band.asked).toEqual(['lend']);
  });

  it('lights nothing while nothing comes: what was heard last sounds no longer', async () => {
    const { microphone, state, session } = await listening();
    const { status } = state().ear;
    if (status.kind !== 'listening') throw new Error('it does not listen');
    const note = { ...heardNote(['4D', 0, 1]), to: null };
    microphone.hear({ notes: [note], level: { peak: -20, mean: -30, sent: -120 } });
    expect(session.live.ear.sounding()).toEqual(note);
    microphone.report({ kind: 'silent', why: 'suspended', input: status.input });
    expect(session.live.ear.sounding()).toBeNull();
    expect(state().ear.level).toBeNull();
  });

  it('goes on by itself when a microphone that was lost is plugged in again', async () => {
    const { microphone, state } = await listening();
    const devices = await microphone.devices();
    microphone.plug([]);
    await soon(() => expect(state().ear.devices).toEqual([]));
    microphone.report({ kind: 'trouble', why: 'unplugged', detail: '' });
    microphone.plug(devices);
    await soon(() => expect(state().ear.status.kind).toBe('listening'));
  });

  it('says which processing the browser keeps on', async () => {
    const { microphone, notices, state } = await listening();
    const { status } = state().ear;
    if (status.kind !== 'listening') throw new Error('it does not listen');
    microphone.report({
      ...status,
      input: { ...status.input, processing: ['noise suppression', 'automatic gain'] },
    });
    expect(notices()).toMatch(/keeps noise suppression and automatic gain on/);
  });

  it('takes the chosen microphone at once, and at the next visit', async () => {
    const { microphone, commands, state } = await listening();
    microphone.plug([
      { id: 'a', name: 'A' },
      { id: 'b', name: 'B' },
    ]);
    commands.chooseMicrophone('b');
    await soon(() => expect(microphone.asked.at(-1)).toBe('open b'));
    expect(state().settings.microphone).toBe('b');
  });

  it('listens for the harp in hand, and is not disturbed by other choices', async () => {
    const { microphone, commands, state } = await listening();
    const before = microphone.choices.length;
    commands.choose({ tabStyle: 'letters' });
    expect(microphone.choices).toHaveLength(before);
    commands.chooseHarpKey(asPitchClass(state().settings.harpKey + 7));
    expect(microphone.choices.at(-1)?.harp.key).toBe(state().now.tune.harp.key);
    expect(microphone.choices.length).toBeGreaterThan(1);
  });

  it('judges the level', async () => {
    const { microphone, state } = await listening();
    microphone.hear({ level: { peak: -20, mean: -30, sent: -120 } });
    expect(state().ear.level).toBe('good');
    microphone.hear({ level: { peak: 0, mean: -3, sent: -120 } });
    expect(state().ear.level).toBe('clipping');
  });
});
