import type { FileSounds } from '../../audio/soundfont/soundfont-route';
import type { OwnSoundPart } from '../../core/settings/mix';
import type { Settings } from '../../core/settings/settings';
import { audibleSoundOf } from '../../core/song/song-program';
import type { KeptFile } from '../../storage/kept-file';
import type { Join, Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { partsOf, type SoundKind, withSoundKind } from './sound-kinds';
import type { OwnSoundsState, SoundFontState } from './soundfont-state';
import { GONE_TEXT, lostText, NOT_FORGOTTEN_TEXT, notKeptText, refusalText } from './soundfont-words';

/** What the page can ask for about sounds of the player's own. */
export interface OwnSoundCommands {
  /** Reads a file and, when it can be used, lets every part it has sounds for play from it. */
  loadOwnSounds(file: File): Promise<void>;
  /** Chooses where a part's sounds come from. */
  chooseSounds(part: OwnSoundPart, kind: SoundKind): Promise<void>;
  /** Lets go of the file, here and where the browser kept it. */
  forgetOwnSounds(): Promise<void>;
}

export interface OwnSoundDevices {
  readonly sounds: FileSounds;
  /** Where the file is kept for the next visit. */
  readonly shelf: KeptFile;
}

type OwnSoundStand = Stand<Song & SoundFontState>;

/** The file of the visit: opened, let go of, and kept for the next one. */
interface FileInHand {
  change(fields: Partial<OwnSoundsState>): void;
  /** Opens a file in place of the one before; false when it was refused, with the reason in the state. */
  open(name: string, file: Blob, kept: boolean): Promise<boolean>;
  /** Takes up a file without opening it. */
  hold(name: string, file: Blob): void;
  /** Opens the file held, unless it is open or being opened. */
  openHeld(): Promise<void>;
  keep(name: string, file: Blob): Promise<void>;
  letGo(): void;
}

const createFileInHand = ({ store, band }: OwnSoundStand, { sounds, shelf }: OwnSoundDevices): FileInHand => {
  const state = () => store.getState().ownSounds;
  /** The file itself, to open it again. */
  let held: Blob | null = null;

  const change = (fields: Partial<OwnSoundsState>): void =>
    store.setState({ ownSounds: { ...state(), ...fields } });
  const open = async (name: string, file: Blob, kept: boolean): Promise<boolean> => {
    change({ opening: name, trouble: null });
    const opening = await sounds.open(file);
    if (opening.kind === 'refused') {
      if (opening.why.kind !== 'overtaken')
        change({ opening: null, trouble: refusalText(name, opening.why) });
      return false;
    }
    held = file;
    const { source, voices } = opening;
    change({ opening: null, file: { name, bytes: file.size, kept, opened: { source, voices } } });
    band.setSound(audibleSoundOf(store.getState()));
    return true;
  };
  return {
    change,
    open,
    hold: (name, file) => {
      held = file;
      change({ file: { name, bytes: file.size, kept: true, opened: null } });
    },
    openHeld: async () => {
      const { file, opening } = state();
      if (file === null || held === null || file.opened !== null || opening !== null) return;
      await open(file.name, held, file.kept);
    },
    keep: async (name, file) => {
      const writing = await shelf.write(name, file);
      const current = state().file;
      if (held !== file || current === null) return;
      if (writing.kind === 'written') change({ file: { ...current, kept: true } });
      else change({ trouble: notKeptText(name, writing.kind === 'full') });
    },
    letGo: () => {
      sounds.close();
      held = null;
      change({ file: null, opening: null, trouble: null });
    },
  };
};

const createCommands = (
  { store, apply }: OwnSoundStand,
  inHand: FileInHand,
  shelf: KeptFile,
): OwnSoundCommands => {
  const choose = (chosen: Partial<Pick<Settings, 'ownSounds' | 'computedVoices'>>): void =>
    apply({ ...store.getState().settings, ...chosen });
  return {
    loadOwnSounds: async (file) => {
      if (!(await inHand.open(file.name, file, false))) return;
      choose({ ownSounds: partsOf(store.getState().ownSounds.file?.opened?.voices ?? []) });
      await inHand.keep(file.name, file);
    },
    chooseSounds: async (part, kind) => {
      choose(withSoundKind(part, kind, store.getState().settings));
      if (kind === 'own') await inHand.openHeld();
    },
    forgetOwnSounds: async () => {
      inHand.letGo();
      choose({ ownSounds: [] });
      const forgetting = await shelf.forget();
      if (forgetting.kind !== 'written') inHand.change({ trouble: NOT_FORGOTTEN_TEXT });
    },
  };
};

/** Takes up the file kept at the last visit; it is opened only when a part uses it. */
const restore = async ({ store }: OwnSoundStand, inHand: FileInHand, shelf: KeptFile): Promise<void> => {
  const reading = await shelf.read();
  const { settings, ownSounds } = store.getState();
  if (ownSounds.file !== null || ownSounds.opening !== null) return;
  const inUse = settings.ownSounds.length > 0;
  if (reading.kind !== 'file') {
    if (inUse || reading.kind === 'no file') inHand.change({ trouble: GONE_TEXT });
    return;
  }
  inHand.hold(reading.name, reading.file);
  if (inUse) await inHand.openHeld();
};

/** Sounds of the player's own: what is loaded, which parts use it, and what went wrong. */
export const joinSoundFont: Join<SoundFontState, OwnSoundCommands, OwnSoundDevices, Song> = (
  stand,
  devices,
) => {
  const { store, band } = stand;
  const { sounds, shelf } = devices;
  const inHand = createFileInHand(stand, devices);
  const unsubscribe = sounds.onLost((detail) => {
    const { file } = store.getState().ownSounds;
    if (file === null) return;
    inHand.change({ file: { ...file, opened: null }, trouble: lostText(file.name, detail) });
    band.setSound(audibleSoundOf(store.getState()));
  });
  void restore(stand, inHand, shelf);
  return {
    commands: createCommands(stand, inHand, shelf),
    isBusy: () => store.getState().ownSounds.opening !== null,
    dispose: () => {
      unsubscribe();
      sounds.close();
    },
  };
};
