import type { Band } from '../../src/audio/band/band';
import type { Program } from '../../src/core/arranger/program';
import type { BandSound } from '../../src/core/song/band-sound';

/**
 * What the program relies on in a band, whatever plays. The same list is held against the band without sound that
 * tests use and against the real one in a browser, so that the two cannot drift apart. Each `act` is carried into the
 * browser as text: it may use nothing but its argument.
 */
export interface BandBehaviour {
  readonly does: string;
  readonly act: (stage: BandStage) => Promise<unknown>;
  readonly expected: unknown;
}

/** A band that has done nothing yet, on a page that was clicked, and what it is given to play. */
export interface BandStage {
  readonly band: Band;
  readonly program: Program;
  readonly sound: BandSound;
  /** Resolves once the first bar is heard. */
  readonly firstBar: () => Promise<void>;
  /** What the band told from the start: kinds of status, and bars as `bar 0` or `no bar`. */
  readonly told: string[];
}

/** Begins to write down what a band tells. */
export const listenTo = (band: Band): string[] => {
  const told: string[] = [];
  band.onStatus(({ kind }) => told.push(kind));
  band.onBar((playhead) => told.push(playhead === null ? 'no bar' : `bar ${playhead.bar}`));
  return told;
};

export const BAND_BEHAVIOURS: readonly BandBehaviour[] = [
  {
    does: 'sleeps at first, and nothing is under way',
    act: async ({ band }) => [band.status(), band.playhead(), band.upcoming()],
    expected: [{ kind: 'asleep' }, null, null],
  },
  {
    does: 'bears being stopped, paused, moved, changed and woken while it sleeps, and tells nobody',
    act: async ({ band, program, sound, told }) => {
      band.stop();
      band.pause();
      band.seek(3);
      band.change(program);
      band.setSound(sound);
      const answer = await band.resume();
      return [answer, band.status(), band.playhead(), band.upcoming(), told];
    },
    expected: [{ kind: 'asleep' }, { kind: 'asleep' }, null, null, []],
  },
  {
    does: 'loads, is ready, and plays the count-in first, with the first chorus coming up',
    act: async ({ band, program, sound, firstBar, told }) => {
      const answer = await band.play(program, sound, 0);
      await firstBar();
      const playhead = band.playhead();
      const upcoming = band.upcoming();
      return [answer, band.status(), playhead?.section.kind, playhead?.bar, upcoming?.kind, told];
    },
    expected: [
      { kind: 'playing' },
      { kind: 'playing' },
      'count-in',
      0,
      'chorus',
      ['loading', 'ready', 'playing', 'bar 0'],
    ],
  },
  {
    does: 'tells first that no bar is heard, then that it is ready, when it is stopped; once however often',
    act: async ({ band, program, sound, firstBar, told }) => {
      await band.play(program, sound, 0);
      await firstBar();
      band.stop();
      band.stop();
      return [band.status(), band.playhead(), band.upcoming(), told];
    },
    expected: [{ kind: 'ready' }, null, null, ['loading', 'ready', 'playing', 'bar 0', 'no bar', 'ready']],
  },
  {
    does: 'plays again after a stop',
    act: async ({ band, program, sound, told }) => {
      await band.play(program, sound, 0);
      band.stop();
      const answer = await band.play(program, sound, 2);
      return [answer, told.filter((each) => each !== 'bar 0' && each !== 'no bar')];
    },
    expected: [{ kind: 'playing' }, ['loading', 'ready', 'playing', 'ready', 'playing']],
  },
  {
    does: 'goes on playing through a change, a move, another sound and a call for the sound it has',
    act: async ({ band, program, sound, firstBar }) => {
      await band.play(program, sound, 0);
      await firstBar();
      band.change(program);
      band.seek(1);
      band.setSound(sound);
      return [await band.resume(), band.playhead() !== null];
    },
    expected: [{ kind: 'playing' }, true],
  },
  {
    does: 'keeps its bar while it is paused, and goes on when it is called, however often it is asked',
    act: async ({ band, program, sound, firstBar, told }) => {
      await band.play(program, sound, 0);
      await firstBar();
      band.pause();
      band.pause();
      const held = [band.status(), band.playhead()?.bar, band.upcoming()?.kind];
      const answers = [await band.resume(), await band.resume()];
      return [held, answers, told.filter((each) => !each.includes('bar'))];
    },
    expected: [
      [{ kind: 'paused' }, 0, 'chorus'],
      [{ kind: 'playing' }, { kind: 'playing' }],
      ['loading', 'ready', 'playing', 'paused', 'playing'],
    ],
  },
  {
    does: 'lets its bar go when it is stopped in a pause',
    act: async ({ band, program, sound, firstBar, told }) => {
      await band.play(program, sound, 0);
      await firstBar();
      band.pause();
      band.stop();
      return [band.status(), band.playhead(), band.upcoming(), await band.resume(), told.slice(-3)];
    },
    expected: [{ kind: 'ready' }, null, null, { kind: 'ready' }, ['paused', 'no bar', 'ready']],
  },
  {
    does: 'tells nothing to whoever left',
    act: async ({ band, program, sound }) => {
      const late: string[] = [];
      const leave = [
        band.onStatus(({ kind }) => late.push(kind)),
        band.onBar(() => late.push('bar')),
        band.onMakeshift(() => late.push('makeshift')),
        band.onOutside(() => late.push('outside')),
      ];
      for (const each of leave) each();
      await band.play(program, sound, 0);
      band.stop();
      return late;
    },
    expected: [],
  },
  {
    does: 'is asleep once it is let go, however often, with no bar heard',
    act: async ({ band, program, sound, firstBar, told }) => {
      await band.play(program, sound, 0);
      await firstBar();
      band.dispose();
      band.dispose();
      return [band.status(), band.playhead(), band.upcoming(), told.slice(-3)];
    },
    expected: [{ kind: 'asleep' }, null, null, ['no bar', 'ready', 'asleep']],
  },
  {
    does: 'bears being let go before it ever played, and then tells nobody',
    act: async ({ band, told }) => {
      band.dispose();
      return [band.status(), told];
    },
    expected: [{ kind: 'asleep' }, []],
  },
];
