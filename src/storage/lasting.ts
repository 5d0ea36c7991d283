/**
 * Whether the browser keeps what the page stores for good (Storage standard, "Persistence"): `kept` never goes without
 * the player being asked, `may go` is cleared when the device runs out of room, `unknown` is a browser that cannot say.
 */
export type Lasting = 'kept' | 'may go' | 'unknown';

/** What keeps the page's storage for good, if the browser does. No method throws. */
export interface LastingStorage {
  state(): Promise<Lasting>;
  /** Asks the browser to keep it; some ask the player. */
  ask(): Promise<Lasting>;
}

/** What of the browser is needed; absent in older ones and on pages that are not secure. */
export type LastingSource = Partial<Pick<StorageManager, 'persist' | 'persisted'>> | undefined;

const told = async (answer: (() => Promise<boolean>) | undefined): Promise<Lasting> => {
  if (answer === undefined) return 'unknown';
  try {
    return (await answer()) ? 'kept' : 'may go';
  } catch {
    return 'unknown';
  }
};

/** The browser's own storage. */
export const createLastingStorage = (source: LastingSource): LastingStorage => ({
  state: () => told(source?.persisted?.bind(source)),
  ask: () => told(source?.persist?.bind(source)),
});
