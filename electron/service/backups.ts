import { copyFile, mkdir, open as openFile, readdir, rename, rm, stat } from 'node:fs/promises';
import { join, parse } from 'node:path';
import type { BackupReason } from '../../core/contract/backup.ts';
import { wallParts } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { tooOld } from '../db/backup-age.ts';
import { backupFolderOf, freeName, lookInto, named, type Backup, type BackupContent } from '../db/backup.ts';
import type { Store } from '../db/open.ts';
import { troubleOf } from '../db/trouble.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { fileStamp, type Clock } from './clock.ts';
import type { Pushes } from './pushes.ts';

/** So often it is looked whether today's backup was made and whether the second folder is there. */
const LOOK_MS = 5 * 60_000;
/** A network drive that does not answer for so long is said to be away. */
const SECOND_MS = 60_000;

interface Deps {
  readonly store: Store;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly log: Log;
}

export type Backups = ReturnType<typeof backupService>;

/** Copies of the data file: made, kept by age, looked into and restored. */
export const backupService = ({ store, clock, pushes, log }: Deps) => {
  const folder = backupFolderOf(store.file);
  let trouble: string | null = null;
  let secondTrouble: string | null = null;
  /** One after the other; each waits for the one before, however that ended. */
  let last: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const mine = last.then(work, work);
    last = mine.catch(() => undefined);
    return mine;
  };
  const settings = () => store.run('read the settings', ({ rows }) => rows.get('settings', 'shop'));
  const second = (): string | null => settings()?.backupFolder ?? null;

  const say = (first: string | null, other: string | null): void => {
    const news = first !== trouble || other !== secondTrouble;
    trouble = first;
    secondTrouble = other;
    if (!news) return;
    for (const text of [first, other]) if (text) log.info(text);
    pushes.send({ kind: 'notice' });
  };

  /** @param spare a backup that is needed just now, however old */
  const makeNow = async (reason: BackupReason, spare?: string): Promise<string> => {
    try {
      await mkdir(folder, { recursive: true });
      const name = freeName(folder, store.file, fileStamp(clock.now()), reason);
      await store.backUp(folder, name);
      say(null, secondTrouble);
      await thin(folder, spare);
      return name;
    } catch (error) {
      const sentence = troubleSentence(error, folder);
      say(sentence, secondTrouble);
      if (!(error instanceof Refused)) log.error('a backup failed', error);
      throw new Refused('refused', sentence);
    }
  };

  const thin = async (from: string, spare?: string): Promise<void> => {
    for (const { name } of tooOld(await backupsIn(from, store.file), clock.now()))
      if (name !== spare) await rm(join(from, name), { force: true });
  };

  /** The second folder gets the newest backup; that it is away, or does not answer, is said and stops nothing. */
  const mirror = async (): Promise<void> => {
    const other = second();
    if (other === null) return say(trouble, null);
    try {
      await inTime(mirrorTo(other));
      say(trouble, null);
    } catch (error) {
      say(trouble, secondSentence(error, other, folder));
    }
  };

  const mirrorTo = async (other: string): Promise<void> => {
    await stat(other);
    const [newest] = await backupsIn(folder, store.file);
    if (!newest || (await backupsIn(other, store.file)).some(({ name }) => name === newest.name)) return;
    await copyWhole(join(folder, newest.name), other, newest.name);
    await thin(other);
  };

  const make = (reason: BackupReason): Promise<string> =>
    inTurn(async () => {
      const name = await makeNow(reason);
      void inTurn(mirror);
      return name;
    });

  /** Where a backup lies, brought here first when only the second folder has it. @throws Refused */
  const here = async (name: string): Promise<string> => {
    const file = join(folder, name);
    const known = named(name, store.file) !== null;
    if (known && (await exists(file))) return file;
    const other = second();
    if (!known || other === null || !(await exists(join(other, name))))
      throw new Refused('refused', `There is no backup “${name}” any more. Nothing was changed.`);
    await mkdir(folder, { recursive: true });
    await copyWhole(join(other, name), folder, name);
    return file;
  };

  const look = async (): Promise<void> => {
    const today = wallParts(instant(clock.now()), settings()?.timeZone ?? 'UTC').date;
    const [newest] = await backupsIn(folder, store.file);
    const day = newest && wallParts(instant(newest.at), settings()?.timeZone ?? 'UTC').date;
    if (day === undefined || day < today) await makeNow('day');
    await mirror();
  };

  return {
    make: () => make('asked'),

    /** One before something large happens; that there is none is said, and keeps nothing from happening. */
    before: (reason: BackupReason): Promise<void> =>
      make(reason).then(
        () => undefined,
        () => undefined,
      ),

    /** What keeps backups from being made, as sentences. */
    troubles: (): string[] => [trouble, secondTrouble].filter((text) => text !== null),

    async read() {
      void inTurn(mirror);
      const other = second();
      const first = await backupsIn(folder, store.file);
      const far = other === null ? [] : await inTime(backupsIn(other, store.file)).catch(() => []);
      return { folder, second: other, troubles: this.troubles(), backups: merged(first, far) };
    },

    preview: async (name: string): Promise<BackupContent> => lookAt(await here(name)),

    /** @returns the name of the backup that holds what was here until now */
    restore: (name: string): Promise<{ kept: string }> =>
      inTurn(async () => {
        const file = await here(name);
        lookAt(file);
        const kept = await makeNow('before-restore', name);
        store.replaceBy(file);
        log.info(`${name} was restored; what was here before is kept as ${kept}.`);
        return { kept };
      }),

    /** One at the start, then one a day while the app runs. @returns the function that stops looking, once what goes on is done */
    watch(): () => Promise<void> {
      const logged = (error: unknown) => {
        if (!(error instanceof Refused)) log.error('looking after the backups failed', error);
      };
      void inTurn(() => makeNow('start').then(mirror)).catch(logged);
      const timer = setInterval(() => void inTurn(look).catch(logged), LOOK_MS);
      timer.unref();
      return async () => {
        clearInterval(timer);
        await last;
      };
    },
  };
};

