import { mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { Refused } from './refused.ts';

/** The folder for this app's data where neither a file nor FOLDWEEK_DATA_DIR is named; Electron's userData is the same. */
function usualFolder(env: NodeJS.ProcessEnv): string {
  const base =
    process.platform === 'win32'
      ? (env.APPDATA ?? join(homedir(), 'AppData', 'Roaming'))
      : process.platform === 'darwin'
        ? join(homedir(), 'Library', 'Application Support')
        : (env.XDG_CONFIG_HOME ?? join(homedir(), '.config'));
  return join(base, 'Foldweek');
}

export const dataFolder = (env: NodeJS.ProcessEnv): string =>
  resolve(env.FOLDWEEK_DATA_DIR ?? usualFolder(env));

/**
 * The data file; without a name, the one in the data folder, which is made if there is none.
 * @param named what --data said
 * @throws Refused when that folder cannot be made
 */
export function dataFile(env: NodeJS.ProcessEnv, named?: string): string {
  if (named) return resolve(named);
  const folder = dataFolder(env);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new Refused(
      'unavailable',
      `The folder ${folder} for the data file cannot be made (${String(error)}). Nothing was changed; have it made, or name a data file with --data.`,
    );
  }
  return join(folder, 'foldweek.db');
}
