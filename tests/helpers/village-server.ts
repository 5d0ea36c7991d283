import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { ensureBuilt } from '../../.dev/build.mjs';
import { serveFolder } from '../../.dev/serve.mjs';
import { addServiceWorker } from '../../.dev/service-worker.mjs';

/** A server with the built page in a folder below others, which can be stopped, started and given another version. */
export interface VillageServer {
  /** Where the page is, with a slash at the end. */
  readonly address: string;
  /** The folder the page is served from. */
  readonly folder: string;
  /** Stops the server; whoever asks is refused. */
  stop(): Promise<void>;
  /** Starts it again at the same address. */
  start(): Promise<void>;
  /** Puts another version in place of the page: another title, other names of the scripts. */
  publish(title: string): Promise<void>;
  dispose(): Promise<void>;
}

/** Gives every script another name, as a build of other sources does, and the page another title. */
const rewrite = (folder: string, title: string): void => {
  const assets = join(folder, 'assets');
  const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'));
  const renew = (text: string): string =>
    scripts.reduce((now, name) => now.replaceAll(name, name.replace(/\.js$/, '2.js')), text);
  const page = join(folder, 'index.html');
  writeFileSync(
    page,
    renew(readFileSync(page, 'utf8')).replace(/<title>.*<\/title>/, `<title>${title}</title>`),
  );
  for (const name of scripts) {
    const text = renew(readFileSync(join(assets, name), 'utf8'));
    rmSync(join(assets, name));
    writeFileSync(join(assets, renew(name)), text);
  }
};

/** Copies the built page and serves it as `npm start` does. */
export const openVillageServer = async (): Promise<VillageServer> => {
  const root = mkdtempSync(join(tmpdir(), 'village-'));
  const folder = join(root, 'hall', 'stand');
  mkdirSync(dirname(folder));
  cpSync(await ensureBuilt(), folder, { recursive: true });
  let server: Awaited<ReturnType<typeof serveFolder>> | null = await serveFolder(root, 0);
  const { port } = server;
  const stop = async (): Promise<void> => {
    await server?.close();
    server = null;
  };
  return {
    address: `${server.address}hall/stand/`,
    folder,
    stop,
    start: async () => {
      server ??= await serveFolder(root, port);
    },
    publish: async (title) => {
      rewrite(folder, title);
      await addServiceWorker(folder);
    },
    dispose: async () => {
      await stop();
      rmSync(root, { recursive: true, force: true });
    },
  };
};
