import { accessSync, closeSync, constants, existsSync, openSync, readSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { copyBeforeMigration } from './backup.ts';
import { APPLICATION_ID, migrate } from './migrate.ts';
import { damaged, notWritable, troubleOf, Unreachable } from './trouble.ts';

export interface OpenOptions {
  /** The folder with the SQL files. */
  readonly migrations: string;
  /** Names a backup: "2026-11-25T09-22-11". */
  readonly stamp: string;
  readonly log: Log;
}

/**
 * A connection to a data file, made when there is none (or an empty one) and brought to this version. Its folder must be
 * there: a drive that is not connected must not get an empty file in its place.
 * @throws Refused with a sentence; the file is then as it was
 */
export function connect(file: string, options: OpenOptions): Database.Database {
  return explained(file, () => {
    if (!existsSync(dirname(file))) throw new Unreachable(file, 'its folder is not there');
    const exists = existsSync(file) && statSync(file).size > 0;
    if (!mayWrite(dirname(file)) || (existsSync(file) && !mayWrite(file))) throw notWritable(file);
    if (exists) inspect(file);
    const connection = new Database(file, { timeout: 1000 });
    try {
      configure(connection);
      if (!exists) connection.pragma(`application_id = ${APPLICATION_ID}`);
      migrate(connection, options.migrations, file, () => copyBeforeMigration(connection, file, options));
      return connection;
    } catch (error) {
      connection.close();
      throw error;
    }
  });
}

function mayWrite(path: string): boolean {
  try {
    accessSync(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

function configure(connection: Database.Database): void {
  // Held until the file is closed: a second app on the same file is told so, and gives up at once if this one dies.
  connection.pragma('locking_mode = EXCLUSIVE');
  connection.pragma('journal_mode = WAL');
  // Every commit is on the disk before it is answered. With NORMAL, a power cut would lose those since the last checkpoint.
  connection.pragma('synchronous = FULL');
  if (process.platform === 'darwin') {
    // There, only this empties the drive's own cache.
    connection.pragma('fullfsync = ON');
    connection.pragma('checkpoint_fullfsync = ON');
  }
  connection.pragma('foreign_keys = ON');
}

/** Look before touching: read-only, so that a damaged or foreign file stays byte for byte as it is. */
function inspect(file: string): void {
  const header = Buffer.alloc(16);
  const descriptor = openSync(file, 'r');
  readSync(descriptor, header, 0, 16, 0);
  closeSync(descriptor);
  if (header.toString('latin1') !== 'SQLite format 3\0') throw damaged(file);
  const connection = new Database(file, { readonly: true, timeout: 1000 });
  try {
    if (connection.pragma('application_id', { simple: true }) !== APPLICATION_ID)
      throw new Refused(
        'damaged',
        `The file ${file} is not a Foldweek data file. It was left as it is; name another with --data.`,
      );
    if (connection.pragma('quick_check(1)', { simple: true }) !== 'ok') throw damaged(file);
  } finally {
    connection.close();
  }
}

/** Do something with the file; what SQLite and the file system say is told as a sentence. */
export function explained<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw troubleOf(error, file) ?? error;
  }
}
