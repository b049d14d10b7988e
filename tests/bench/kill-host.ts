import { join } from 'node:path';
import { startBrowserHost } from '../../electron/host/browser.ts';

/** The app as it runs, for `kill.ts` to end in the middle: its data folder is the one argument, its address the first line. */
const [, , dataFolder = ''] = process.argv;
const host = await startBrowserHost({
  appFolder: join(import.meta.dirname, '../..'),
  version: 'bench',
  env: { ...process.env, FOLDWEEK_DATA_DIR: dataFolder },
  port: 0,
});
console.log(host.address);
