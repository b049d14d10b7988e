import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { BackupReason } from '../../core/contract/backup.ts';
import { wallParts } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { tooOld } from '../db/backup-age.ts';
import { backupFolderOf, freeName, lookInto, named, type BackupContent } from '../db/backup.ts';
import type { Store } from '../db/open.ts';
import { troubleOf } from '../db/trouble.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { backupsIn, copyWhole, exists, inTime, merged, NO_ANSWER } from './backup-folder.ts';
import { fileStamp, type Clock } from './clock.ts';
import type { Pushes } from './pushes.ts';

/** So often it is looked whether today's backup was made and whether the second folder is there. */
const LOOK_MS = 5 * 60_000;
/** A network drive that does not answer for so long is said to be away. */
const SECOND_MS = 60_000;
/** Nor does a list of backups wait longer for it. */
const LIST_MS = 3_000;
/** The app does not wait longer for a backup when it is closed; what is left of it goes at the next start. */
const STOP_MS = 5_000;

interface Deps {
  readonly store: Store;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly log: Log;
}

/** Copies of the data file: made, kept by age, looked into and restored. */
export class Backups {
  readonly #deps: Deps;
  readonly #folder: string;
  #trouble: string | null = null;
  #secondTrouble: string | null = null;
  /** Requests to the second folder that have had no answer in time, and none since. */
  #unanswered = 0;
  /** One after the other; each waits for the one before, however that ended. */
  #last: Promise<unknown> = Promise.resolve();

  constructor(deps: Deps) {
    this.#deps = deps;
    this.#folder = backupFolderOf(deps.store.file);
  }

