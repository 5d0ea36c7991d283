import type { EarChoice, HeardReport, MicGround, Microphone } from '../../src/mic/microphone';

/**
 * What the program relies on in a microphone. The same list is held against the one without sound that tests use and
 * against the real one in a browser, so that the two cannot drift apart. Each `act` is carried into the browser as
 * text: it may use nothing but its argument.
 */
export interface MicrophoneBehaviour {
  readonly does: string;
  readonly act: (stage: MicrophoneStage) => Promise<unknown>;
  readonly expected: unknown;
}

/** A microphone that has done nothing yet, and what it is opened with. */
export interface MicrophoneStage {
  readonly microphone: Microphone;
  readonly ground: MicGround;
  readonly choice: EarChoice;
  /** Resolves with the next report that holds frames. */
  readonly heard: () => Promise<HeardReport>;
  /** The kinds of status it told from the start. */
  readonly told: string[];
}

/** Begins to write down what a microphone tells. */
export const listenToMicrophone = (microphone: Microphone): string[] => {
  const told: string[] = [];
  microphone.onStatus(({ kind }) => told.push(kind));
  return told;
};

export const MICROPHONE_BEHAVIOURS: readonly MicrophoneBehaviour[] = [
  {
    does: 'is off at first, and bears being closed and asked for another harp',
    act: async ({ microphone, choice, told }) => {
      microphone.close();
      microphone.listenFor(choice);
      return [microphone.status(), told];
    },
    expected: [{ kind: 'off' }, []],
  },
  {
    does: 'asks, then listens, with nothing done to the sound',
    act: async ({ microphone, ground, choice, told }) => {
      const status = await microphone.open(null, ground, choice);
      return [status.kind, status.kind === 'listening' && status.input.processing, told];
    },
    expected: ['listening', [], ['asking', 'listening']],
  },
  {
    does: 'tells what it hears by a clock that does not run backwards, beginning where it says',
    act: async ({ microphone, ground, choice, heard }) => {
      await microphone.open(null, ground, choice);
      const first = await heard();
      const second = await heard();
      const times = [...first.frames, ...second.frames].map(({ known }) => known);
      const rising = times.every((time, i) => i === 0 || time > (times[i - 1] ?? time));
      return [rising, first.begun !== null && first.begun <= (times[0] ?? 0), second.begun];
    },
    expected: [true, true, null],
  },
  {
    does: 'begins anew when it is asked for another harp',
    act: async ({ microphone, ground, choice, heard }) => {
      await microphone.open(null, ground, choice);
      const first = await heard();
      microphone.listenFor({ ...choice, gate: -50 });
      let next = await heard();
      for (let i = 0; i < 20 && next.begun === null; i += 1) next = await heard();
      return (next.begun ?? 0) > (first.begun ?? 0);
    },
    expected: true,
  },
  {
    does: 'is off once it is closed, however often, and can be opened again',
    act: async ({ microphone, ground, choice, told }) => {
      await microphone.open(null, ground, choice);
      microphone.close();
      microphone.close();
      const closed = microphone.status();
      const again = await microphone.open(null, ground, choice);
      return [closed, again.kind, told];
    },
    expected: [{ kind: 'off' }, 'listening', ['asking', 'listening', 'off', 'asking', 'listening']],
  },
  {
    does: 'stays off when it was closed while it asked',
    act: async ({ microphone, ground, choice, told }) => {
      const opening = microphone.open(null, ground, choice);
      microphone.close();
      await opening;
      return [microphone.status(), told];
    },
    expected: [{ kind: 'off' }, ['asking', 'off']],
  },
  {
    does: 'opens no other microphone than the one asked for',
    act: async ({ microphone, ground, choice }) => {
      const status = await microphone.open('gone', ground, choice);
      return status.kind === 'trouble' && status.why;
    },
    expected: 'unplugged',
  },
  {
    does: 'lists microphones that can be opened by their ids',
    act: async ({ microphone, ground, choice }) => {
      await microphone.open(null, ground, choice);
      const [first] = await microphone.devices();
      const status = await microphone.open(first?.id ?? 'none', ground, choice);
      return [status.kind === 'listening' && status.input.id === first?.id, (first?.name ?? '') !== ''];
    },
    expected: [true, true],
  },
  {
    does: 'measures no way and sends no clicks while it is off, nor finds a way that nothing comes back by',
    act: async ({ microphone, ground, choice }) => {
      const off = [await microphone.measureWay(), microphone.click([0.1])];
      await microphone.open(null, ground, choice);
      const [first = 0, second = 0] = microphone.click([0.1, 0.6]);
      return [off, Math.round((second - first) * 1000), await microphone.measureWay()];
    },
    expected: [[null, []], 500, null],
  },
  {
    does: 'tells nothing to whoever left',
    act: async ({ microphone, ground, choice, heard }) => {
      const late: string[] = [];
      const leave = [
        microphone.onStatus(({ kind }) => late.push(kind)),
        microphone.onHeard(() => late.push('heard')),
        microphone.onDevices(() => late.push('devices')),
      ];
      for (const each of leave) each();
      await microphone.open(null, ground, choice);
      await heard();
      return late;
    },
    expected: [],
  },
  {
    does: 'is off once it is let go, however often',
    act: async ({ microphone, ground, choice, told }) => {
      await microphone.open(null, ground, choice);
      microphone.dispose();
      microphone.dispose();
      return [microphone.status(), told];
    },
    expected: [{ kind: 'off' }, ['asking', 'listening', 'off']],
  },
];
