// `npm start`: install what is missing, build what has changed, serve it, open it.
import { spawn } from 'node:child_process';
import util from 'node:util';
import { ensureBuilt } from './build.mjs';
import { checkNode, ensureInstalled } from './install.mjs';
import { Failure, runMain, say } from './run.mjs';
import { serveFolder } from './serve.mjs';

const FIRST_PORT = 4240;
const PORTS_TRIED = 20;

/** Read with the whole module imported, so that a Node without `parseArgs` still gets as far as our own sentence. */
const readOptions = () => {
  try {
    const { values } = util.parseArgs({
      options: { port: { type: 'string' }, 'no-open': { type: 'boolean' } },
    });
    const port = values.port === undefined ? null : Number(values.port);
    if (port !== null && !(Number.isInteger(port) && port >= 0 && port <= 65535)) {
      throw new Error(`--port must be a whole number from 0 to 65535, got "${values.port}".`);
    }
    return { port, open: !values['no-open'] };
  } catch (error) {
    throw new Failure(`${error.message}\nUsage: npm start -- [--port 5000] [--no-open]`);
  }
};

const tryPort = async (folder, port) => {
  try {
    return await serveFolder(folder, port);
  } catch (error) {
    if (error.code === 'EADDRINUSE' || error.code === 'EACCES') return null;
    throw error;
  }
};

const serve = async (folder, wanted) => {
  if (wanted !== null) {
    const server = await tryPort(folder, wanted);
    if (server) return server;
    throw new Failure(
      `Port ${wanted} is taken or not allowed. Choose another with: npm start -- --port 5000`,
    );
  }
  for (let port = FIRST_PORT; port < FIRST_PORT + PORTS_TRIED; port += 1) {
    const server = await tryPort(folder, port);
    if (server && port > FIRST_PORT) {
      say(`Port ${FIRST_PORT} is taken, so this is on ${port}. Browsers keep settings per address:`);
      say(`what was saved at port ${FIRST_PORT} is still there, and comes back when it is free.`);
    }
    if (server) return server;
  }
  throw new Failure(
    `The ports ${FIRST_PORT} to ${FIRST_PORT + PORTS_TRIED - 1} are all taken.\n` +
      'Close another copy of this program, or choose a port with: npm start -- --port 5000',
  );
};

/** The system's own way to open an address, or null where nobody would see it. */
const opener = () => {
  if (process.env.CI || process.env.SSH_CONNECTION) return null;
  if (process.platform === 'darwin') return ['open'];
  if (process.platform === 'win32') return ['cmd', '/c', 'start', ''];
  return process.env.DISPLAY || process.env.WAYLAND_DISPLAY ? ['xdg-open'] : null;
};

const open = (address) => {
  const [program, ...args] = opener() ?? [];
  if (!program) return;
  const child = spawn(program, [...args, address], { stdio: 'ignore', detached: true });
  child.on('error', () => say('No browser could be opened here; open the address yourself.'));
  child.unref();
};

const untilStopped = () =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, resolve);
  });

await runMain(async () => {
  checkNode();
  const options = readOptions();
  await ensureInstalled();
  const server = await serve(await ensureBuilt(), options.port);
  say(`\nReady at ${server.address}\nPress Ctrl+C to stop.`);
  if (options.open) open(server.address);
  await untilStopped();
  await server.close();
  return 0;
});
