import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { CHROMIUM_FLAGS, ensureChromium } from '../../.dev/chromium.mjs';

export interface LaunchOptions {
  /** A WAV file the fake microphone plays, over and over; without it the microphone beeps. */
  readonly microphone?: string;
  readonly flags?: readonly string[];
}

/** Starts a headless Chromium. Throws with a clear sentence when there is none and none can be installed. */
export const launchBrowser = async ({ microphone, flags = [] }: LaunchOptions = {}): Promise<Browser> =>
  chromium.launch({
    executablePath: await ensureChromium(),
    headless: true,
    // Chromium refuses its sandbox where root runs the tests.
    chromiumSandbox: process.getuid?.() !== 0,
    args: [
      ...CHROMIUM_FLAGS,
      ...(microphone ? [`--use-file-for-fake-audio-capture=${microphone}`] : []),
      ...flags,
    ],
  });

/** The browser that the files of one worker process share; it ends with the process. */
let shared: Promise<Browser> | null = null;
/** What is still open in it when a file is done, as the next goes on with it. */
const lasting = new Set<BrowserContext>();

/** What one file of tests is lent. */
export interface LentBrowser {
  readonly browser: Browser;
  /** Gives it back: whatever the file has left open is closed. */
  readonly giveBack: () => Promise<void>;
}

/** Lends the browser of this worker process, as starting one costs more than most tests do. */
export const lendBrowser = async (): Promise<LentBrowser> => {
  if (shared !== null && !(await shared).isConnected()) shared = null;
  shared ??= launchBrowser();
  const browser = await shared;
  const giveBack = async (): Promise<void> => {
    const left = browser.contexts().filter((context) => !lasting.has(context));
    await Promise.all(left.map((context) => context.close()));
  };
  return { browser, giveBack };
};

/** Leaves a context of the lent browser open for the files after this one. */
export const leaveOpen = (context: BrowserContext): void => void lasting.add(context);

/** What a page did that a user would not see. The lists grow as it happens. */
export interface PageWatch {
  /** Console errors and warnings of the security policy, and exceptions nobody caught. */
  readonly errors: readonly string[];
  /** Requests that got no answer or an answer of 400 and above. */
  readonly failures: readonly string[];
  /** Every address asked for, in order; data and blob addresses left out, as they ask nobody. */
  readonly requests: readonly string[];
  /** The requests that went to another origin than the given address. */
  readonly foreign: (address: string) => readonly string[];
}

/** Starts noting errors and requests of a page; call it before the page goes anywhere. */
export const watchPage = (page: Page): PageWatch => {
  const errors: string[] = [];
  const failures: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(String(error)));
  page.on('request', (request) => {
    if (/^https?:|^wss?:/.test(request.url())) requests.push(request.url());
  });
  page.on('websocket', (socket) => requests.push(socket.url()));
  page.on('requestfailed', (request) => {
    failures.push(`${request.url()}: ${request.failure()?.errorText ?? 'failed'}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) failures.push(`${response.url()}: ${response.status()}`);
  });
  const foreign = (address: string) =>
    requests.filter((url) => new URL(url).origin !== new URL(address).origin);
  return { errors, failures, requests, foreign };
};
