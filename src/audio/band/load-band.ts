/** Everything the first gesture loads: Tone, the engine and the arranger. */
import type { Playhead } from '../../core/arranger/playhead';
import type { Program } from '../../core/arranger/program';
import type { OutsideEvent } from '../../core/midi/outside-event';
import type { BandSound } from '../../core/song/band-sound';
import './quiet-tone';
import { Context } from 'tone/build/esm/core/context/Context.js';
import { setContext } from 'tone/build/esm/core/context/GlobalContext.js';
import type { WorkerRoute } from '../bank/bank';
import { createBankWorker, startBankWorker, type WorkerFate } from '../bank/create-bank-worker';
import { createForehand, type Forehand } from '../bank/forehand';
import { createMasterStage, loadMaster } from '../mixer/master-stage';
import { prepareRoom } from '../mixer/room-at';
import { bandSection, rememberSections } from '../transport/band-sections';
import { createEngine } from './create-engine';
import type { Engine } from './engine';
import { openingNotes } from './engine-notes';
import { READY_AHEAD } from './engine-times';
import { keysOf } from './note-sound';

/** What the band wants to be told. */
export interface BandEvents extends WorkerFate {
  readonly onBar: (position: Playhead | null) => void;
  readonly onOutside: (events: readonly OutsideEvent[]) => void;
  readonly onEnd: () => void;
  /** What requests for sounds go through on their way to the workers. */
  readonly route?: WorkerRoute;
}

/** What the first engine of the page is handed; it is made with the route of the first who prepares. */
let forehand: Forehand | null = null;

/** What the next Play is expected to begin with, so that its sounds can be computed while the page rests. */
export interface Preparation {
  readonly program: Program;
  readonly sound: BandSound;
  readonly fromBar: number;
  readonly route: WorkerRoute;
}

/** Computes what the first play needs first, before there is a context to play on; resolves when it is there. */
export const prepareSounds = ({ program, sound, fromBar, route }: Preparation): Promise<void> => {
  forehand ??= createForehand(() => route(startBankWorker()));
  const first = openingNotes(bandSection, program, fromBar).filter(({ at }) => at < READY_AHEAD);
  const done = forehand.prepare(keysOf(first, sound));
  prepareRoom();
  return done;
};

/** Builds the engine on a context. Rejects when the audio part cannot be set up on it. */
export const loadEngine = async (
  context: AudioContext,
  { route = (worker) => worker, onMakeshift, onLost, ...events }: BandEvents,
): Promise<Engine> => {
  // The audio thread compiles it while Tone's context is made here.
  const loading = loadMaster(context);
  const tone = new Context({ context, lookAhead: 0, updateInterval: 0.1, clockSource: 'timeout' });
  // Tone's nodes ask for the global context even when handed one; without this they would make a second one.
  setContext(tone);
  const prepared = forehand?.handOver(context.sampleRate) ?? ((worker) => worker);
  return createEngine({
    context,
    tone,
    master: createMasterStage(context, tone, await loading),
    source: rememberSections(bandSection),
    createWorker: () => prepared(route(createBankWorker({ onMakeshift, onLost }))),
    ...events,
  });
};
