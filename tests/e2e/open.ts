import { spawn, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import {
  _electron,
  chromium,
  type Browser,
  type BrowserContextOptions,
  type ElectronApplication,
  type Page,
} from '@playwright/test';
import { findBrowser, findElectron } from './runtimes.ts';

/** Monday of an invented week, 06:10 in Chicago: before the first shift. */
export const NOW = '2026-11-30T12:10:00Z';
/** How long the runtime may take to show its window. */
const LAUNCH_MS = 25_000;
const root = join(import.meta.dirname, '../..');

const environment = (dataDir: string, now: string): Record<string, string> => ({
  ...(process.env as Record<string, string>),
  FOLDWEEK_DATA_DIR: dataDir,
  FOLDWEEK_NOW: now,
});

/** The loopback host alone; it prints its address, or ends with a sentence. */
export function startBrowserHost(dataDir: string, now = NOW): ChildProcess {
  return spawn(process.execPath, ['electron/start.ts', '--browser'], {
    cwd: root,
    env: environment(dataDir, now),
  });
}

/** The desktop shell alone, where it asks before it opens a window: what its box asks is printed, and it quits. */
export function startDesktopShell(dataDir: string): ChildProcess {
  const box = join(import.meta.dirname, 'told-box.cjs');
  return spawn(electronHere(), [...flags(), '-r', box, root], {
    cwd: root,
    env: environment(dataDir, NOW),
  });
}

/** @throws Error where there is none */
function electronHere(): string {
  const executablePath = findElectron();
  if (!executablePath) throw new Error('no Electron runtime: run the browser project only');
  return executablePath;
}

/** Chromium refuses its sandbox to root; only tests run as root. */
const flags = (): string[] => (process.getuid?.() === 0 ? ['--no-sandbox'] : []);

/** The desktop window. A runtime that does not come up is started once more, and said so. @throws Error where none is found */
export async function openDesktop(dataDir: string, now = NOW): Promise<Opened> {
  try {
    return await launchDesktop(dataDir, now);
  } catch (error) {
    console.warn(`The desktop runtime did not come up, starting it again: ${String(error).split('\n')[0]}`);
    return launchDesktop(dataDir, now);
  }
}

async function launchDesktop(dataDir: string, now: string): Promise<Opened> {
  const electron = await _electron.launch({
    executablePath: electronHere(),
    args: [...flags(), root],
    cwd: root,
    env: environment(dataDir, now),
    timeout: LAUNCH_MS,
  });
  try {
    return {
      page: await electron.firstWindow({ timeout: LAUNCH_MS }),
      electron,
      close: async () => void (await electron.close()),
    };
  } catch (error) {
    electron.process().kill('SIGKILL');
    throw error;
  }
}

export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: findBrowser() ?? undefined,
    args: flags(),
  });

/**
 * The loopback host, and a browser on its one-time address.
 * @param launched a browser that is open already
 * @param stored what a browser kept of this host before it was closed
 */
export async function openBrowser(
  dataDir: string,
  launched?: Browser,
  stored?: Stored,
  now = NOW,
): Promise<Opened> {
  const host = startBrowserHost(dataDir, now);
  const address = await printedAddress(host);
  const browser = launched ?? (await launchBrowser());
  const page = await browser.newPage({ storageState: stored });
  await page.goto(address);
  const close = async (): Promise<Stored> => {
    // A browser forgets session cookies when it is closed, not what pages stored.
    const { origins } = await page.context().storageState();
    await browser.close();
    const gone = new Promise((resolve) => host.once('exit', resolve));
    host.kill('SIGTERM');
    await gone;
    return { cookies: [], origins };
  };
  return { page, electron: null, close };
}

/** What a browser's pages stored. */
type Stored = Exclude<BrowserContextOptions['storageState'], string | undefined>;

export interface Opened {
  page: Page;
  electron: ElectronApplication | null;
  /** @returns what a plain browser kept; the desktop window keeps its own in the data folder */
  close: () => Promise<Stored | undefined>;
}

function printedAddress(host: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let seen = '';
    const read = (chunk: Buffer): void => {
      seen += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+\/\S*/.exec(seen)?.[0];
      if (address) resolve(address);
    };
    host.stdout?.on('data', read);
    host.stderr?.on('data', read);
    host.once('exit', (code) => reject(new Error(`the browser host stopped with ${code}: ${seen}`)));
  });
}
