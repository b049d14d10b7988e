import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { appFolder } from './support.ts';

/** `npm run plan -- …` at a fixed instant. */
export function plan(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(appFolder, 'electron/host/command-line.ts'), ...args],
    { encoding: 'utf8', env: { ...process.env, FOLDWEEK_NOW: '2026-11-30T12:00:00Z' } },
  );
  return { status, stdout, stderr };
}
