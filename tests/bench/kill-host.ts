import { join } from 'node:path';
import { startBrowserHost } from '../../electron/host/browser.ts';

/** The app as it runs, for `kill.ts` to end in the middle: its data folder is the one argument, its address the first line. */
const [, , dataFolder = ''] = process.argv;
const appFolder = join(import.meta.dirname, '../..');
const host = await startBrowserHost({
  appFolder,
  version: 'bench',
  env: { ...process.env, FOLDWEEK_DATA_DIR: dataFolder },
  port: 0,
  solver: join(appFolder, 'electron/solver/solver.ts'),
});
console.log(host.address);
