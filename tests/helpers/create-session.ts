import { loadFeatures } from '../../src/app/session/features';
import { openState } from '../../src/app/session/opening';
import { type Devices, createSession as joinSession, type Session } from '../../src/app/session/session';

export type { Devices };

const features = await loadFeatures();

/** A session as it is once everything has been fetched. */
export const createSession = (devices: Devices): Session =>
  joinSession(openState(devices.kept), devices, features);
