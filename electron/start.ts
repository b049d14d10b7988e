import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire, enableCompileCache } from 'node:module';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import type * as Built from './browser-main.ts';
import { buildHosts, buildScreens, stale } from './build.ts';
import { dataFolder } from './data-file.ts';

/** `npm start`: the desktop window where there can be one, else the same app in a browser on this machine. */

const appFolder = resolve(import.meta.dirname, '..');
const USAGE = 'Usage: npm start -- [--browser] [--port N] [--data FILE]';
/** The desktop runtime is fetched once, by its own package; a slow line needs minutes. */
const FETCH_MS = 300_000;
/** A window that ends in failure this soon never opened. */
const OPENED_MS = 10_000;

interface Options {
  readonly browser: boolean;
  readonly port: number;
  readonly data?: string;
}

function readOptions(): Options {
  try {
    const { values } = parseArgs({
      options: { browser: { type: 'boolean' }, port: { type: 'string' }, data: { type: 'string' } },
    });
    const port = Number(values.port ?? 0);
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw new Error(`--port ${values.port} is not a port number`);
    return { browser: values.browser ?? false, port, data: values.data };
  } catch (error) {
    return fail(`${error instanceof Error ? error.message : String(error)}. ${USAGE}`);
  }
}

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}

/** The desktop runtime's program, or the reason why there is none. */
function findDesktop(): { readonly program: string } | { readonly why: string } {
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY)
    return { why: 'There is no display to open a window on' };
  if (
    !process.env.ELECTRON_OVERRIDE_DIST_PATH &&
    !existsSync(resolve(appFolder, 'node_modules/electron/path.txt'))
  )
    console.log('Fetching the desktop runtime; this happens once and may take a few minutes.');
  const found = spawnSync(process.execPath, ['-p', 'require("electron")'], {
    cwd: appFolder,
    timeout: FETCH_MS,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const program = found.stdout.trim().split('\n').at(-1) ?? '';
  return found.status === 0 && existsSync(program)
    ? { program }
    : { why: 'The desktop runtime is not installed and could not be fetched' };
}

/** @returns null when the window was opened and closed, else the reason why it could not be */
async function openDesktop(options: Options): Promise<string | null> {
  const desktop = findDesktop();
  if ('why' in desktop) return desktop.why;
  const args = [appFolder, ...(options.data ? ['--data', resolve(options.data)] : [])];
  const startedAt = performance.now();
  const status = await new Promise<number | null>((done) => {
    const child = spawn(desktop.program, args, { stdio: 'inherit' });
    child.once('error', () => done(1));
    child.once('exit', done);
  });
  if (status === 0 || performance.now() - startedAt > OPENED_MS) return null;
  return 'The desktop window could not be opened (its own message stands above)';
}

async function openBrowser({ port, data }: Options, why: string): Promise<void> {
  const { version } = JSON.parse(readFileSync(resolve(appFolder, 'package.json'), 'utf8')) as {
    version: string;
  };
  // Required, not imported: the loader of modules would first read all of it for the names that it exports.
  const load = createRequire(import.meta.url);
  const { serveBrowser } = load('../dist/electron/browser.cjs') as typeof Built;
  await serveBrowser({ appFolder, version, env: process.env, data, port }, why);
}

// What was compiled at an earlier start is used again.
enableCompileCache(join(dataFolder(process.env), 'compiled'));
const options = readOptions();
const old = stale();
if (old.screens) await buildScreens();
if (old.hosts) await buildHosts();
const why = options.browser ? 'You asked for it' : await openDesktop(options);
if (why !== null) await openBrowser(options, why);