/** The backups of a data file in a folder, newest first; none where there is no such folder. */
async function backupsIn(folder: string, file: string): Promise<Backup[]> {
  const names = await readdir(folder).catch(() => []);
  const found = names.map(async (name): Promise<Backup | null> => {
    const known = named(name, file);
    const size = known && (await stat(join(folder, name)).catch(() => null))?.size;
    return known && size !== null && size !== undefined ? { name, ...known, bytes: size } : null;
  });
  const backups = (await Promise.all(found)).filter((backup) => backup !== null);
  return backups.sort((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
}

function merged(first: readonly Backup[], second: readonly Backup[]) {
  const far = new Set(second.map(({ name }) => name));
  const near = new Set(first.map(({ name }) => name));
  return [
    ...first.map((backup) => ({ ...backup, where: far.has(backup.name) ? 'both' : 'first' }) as const),
    ...second
      .filter(({ name }) => !near.has(name))
      .map((backup) => ({ ...backup, where: 'second' }) as const),
  ].sort((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
}

/** A file copied byte for byte and made sure of on the disk before it gets its name. */
async function copyWhole(from: string, folder: string, name: string): Promise<void> {
  const unfinished = join(folder, `${name}.part`);
  try {
    await copyFile(from, unfinished);
    const copy = await openFile(unfinished, 'r+');
    await copy.sync().finally(() => copy.close());
    const [wanted, got] = await Promise.all([stat(from), stat(unfinished)]);
    if (wanted.size !== got.size) throw new Error('the copy is shorter than the backup');
    await rename(unfinished, join(folder, name));
  } catch (error) {
    await rm(unfinished, { force: true }).catch(() => undefined);
    throw error;
  }
}

const exists = (file: string): Promise<boolean> =>
  stat(file).then(
    () => true,
    () => false,
  );

function inTime<T>(work: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error('it does not answer')), SECOND_MS);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
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

const codeOf = (error: unknown): string =>
  error instanceof Error ? ('code' in error ? String(error.code) : error.message) : String(error);

const troubleSentence = (error: unknown, folder: string): string =>
  `No backup could be made in ${folder} (${error instanceof Refused ? error.message : codeOf(error)}). Your work is kept in the data file; make room there, or put the folder right, and a backup is made within minutes.`;

const secondSentence = (error: unknown, other: string, folder: string): string =>
  `The second folder for backups, ${other}, got none (${codeOf(error)}). Backups are kept in ${folder}; connect the drive, or name another folder in Settings.`;
