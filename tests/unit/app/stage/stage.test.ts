import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createFakeScreen } from '../../../helpers/fake-screen';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const open = () => {
  const screen = createFakeScreen();
  return {
    screen,
    ...openSession(
      createKeptValues(() => createFakeStorage(), new EventTarget()),
      { screen },
    ),
  };
};

describe('the view for playing', () => {
  it('opens and leaves, in the full screen, with the screen awake', () => {
    const { screen, commands, state } = open();
    commands.toggleStage();
    expect(state().stage.open).toBe(true);
    commands.toggleStage();
    expect(state().stage.open).toBe(false);
    expect(screen.asked.toSorted()).toEqual(['awake', 'full', 'may sleep', 'window']);
  });

  it('is left with the full screen', () => {
    const { screen, commands, state } = open();
    commands.toggleStage();
    screen.leaveFullScreen();
    expect(state().stage.open).toBe(false);
  });

  it('keeps the screen awake while the band runs, whether the view is open or not', async () => {
    const { screen, commands } = open();
    await commands.play();
    commands.toggleStage();
    commands.leaveStage();
    expect(screen.asked).toEqual(['awake', 'full', 'window']);
    commands.stop();
    expect(screen.asked.at(-1)).toBe('may sleep');
  });

  it('keeps it awake through the rests of a warm-up', () => {
    const { screen, commands, band } = open();
    commands.startWarmUp();
    expect([screen.asked, band.status().kind]).toEqual([['awake'], 'asleep']);
    commands.endWarmUp();
    expect(screen.asked.at(-1)).toBe('may sleep');
  });

  it('says once that the screen may go dark', () => {
    const { screen, commands, state, notices } = open();
    commands.toggleStage();
    screen.report('refused');
    expect(notices()).toMatch(/may go dark.*does not let the page keep it on.*display settings/);
    expect(state().stage.waking).toBe('refused');
    commands.dismiss('screen');
    screen.report('off');
    screen.report('refused');
    expect(notices()).toBe('');
  });

  it('takes the sentence back when the screen is kept awake after all', () => {
    const { screen, commands, notices } = open();
    commands.toggleStage();
    screen.report('missing');
    expect(notices()).toMatch(/may go dark.*this browser cannot keep it on/);
    screen.report('held');
    expect(notices()).toBe('');
  });
});