  /** Because somebody asked for one. @returns its name @throws Refused */
  make(reason: BackupReason = 'asked'): Promise<string> {
    return this.#inTurn(async () => {
      const name = await this.#makeNow(reason);
      void this.#inTurn(() => this.#mirror());
      return name;
    });
  }

  /** One before something large happens; that there is none is said, and keeps nothing from happening. */
  async before(reason: BackupReason): Promise<void> {
    await this.make(reason).catch(() => undefined);
  }

  /** What keeps backups from being made, as sentences. */
  troubles(): string[] {
    return [this.#trouble, this.#secondTrouble].filter((text) => text !== null);
  }

  async read() {
    void this.#inTurn(() => this.#mirror());
    const { file } = this.#deps.store;
    const second = this.#second();
    const near = await backupsIn(this.#folder, file);
    const far =
      second === null ? [] : await this.#far(() => backupsIn(second, file), LIST_MS).catch(() => []);
    return { folder: this.#folder, second, troubles: this.troubles(), backups: merged(near, far) };
  }

  /** What a backup holds. @throws Refused when it is damaged or gone */
  async preview(name: string): Promise<BackupContent> {
    return lookAt(await this.#here(name));
  }

  /** Go on with a backup. @returns the name of the one that holds what was here until now @throws Refused */
  restore(name: string): Promise<{ kept: string }> {
    return this.#inTurn(async () => {
      const file = await this.#here(name);
      lookAt(file);
      const kept = await this.#makeNow('before-restore', name);
      this.#deps.store.replaceBy(file);
      this.#deps.log.info(`${name} was restored; what was here before is kept as ${kept}.`);
      return { kept };
    });
  }

  /** One at the start, then one a day while the app runs. @returns stops looking, once what goes on is done */
  watch(): () => Promise<void> {
    const logged = (error: unknown) => {
      if (!(error instanceof Refused)) this.#deps.log.error('looking after the backups failed', error);
    };
    const begin = async (): Promise<void> => {
      await this.#tidy();
      if (this.#settings()) await this.#makeNow('start');
      await this.#mirror();
    };
    void this.#inTurn(begin).catch(logged);
    const timer = setInterval(() => void this.#inTurn(() => this.#look()).catch(logged), LOOK_MS);
    timer.unref();
    return async () => {
      clearInterval(timer);
      await inTime(this.#last, STOP_MS).catch(() => undefined);
    };
  }

  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#last.then(work, work);
    this.#last = mine.catch(() => undefined);
    return mine;
  }

  #settings() {
    return this.#deps.store.run('read the settings', ({ rows }) => rows.get('settings', 'shop'));
  }

  #second(): string | null {
    return this.#settings()?.backupFolder ?? null;
  }

  /** @param spare a backup that is needed just now, however old */
  async #makeNow(reason: BackupReason, spare?: string): Promise<string> {
    const { store, clock, log } = this.#deps;
    try {
      await mkdir(this.#folder, { recursive: true });
      const name = freeName(this.#folder, store.file, fileStamp(clock.now()), reason);
      await store.backUp(this.#folder, name);
      this.#say(null, this.#secondTrouble);
      await this.#thin(this.#folder, spare);
      return name;
    } catch (error) {
      const sentence = troubleSentence(error, this.#folder);
      this.#say(sentence, this.#secondTrouble);
      if (!(error instanceof Refused) && whyOf(error) === null) log.error('a backup failed', error);
      throw new Refused('refused', sentence);
    }
  }

  async #thin(folder: string, spare?: string): Promise<void> {
    const { store, clock } = this.#deps;
    for (const { name } of tooOld(await backupsIn(folder, store.file), clock.now()))
      if (name !== spare) await rm(join(folder, name), { force: true });
  }

  /** The second folder gets the newest backup; that it is away, or does not answer, is said and stops nothing. */
  async #mirror(): Promise<void> {
    const second = this.#second();
    try {
      if (second !== null) await this.#far(() => this.#mirrorTo(second), SECOND_MS);
      this.#say(this.#trouble, null);
    } catch (error) {
      this.#say(this.#trouble, secondSentence(error, second ?? '', this.#folder));
    }
  }

  /** Something with the second folder. While it has not answered the last time, it is not asked again: that would hold up other files too. */
  async #far<T>(work: () => Promise<T>, ms: number): Promise<T> {
    if (this.#unanswered > 0) throw new Error(NO_ANSWER);
    const going = work();
    try {
      return await inTime(going, ms);
    } catch (error) {
      if (error instanceof Error && error.message === NO_ANSWER) {
        this.#unanswered += 1;
        const answered = () => void (this.#unanswered -= 1);
        going.then(answered, answered);
      }
      throw error;
    }
  }

  async #mirrorTo(second: string): Promise<void> {
    const { file } = this.#deps.store;
    await stat(second);
    const [newest] = await backupsIn(this.#folder, file);
    if (!newest || (await backupsIn(second, file)).some(({ name }) => name === newest.name)) return;
    await copyWhole(join(this.#folder, newest.name), second, newest.name);
    await this.#thin(second);
  }

  /** Where a backup lies, brought here first when only the second folder has it. @throws Refused */
  async #here(name: string): Promise<string> {
    const file = join(this.#folder, name);
    const known = named(name, this.#deps.store.file) !== null;
    if (known && (await exists(file))) return file;
    const second = this.#second();
    if (!known || second === null || !(await exists(join(second, name))))
      throw new Refused('refused', `There is no backup “${name}” any more. Nothing was changed.`);
    await mkdir(this.#folder, { recursive: true });
    await copyWhole(join(second, name), this.#folder, name);
    return file;
  }

  /** What a process that was ended in the middle of a backup left. */
  async #tidy(): Promise<void> {
    const start = `${parse(this.#deps.store.file).name} `;
    for (const name of await readdir(this.#folder).catch(() => []))
      if (name.startsWith(start) && /\.db\.part(-journal|-wal|-shm)?$/.test(name))
        await rm(join(this.#folder, name), { force: true });
  }

  /** Today's backup, if there is none yet, on the shop's clock. */
  async #look(): Promise<void> {
    const { store, clock } = this.#deps;
    const zone = this.#settings()?.timeZone;
    // A new file holds nothing yet.
    if (zone === undefined) return;
    const dayOf = (at: number): string => wallParts(instant(at), zone).date;
    const [newest] = await backupsIn(this.#folder, store.file);
    if (!newest || dayOf(newest.at) < dayOf(clock.now())) await this.#makeNow('day');
    await this.#mirror();
  }

  #say(trouble: string | null, secondTrouble: string | null): void {
    const news = trouble !== this.#trouble || secondTrouble !== this.#secondTrouble;
    this.#trouble = trouble;
    this.#secondTrouble = secondTrouble;
    if (!news) return;
    for (const text of this.troubles()) this.#deps.log.info(text);
    this.#deps.pushes.send({ kind: 'notice' });
  }
}

function lookAt(file: string): BackupContent {
  try {
    return lookInto(file);
  } catch (error) {
    if (!(error instanceof Refused) && troubleOf(error, file) === null) throw error;
    throw new Refused(
      'refused',
      `The backup ${parse(file).base} is damaged. Nothing was changed; choose another one.`,
    );
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'it is not there',
  ENOTDIR: 'it is no folder',
  EACCES: 'this user may not write it',
  EPERM: 'this user may not write it',
  EROFS: 'it may only be read',
  ENOSPC: 'its disk is full',
  SQLITE_FULL: 'its disk is full',
};

/** Why, in words; null: nobody thought of that. */
function whyOf(error: unknown): string | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? null;
}

const said = (error: unknown): string =>
  whyOf(error) ?? (error instanceof Error ? error.message : String(error));

const secondSentence = (error: unknown, second: string, folder: string): string =>
  `The second folder for backups, ${second}, got none: ${said(error)}. Backups are kept in ${folder}; connect the drive, or name another folder in Settings.`;

const troubleSentence = (error: unknown, folder: string): string =>
  `No backup could be made in ${folder}: ${error instanceof Refused ? error.message : `${said(error)}.`} Your work is kept in the data file; make room there, or put the folder right, and a backup is made within minutes.`;
