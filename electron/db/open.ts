import { closeSync, existsSync, mkdirSync, openSync, readSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { APPLICATION_ID, migrate } from './migrate.ts';
import { rowsIn, type Rows } from './rows.ts';
import { stepsIn, type Steps } from './steps.ts';
import { damaged, troubleOf } from './trouble.ts';

/** What a use case sees of the data file. */
export interface Work {
  readonly rows: Rows;
  readonly steps: Steps;
}

/** An open data file. Every use case is one transaction: all of it is kept, or nothing. */
export interface Store {
  readonly file: string;
  /** @param what names the use case in the log. @throws Refused, or the bug */
  run<T>(what: string, work: (work: Work) => T): T;
  close(): void;
}

interface StoreOptions {
  /** The folder with the SQL files. */
  readonly migrations: string;
  /** Names a backup copy: "2026-11-25T09-22-11". */
  readonly stamp: string;
  readonly log: Log;
}

const SLOW_MS = 20;

/**
 * Open a data file, or make it when there is none (or an empty one), and bring it to this version.
 * Only one process has a file open at a time. A file that cannot be used is left as it is.
 * @throws Refused with a sentence: damaged, not ours, from a newer version, open elsewhere, not writable
 */
export function openStore(file: string, options: StoreOptions): Store {
  return explained(file, () => {
    mkdirSync(dirname(file), { recursive: true });
    const exists = existsSync(file) && statSync(file).size > 0;
    if (exists) inspect(file);
    const connection = new Database(file, { timeout: 1000 });
    try {
      configure(connection);
      if (!exists) connection.pragma(`application_id = ${APPLICATION_ID}`);
      migrate(connection, options.migrations, file, () =>
        backUp(connection, `${file}.${options.stamp}.bak`, options.log),
      );
      return storeOf(connection, file, options.log);
    } catch (error) {
      connection.close();
      throw error;
    }
  });
}

function configure(connection: Database.Database): void {
  // Held until the file is closed: a second app on the same file is told so, and gives up at once if this one dies.
  connection.pragma('locking_mode = EXCLUSIVE');
  connection.pragma('journal_mode = WAL');
  connection.pragma('synchronous = NORMAL');
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

function backUp(connection: Database.Database, copy: string, log: Log): void {
  connection.prepare('VACUUM INTO ?').run(copy);
  log.info(`A copy of the data file was kept as ${copy} before bringing it to this version.`);
}

function storeOf(connection: Database.Database, file: string, log: Log): Store {
  const db = drizzle(connection);
  const work: Work = { rows: rowsIn(db), steps: stepsIn(db) };
  return {
    file,
    run(what, use) {
      const startedAt = performance.now();
      try {
        return explained(file, () =>
          connection.transaction(() => {
            // Rows may be written in any order; references are checked when the step ends.
            connection.pragma('defer_foreign_keys = ON');
            return use(work);
          })(),
        );
      } finally {
        const ms = performance.now() - startedAt;
        if (ms > SLOW_MS) log.info(`${what}: ${ms.toFixed(0)} ms in the data file`);
      }
    },
    close: () => connection.close(),
  };
}

function explained<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw troubleOf(error, file) ?? error;
  }
}
