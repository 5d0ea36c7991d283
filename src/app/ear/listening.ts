import type { Band, LentOutput } from '../../audio/band/band';
import { latenessOf } from '../../core/hearing/calibration';
import type { EarChoice, HeardReport, Microphone, MicStatus } from '../../mic/microphone';
import type { Slice } from '../slice';
import type { EarReads, EarState } from './ear-state';

/** Opens and closes the microphone, and keeps the ear on the harp in hand. */
export interface Listening {
  /** Resolves with a status of its own where the microphone could not even be asked, else null. */
  start(): Promise<MicStatus | null>;
  stop(): void;
  isOpen(): boolean;
  /** To be told how the microphone is. */
  onStatus(status: MicStatus): void;
  /** Microphones came or went: one that was unplugged goes on by itself when it is back. */
  onDevices(): Promise<void>;
  /** To be called after any change of state. */
  follow(): void;
  aim(targets: readonly string[]): void;
  /** Takes how long the band takes to come back, where a report tells. */
  take(report: Pick<HeardReport, 'way'>): void;
  /** Seconds from a sound leaving the page until the page hears it. */
  roundTrip(): number;
  dispose(): void;
}

interface Parts {
  readonly store: Slice<EarReads, EarState>;
  readonly band: Pick<Band, 'lend'>;
  readonly microphone: Microphone | undefined;
  /** What is known of the reeds of the harp in hand; nothing before a microphone is open. */
  readonly reeds: () => Pick<EarChoice, 'reeds'>;
}

const NO_MICROPHONE: MicStatus = { kind: 'trouble', why: 'unsupported', detail: 'No microphone' };
const NO_SOUND: MicStatus = {
  kind: 'trouble',
  why: 'failed',
  detail: 'The page’s sound could not be opened',
};
/** Seconds each way where nothing was measured and the browser does not tell (common practice, no source). */
const GUESS = 0.02;

/** A choice as far as another one is worth listening anew: what is known of the reeds grows in the ear itself. */
const textOf = (choice: EarChoice): string => JSON.stringify({ ...choice, reeds: choice.reeds?.key });

/** Creates what listens on the band's own context. */
export const createListening = (parts: Parts): Listening => new EarListening(parts);

class EarListening implements Listening {
  private readonly store: Parts['store'];
  private readonly band: Parts['band'];
  private readonly microphone: Microphone | undefined;
  private readonly reeds: Parts['reeds'];
  private loan: LentOutput | null = null;
  private targets: readonly string[] = [];
  /** What the ear was told last, as text. */
  private told = '';
  private run = 0;
  /** How long the band took to come back, latest, at this opening of the microphone. */
  private way: number | null = null;

  constructor({ store, band, microphone, reeds }: Parts) {
    this.store = store;
    this.band = band;
    this.microphone = microphone;
    this.reeds = reeds;
  }

  readonly start = async (): Promise<MicStatus | null> => {
    this.run += 1;
    const { run, microphone } = this;
    if (microphone === undefined) return NO_MICROPHONE;
    const lent = await this.band.lend();
    if (run !== this.run) {
      lent?.giveBack();
      return null;
    }
    if (lent === null) return NO_SOUND;
    this.giveBack();
    this.loan = lent;
    const choice = this.choiceNow();
    this.told = textOf(choice);
    await microphone.open(this.store.getState().settings.microphone, lent, choice);
    return null;
  };

  readonly take = ({ way }: Pick<HeardReport, 'way'>): void => {
    this.way = way ?? this.way;
  };

  readonly stop = (): void => {
    this.run += 1;
    this.microphone?.close();
  };

  readonly isOpen = (): boolean =>
    ['asking', 'listening', 'silent'].includes(this.store.getState().ear.status.kind);

  readonly onStatus = ({ kind }: MicStatus): void => {
    if (kind !== 'listening' && kind !== 'silent') this.way = null;
    if (kind === 'trouble' || kind === 'off') this.giveBack();
    if (kind !== 'listening') return;
    this.follow();
    // Names are told only once the player has allowed a microphone.
    void this.refreshDevices();
  };

  readonly onDevices = async (): Promise<void> => {
    const before = this.store.getState().ear.devices.length;
    await this.refreshDevices();
    const { status, devices } = this.store.getState().ear;
    const lost = status.kind === 'trouble' && (status.why === 'unplugged' || status.why === 'missing');
    if (lost && devices.length > before) await this.start();
  };

  readonly follow = (): void => {
    const { kind } = this.store.getState().ear.status;
    if (kind !== 'listening' && kind !== 'silent') return;
    const choice = this.choiceNow();
    const asked = textOf(choice);
    if (asked === this.told) return;
    this.told = asked;
    this.microphone?.listenFor(choice);
  };

  readonly aim = (targets: readonly string[]): void => {
    this.targets = targets;
    this.follow();
  };

  readonly roundTrip = (): number => {
    const { status, calibration } = this.store.getState().ear;
    const input = 'input' in status ? (status.input.latency ?? GUESS) : GUESS;
    const guess = input + (this.loan?.context.outputLatency || GUESS);
    return latenessOf({ known: calibration, way: this.way, guess });
  };

  dispose(): void {
    this.run += 1;
    this.microphone?.dispose();
    this.giveBack();
  }

  private choiceNow(): EarChoice {
    const { settings, now, ear } = this.store.getState();
    const gate = ear.calibration?.gate ?? null;
    return {
      harp: now.tune.harp,
      reference: settings.reference,
      targets: this.targets,
      ...(gate !== null && { gate }),
      ...this.reeds(),
    };
  }

  private async refreshDevices(): Promise<void> {
    const devices = (await this.microphone?.devices()) ?? [];
    if (JSON.stringify(devices) === JSON.stringify(this.store.getState().ear.devices)) return;
    this.store.setState(({ ear }) => ({ ear: { ...ear, devices } }));
  }

  private giveBack(): void {
    this.loan?.giveBack();
    this.loan = null;
  }
}
