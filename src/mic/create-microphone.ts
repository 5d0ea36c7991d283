import type { Sound } from '../core/harp/harp';
import { CHIRPS_AT, CHIRPS_LAST, chirp, type RoundTrip } from '../core/hearing/round-trip';
import { messageOf } from '../core/theory/thrown';
import { asSeconds, type Seconds } from '../core/theory/units';
import { createListeners } from '../listeners/listeners';
import type { EarAnswer } from './ear-messages';
import { type EarLine, type EarWorker, type MicrophoneGround, WEB_MICROPHONE } from './mic-ground';
import { inputOf, troubleOf, wishesFor } from './mic-trouble';
import type {
  EarChoice,
  HeardReport,
  LearntReeds,
  MicDevice,
  MicGround,
  MicInput,
  Microphone,
  MicStatus,
  MicTrouble,
  SoundBlock,
} from './microphone';
import { clickSound, sendSound } from './send-sound';

/** The microphone of this machine, off. */
export const createMicrophone = (ground: MicrophoneGround = WEB_MICROPHONE): Microphone =>
  new WebMicrophone(ground);

/** What is open. */
interface Opened {
  readonly stream: MediaStream;
  readonly track: MediaStreamTrack;
  readonly input: MicInput;
  readonly context: AudioContext;
  readonly line: EarLine;
  readonly worker: EarWorker;
  /** Takes the listeners off track and context. */
  readonly leave: () => void;
}

class WebMicrophone implements Microphone {
  private readonly ground: MicrophoneGround;
  private readonly statuses = createListeners<MicStatus>();
  private readonly reports = createListeners<HeardReport>();
  private readonly sounds = createListeners<SoundBlock>();
  private readonly learnt = createListeners<LearntReeds>();
  private readonly changes = createListeners<void>();
  private readonly onChange = () => this.changes.tell();
  private readonly measured = createListeners<RoundTrip | null>();
  private current: MicStatus = { kind: 'off' };
  private opened: Opened | null = null;
  private output: AudioNode | null = null;
  private choice: EarChoice | null = null;
  private recording = false;
  private run = 0;

  constructor(ground: MicrophoneGround) {
    this.ground = ground;
    ground.devices?.addEventListener('devicechange', this.onChange);
  }

  status(): MicStatus {
    return this.current;
  }

  async open(device: string | null, { context, output }: MicGround, choice: EarChoice): Promise<MicStatus> {
    this.letGo();
    this.run += 1;
    const { run } = this;
    this.choice = choice;
    this.output = output;
    const { devices } = this.ground;
    if (devices === null) return this.fail('unsupported', 'This page is given no microphones');
    this.set({ kind: 'asking' });
    let stream: MediaStream | null = null;
    let line: EarLine | null = null;
    try {
      stream = await devices.getUserMedia(wishesFor(device));
      if (run === this.run) line = await this.ground.connect(stream, context, output);
      if (run === this.run && line !== null) {
        this.begin(stream, context, line);
        return this.current;
      }
    } catch (error) {
      if (run === this.run) this.fail(troubleOf(error), messageOf(error));
    }
    line?.close();
    for (const track of stream?.getTracks() ?? []) track.stop();
    return this.current;
  }

  close(): void {
    this.run += 1;
    this.letGo();
    this.set({ kind: 'off' });
  }

  listenFor(choice: EarChoice): void {
    this.choice = choice;
    this.opened?.worker.postMessage({ kind: 'choice', choice });
  }

  record(on: boolean): void {
    this.recording = on;
    this.opened?.worker.postMessage({ kind: 'record', on });
  }

  teach(sound: Sound, from: Seconds, to: Seconds): void {
    this.opened?.worker.postMessage({ kind: 'teach', sound, from, to });
  }

  async measureWay(): Promise<RoundTrip | null> {
    const { opened, output } = this;
    if (opened === null || output === null) return null;
    const answer = new Promise<RoundTrip | null>((resolve) => {
      const end = (found: RoundTrip | null): void => {
        for (const leave of leaving) leave();
        resolve(found);
      };
      const leaving = [this.measured.add(end), this.statuses.add(() => this.opened !== opened && end(null))];
    });
    opened.worker.postMessage({ kind: 'measure', seconds: CHIRPS_LAST });
    sendSound(output, chirp(opened.context.sampleRate), CHIRPS_AT);
    return answer;
  }

  click(delays: readonly number[]): readonly Seconds[] {
    const { opened, output } = this;
    return opened === null || output === null
      ? []
      : sendSound(output, clickSound(opened.context.sampleRate), delays);
  }

