import { copyFileSync, existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import type Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { syncFile, syncFolder } from '../atomic-file.ts';
import type { Log } from '../log.ts';
import { archiveIn, type Archive } from './archive.ts';
import { cutAnswersIn, type CutAnswersKept } from './cut-answers.ts';
import { backUp, type BackupContent } from './backup.ts';
import { connect, explained, type OpenOptions } from './connection.ts';
import { doneIn } from './done.ts';
import { factsIn, type Facts } from './facts.ts';
import { plansIn, type Plans } from './plans.ts';
import { rowsIn, type Rows } from './rows.ts';
import { stepsIn, type Steps } from './steps.ts';
import { Unreachable } from './trouble.ts';
import { wholeIn, type Whole } from './whole.ts';

/** What a use case sees of the data file. */
export interface Work {
  readonly rows: Rows;
  readonly archive: Archive;
  readonly cutAnswers: CutAnswersKept;
  readonly steps: Steps;
  readonly facts: Facts;
  readonly plans: Plans;
  readonly done: ReturnType<typeof doneIn>;
  readonly whole: Whole;
}

/** An open data file. Every use case is one transaction: all of it is kept, or nothing. */
export interface Store {
  readonly file: string;
  /** Grows with each use case that changed something: tells whether one that went wrong had been kept. */
  readonly kept: number;
  /** @param what names the use case in the log. @throws Refused, or the bug */
  run<T>(what: string, work: (work: Work) => T): T;
  /** Copy the file as it is now into a folder, beside the work that goes on. @throws Refused */
  backUp(folder: string, name: string): Promise<BackupContent>;
  /** Go on with another file's content in this one's place. @throws Refused; the file is then as it was */
  replaceBy(other: string): void;
  /** Hear that the file holds other rows than before: a backup was restored, or the drive came back. */
  onReplaced(listener: () => void): void;
  close(): void;
}

const SLOW_MS = 20;

/**
 * Open a data file, or make it when there is none (or an empty one), and bring it to this version.
 * Only one process has a file open at a time. A file that cannot be used is left as it is.
 * @throws Refused with a sentence: damaged, not ours, from a newer version, open elsewhere, not writable, not there
 */
export function openStore(file: string, options: OpenOptions): Store {
  return new FileStore(file, options);
}

interface Opened {
  readonly connection: Database.Database;
  readonly work: Work;
  /** How many rows it has written. */
  readonly changes: () => number;
  /** Which file of the disk it is. */
  readonly identity: string | null;
}

class FileStore implements Store {
  readonly file: string;
  kept = 0;
  readonly #options: OpenOptions;
  readonly #listeners = new Set<() => void>();
  #opened: Opened;
  /** Connections to a file that is no longer in its place. Closing one would clear away what now lies there. */
  readonly #left: Database.Database[] = [];
  #broken = false;

  constructor(file: string, options: OpenOptions) {
    this.file = file;
    this.#options = options;
    this.#opened = this.#open();
  }

  run<T>(what: string, use: (work: Work) => T): T {
    const { connection, work, changes } = this.#present();
    const startedAt = performance.now();
    try {
      return explained(this.file, () => {
        const before = changes();
        const result = connection.transaction(() => {
          // Rows may be written in any order; references are checked when the step ends.
          connection.pragma('defer_foreign_keys = ON');
          const made = use(work);
          if (changes() !== before) this.#mustBeThere();
          return made;
        })();
        if (changes() !== before) this.kept += 1;
        return result;
      });
    } catch (error) {
      this.#broken ||= error instanceof Unreachable;
      throw error;
    } finally {
      logSlow(what, performance.now() - startedAt, this.#options.log);
    }
  }

  async backUp(folder: string, name: string): Promise<BackupContent> {
    return backUp(this.#present().connection, folder, name);
  }

  replaceBy(other: string): void {
    const aside = `${this.file}.aside`;
    const coming = `${this.file}.part`;
    try {
      explained(this.file, () => {
        copyFileSync(other, coming);
        syncFile(coming);
        this.#present().connection.close();
        // However this ends, the file that is there is opened by the next who needs it.
        this.#broken = true;
        // Left where the disk was too full to take it in: it belongs to this file and to no other.
        if (existsSync(`${this.file}-wal`)) throw new Unreachable(this.file, 'it could not be closed');
        copyFileSync(this.file, aside);
        // At every moment one whole file bears the name.
        renameSync(coming, this.file);
        syncFolder(dirname(this.file));
        this.#opened = this.#open();
        this.#broken = false;
      });
    } catch (error) {
      if (existsSync(aside)) renameSync(aside, this.file);
      throw error;
    } finally {
      for (const left of [aside, coming]) rmSync(left, { force: true });
    }
    this.#tell();
  }

  onReplaced(listener: () => void): void {
    this.#listeners.add(listener);
  }

  close(): void {
    this.#opened.connection.close();
  }

  #open(): Opened {
    const connection = connect(this.file, this.#options);
    const db = drizzle(connection);
    const work = {
      rows: rowsIn(db),
      archive: archiveIn(db),
      cutAnswers: cutAnswersIn(db),
      steps: stepsIn(db),
      facts: factsIn(db),
      plans: plansIn(db),
      done: doneIn(db),
      whole: wholeIn(db),
    };
    const total = connection.prepare<[], number>('select total_changes()').pluck();
    return { connection, work, changes: () => total.get() ?? 0, identity: identityOf(this.file) };
  }

  /** The file as it lies there now: opened anew when it was away in between. @throws Refused while it is away */
  #present(): Opened {
    const identity = identityOf(this.file);
    if (identity === null) throw new Unreachable(this.file, 'it is not in its folder');
    if (identity === this.#opened.identity && !this.#broken) return this.#opened;
    if (identity === this.#opened.identity) this.#opened.connection.close();
    else this.#left.push(this.#opened.connection);
    this.#opened = this.#open();
    this.#broken = false;
    this.#options.log.info(`${this.file} was away and was opened again.`);
    this.#tell();
    return this.#opened;
  }

  /** What is written into a file that is no longer in its place would be lost. */
  #mustBeThere(): void {
    if (identityOf(this.file) !== this.#opened.identity)
      throw new Unreachable(this.file, 'it is not in its folder');
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** Null when there is none. On Windows an open file cannot be taken away, and some drives there number files anew. */
function identityOf(file: string): string | null {
  const found = statSync(file, { bigint: true, throwIfNoEntry: false });
  if (!found) return null;
  return process.platform === 'win32' ? 'there' : `${found.dev}:${found.ino}`;
}

function logSlow(what: string, ms: number, log: Log): void {
  if (ms > SLOW_MS) log.info(`${what}: ${ms.toFixed(0)} ms in the data file`);
}
