import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const modules = join(import.meta.dirname, '../../node_modules');

/** The Electron executable: the folder that ELECTRON_OVERRIDE_DIST_PATH names, or the official package's; null: none here. */
export function findElectron(): string | null {
  const override = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  const folder = override ?? join(modules, 'electron/dist');
  const pathFile = join(modules, 'electron/path.txt');
  const name = existsSync(pathFile)
    ? readFileSync(pathFile, 'utf8')
    : process.platform === 'win32'
      ? 'electron.exe'
      : 'electron';
  const executable = join(folder, name);
  return existsSync(executable) ? executable : null;
}

const browsers = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:/Program Files/Google/Chrome/Application/chrome.exe',
  'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe',
];

/** A Chromium-family browser on this machine; FOLDWEEK_TEST_BROWSER names another. Null: none. */
export const findBrowser = (): string | null =>
  [process.env.FOLDWEEK_TEST_BROWSER, ...browsers].find((path) => path && existsSync(path)) ?? null;