  now(): Seconds | null {
    return this.opened === null ? null : asSeconds(this.opened.context.currentTime);
  }

  async devices(): Promise<readonly MicDevice[]> {
    try {
      const all = (await this.ground.devices?.enumerateDevices()) ?? [];
      // The entry "default" is another name for one of the others.
      return all
        .filter(
          ({ kind, deviceId }) =>
            kind === 'audioinput' && !['', 'default', 'communications'].includes(deviceId),
        )
        .map(({ deviceId, label }) => ({ id: deviceId, name: label }));
    } catch {
      return [];
    }
  }

  onStatus(listener: (status: MicStatus) => void): () => void {
    return this.statuses.add(listener);
  }

  onDevices(listener: () => void): () => void {
    return this.changes.add(listener);
  }

  onHeard(listener: (report: HeardReport) => void): () => void {
    return this.reports.add(listener);
  }

  onLearnt(listener: (learnt: LearntReeds) => void): () => void {
    return this.learnt.add(listener);
  }

  onSound(listener: (block: SoundBlock) => void): () => void {
    return this.sounds.add(listener);
  }

  dispose(): void {
    this.close();
    this.ground.devices?.removeEventListener('devicechange', this.onChange);
  }

  private begin(stream: MediaStream, context: AudioContext, line: EarLine): void {
    const [track] = stream.getAudioTracks();
    if (track === undefined) throw new DOMException('The microphone has no sound', 'NotFoundError');
    const worker = this.ground.createWorker();
    worker.onmessage = ({ data }: MessageEvent<EarAnswer>) => {
      if (data.kind === 'heard') this.reports.tell(data.report);
      if (data.kind === 'measured') this.measured.tell(data.roundTrip);
      if (data.kind === 'learnt') this.learnt.tell(data.learnt);
      if (data.kind === 'sound') this.sounds.tell(data.block);
    };
    worker.onerror = () => this.fail('failed', 'The ear could not be loaded');
    line.onBroken(() => this.fail('failed', 'The way to the ear broke down'));
    if (this.choice !== null) worker.postMessage({ kind: 'choice', choice: this.choice });
    if (this.recording) worker.postMessage({ kind: 'record', on: true });
    worker.postMessage({ kind: 'source', port: line.port, sampleRate: context.sampleRate }, [line.port]);
    const look = (): void => this.look();
    const lose = (): void => void this.lose();
    // What was held up goes on with whatever is pressed next, as the player is told.
    const ungesture = this.ground.onGesture(() => {
      if (this.current.kind === 'silent' && context.state !== 'running')
        void context.resume().catch(() => undefined);
    });
    track.addEventListener('mute', look);
    track.addEventListener('unmute', look);
    track.addEventListener('ended', lose);
    context.addEventListener('statechange', look);
    const leave = (): void => {
      ungesture();
      track.removeEventListener('mute', look);
      track.removeEventListener('unmute', look);
      track.removeEventListener('ended', lose);
      context.removeEventListener('statechange', look);
    };
    this.opened = { stream, track, input: inputOf(track), context, line, worker, leave };
    this.look();
  }

  /** Makes the status follow what track and context do now. */
  private look(): void {
    if (this.opened === null) return;
    const { track, context, input } = this.opened;
    if (context.state === 'closed') this.fail('failed', 'The page’s sound was closed');
    else if (context.state !== 'running') this.set({ kind: 'silent', why: 'suspended', input });
    else if (track.muted) this.set({ kind: 'silent', why: 'muted', input });
    else this.set({ kind: 'listening', input });
  }

  /** The browser ended the track: it was unplugged, or forbidden while it was open. */
  private async lose(): Promise<void> {
    const { run } = this;
    const name = this.opened?.input.name ?? '';
    this.letGo();
    const forbidden = await this.ground.forbidden();
    if (run === this.run) this.fail(forbidden ? 'denied' : 'unplugged', name);
  }

  private fail(why: MicTrouble, detail: string): MicStatus {
    this.letGo();
    this.set({ kind: 'trouble', why, detail });
    return this.current;
  }

  private letGo(): void {
    const { opened } = this;
    this.opened = null;
    if (opened === null) return;
    opened.leave();
    opened.line.close();
    opened.worker.terminate();
    for (const track of opened.stream.getTracks()) track.stop();
  }

  private set(status: MicStatus): void {
    if (JSON.stringify(status) === JSON.stringify(this.current)) return;
    this.current = status;
    this.statuses.tell(status);
  }
}
