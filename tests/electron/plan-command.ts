import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { appFolder } from './support.ts';

const compiled = join(appFolder, 'node_modules/.cache/node-compiled');

/**
 * `npm run plan -- …` at a fixed instant. What Node compiled of the app is kept from call to call, which spares each a
 * quarter of its time.
 */
export function plan(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(appFolder, 'electron/host/command-line.ts'), ...args],
    {
      encoding: 'utf8',
      env: { ...process.env, FOLDWEEK_NOW: '2026-11-30T12:00:00Z', NODE_COMPILE_CACHE: compiled },
    },
  );
  return { status, stdout, stderr };
}
