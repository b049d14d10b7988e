import { mkdir, readdir, rm, stat } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { BackupReason } from '../../core/contract/backup.ts';
import { startOfDay } from '../../core/time/wall.ts';
import { tooOld } from '../db/backup-age.ts';
import { backupFolderOf, freeName, lookInto, named, type BackupContent } from '../db/backup.ts';
import type { Store } from '../db/open.ts';
import { troubleOf } from '../db/trouble.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { backupsIn, copyWhole, exists, FarFolder, inTime, isSilence, merged } from './backup-folder.ts';
import { fileStamp, type Clock } from './clock.ts';
import { oneByOne } from './one-by-one.ts';
import type { Pushes } from './pushes.ts';
import { isWorkingDay } from './working-day.ts';

/** The first page is answered before the backup of the start is made. */
const START_MS = 3_000;
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
  /** What the data file had kept when its newest backup was made; null: none was made since the start. */
  #keptThen: number | null = null;
  readonly #far = new FarFolder();
  readonly #turn = oneByOne();
  /** What goes to the second folder, in a row of its own: a slow network holds up no backup. */
  readonly #farTurn = oneByOne();

  constructor(deps: Deps) {
    this.#deps = deps;
    this.#folder = backupFolderOf(deps.store.file);
  }

  /** Because somebody asked for one. @returns its name @throws Refused */
  make(reason: BackupReason = 'asked'): Promise<string> {
    return this.#turn.take(async () => {
      const name = await this.#makeNow(reason);
      void this.#mirror();
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
    void this.#mirror();
    const { file } = this.#deps.store;
    const second = this.#second();
    const near = await backupsIn(this.#folder, file);
    const far =
      second === null ? [] : await this.#far.ask(() => backupsIn(second, file), LIST_MS).catch(() => []);
    return { folder: this.#folder, second, troubles: this.troubles(), backups: merged(near, far) };
  }

  /** What a backup holds. @throws Refused when it is damaged or gone */
  async preview(name: string): Promise<BackupContent> {
    return lookAt(await this.#here(name));
  }

  /** Go on with a backup. @returns the name of the one that holds what was here until now @throws Refused */
  async restore(name: string): Promise<{ kept: string }> {
    // Brought here before its turn comes, so that no other backup waits for a network.
    await this.#here(name);
    return this.#turn.take(async () => {
      const file = await this.#here(name);
      lookAt(file);
      const kept = await this.#makeNow('before-restore', name);
      this.#deps.store.replaceBy(file);
      this.#deps.log.info(`${name} was restored; what was here before is kept as ${kept}.`);
      return { kept };
    });
  }

  /**
   * One at the start, then one each working day while the app runs.
   * @returns stops looking, once what goes on is done; the one of the start is made by then
   */
  watch(): () => Promise<void> {
    const logged = (error: unknown) => {
      if (!(error instanceof Refused)) this.#deps.log.error('looking after the backups failed', error);
    };
    let started = false;
    const start = (): void => {
      if (!started) void this.#turn.take(() => this.#begin()).catch(logged);
      started = true;
    };
    const waiting = setTimeout(start, START_MS).unref();
    const timer = setInterval(() => void this.look().catch(logged), LOOK_MS).unref();
    return async () => {
      clearTimeout(waiting);
      clearInterval(timer);
      start();
      await inTime(Promise.all([this.#turn.done(), this.#farTurn.done()]), STOP_MS).catch(() => undefined);
    };
  }

  async #begin(): Promise<void> {
    await this.#tidy();
    if (this.#settings()) await this.#makeNow('start');
    void this.#mirror();
  }

  /** Today's backup, if there is none yet and one is due. @throws Refused when it cannot be made */
  look(): Promise<void> {
    return this.#turn.take(async () => {
      const [newest] = await backupsIn(this.#folder, this.#deps.store.file);
      if (this.#isDue(newest?.at ?? null)) await this.#makeNow('day');
      void this.#mirror();
    });
  }

  /**
   * One is due on each working day, on the shop's clock, and on any other day when something was kept since.
   * @param newest when the newest backup was made; null: there is none
   */
  #isDue(newest: number | null): boolean {
    const { store, clock } = this.#deps;
    const zone = this.#settings()?.timeZone;
    // A new file holds nothing yet.
    if (zone === undefined) return false;
    const today = startOfDay(clock.now(), zone);
    if (newest !== null && newest >= today) return false;
    return this.#keptThen !== store.kept || isWorkingDay(store, today, zone);
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
      const { kept } = store;
      await store.backUp(this.#folder, name);
      this.#keptThen = kept;
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
  #mirror(): Promise<void> {
    return this.#farTurn.take(async () => {
      const second = this.#second();
      try {
        if (second !== null) await this.#far.ask(() => this.#mirrorTo(second), SECOND_MS);
        this.#say(this.#trouble, null);
      } catch (error) {
        this.#say(this.#trouble, secondSentence(error, second ?? '', this.#folder));
      }
    });
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
    const second = known ? this.#second() : null;
    if (second === null || !(await this.#bring(second, name)))
      throw new Refused('refused', `There is no backup “${name}” any more. Nothing was changed.`);
    return file;
  }

  /** A backup from the second folder, copied into the first. @returns whether there is one @throws Refused when it does not answer */
  async #bring(second: string, name: string): Promise<boolean> {
    const fetch = async (): Promise<boolean> => {
      if (!(await exists(join(second, name)))) return false;
      await mkdir(this.#folder, { recursive: true });
      await copyWhole(join(second, name), this.#folder, name);
      return true;
    };
    try {
      return await this.#far.ask(fetch, SECOND_MS);
    } catch (error) {
      throw new Refused('unavailable', farSentence(error, second, name));
    }
  }

  /** What a process that was ended in the middle of a backup left. */
  async #tidy(): Promise<void> {
    const start = `${parse(this.#deps.store.file).name} `;
    for (const name of await readdir(this.#folder).catch(() => []))
      if (name.startsWith(start) && /\.db\.part(-journal|-wal|-shm)?$/.test(name))
        await rm(join(this.#folder, name), { force: true });
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

const farSentence = (error: unknown, second: string, name: string): string =>
  `The second folder for backups, ${second}, ${isSilence(error) ? 'does not answer' : `could not be read: ${said(error)}`}; only it has the backup “${name}”. Nothing was changed and your work goes on; connect the drive and try again, or choose a backup that lies in the first folder.`;

const troubleSentence = (error: unknown, folder: string): string =>
  `No backup could be made in ${folder}: ${error instanceof Refused ? error.message : `${said(error)}.`} Your work is kept in the data file; make room there, or put the folder right, and a backup is made within minutes.`;
