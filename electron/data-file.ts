import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

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

/** @param named what --data said */
export const dataFile = (env: NodeJS.ProcessEnv, named?: string): string =>
  named ? resolve(named) : join(dataFolder(env), 'foldweek.db');
