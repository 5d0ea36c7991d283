import type { FileSounds, Opening } from '../../src/audio/soundfont/soundfont-route';

/**
 * What the program relies on in the holder of the player's own sounds: one list for the one without sound that tests
 * use and for the real one.
 */
export interface OwnSoundsBehaviour {
  readonly does: string;
  readonly act: (stage: OwnSoundsStage) => Promise<unknown>;
  readonly expected: unknown;
}

export interface OwnSoundsStage {
  readonly sounds: FileSounds;
  /** Opens a file with a piano in it. */
  readonly openGood: () => Promise<Opening>;
  /** Opens a file that is no SoundFont. */
  readonly openBad: () => Promise<Opening>;
  /** What plays the file opened last breaks down. */
  readonly breakDown: (detail: string) => void;
}

export const OWN_SOUNDS_BEHAVIOURS: readonly OwnSoundsBehaviour[] = [
  {
    does: 'names the voices of a file, and tells every file from the others',
    act: async ({ openGood }) => {
      const [one, two] = [await openGood(), await openGood()];
      if (one.kind !== 'opened' || two.kind !== 'opened') return 'refused';
      return [one.voices, two.voices, one.source === two.source];
    },
    expected: [['piano'], ['piano'], false],
  },
  {
    does: 'says why it refuses a file',
    act: ({ openBad }) => openBad(),
    expected: { kind: 'refused', why: { kind: 'other' } },
  },
  {
    does: 'tells once that the file in use is lost, and again of the next file',
    act: async ({ sounds, openGood, breakDown }) => {
      const lost: string[] = [];
      sounds.onLost((detail) => lost.push(detail));
      await openGood();
      breakDown('first');
      breakDown('again');
      await openGood();
      breakDown('second');
      return lost;
    },
    expected: ['first', 'second'],
  },
  {
    does: 'loses nothing that was let go, however often',
    act: async ({ sounds, openGood, breakDown }) => {
      const lost: string[] = [];
      sounds.onLost((detail) => lost.push(detail));
      sounds.close();
      await openGood();
      sounds.close();
      sounds.close();
      breakDown('late');
      return lost;
    },
    expected: [],
  },
  {
    does: 'tells nothing to whoever left',
    act: async ({ sounds, openGood, breakDown }) => {
      const lost: string[] = [];
      sounds.onLost((detail) => lost.push(detail))();
      await openGood();
      breakDown('first');
      return lost;
    },
    expected: [],
  },
  {
    does: 'has counted nothing before a sound is asked for',
    act: async ({ sounds, openGood }) => {
      await openGood();
      return sounds.counts();
    },
    expected: { rendered: 0, absent: 0, failed: 0 },
  },
];
