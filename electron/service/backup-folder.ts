import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { copyFile, open as openFile, readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { named, type Backup } from '../db/backup.ts';

/** Folders of backups, read and written without making anybody wait: one of them may be on a network that is down. */

/** The backups of a data file in a folder, newest first; none where there is no such folder. */
export async function backupsIn(folder: string, file: string): Promise<Backup[]> {
  const names = await readdir(folder).catch(() => []);
  const found = names.map(async (name): Promise<Backup | null> => {
    const known = named(name, file);
    const size = known && (await stat(join(folder, name)).catch(() => null))?.size;
    return known && size !== null && size !== undefined ? { name, ...known, bytes: size } : null;
  });
  const backups = (await Promise.all(found)).filter((backup) => backup !== null);
  return backups.sort((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
}

/** Both folders' as one list. */
export function merged(first: readonly Backup[], second: readonly Backup[]) {
  const far = new Set(second.map(({ name }) => name));
  const near = new Set(first.map(({ name }) => name));
  return [
    ...first.map((backup) => ({ ...backup, where: far.has(backup.name) ? 'both' : 'first' }) as const),
    ...second
      .filter(({ name }) => !near.has(name))
      .map((backup) => ({ ...backup, where: 'second' }) as const),
  ].sort((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
}

/** A file copied byte for byte, read back, and made sure of on the disk before it gets its name. */
export async function copyWhole(from: string, folder: string, name: string): Promise<void> {
  const unfinished = join(folder, `${name}.part`);
  try {
    await copyFile(from, unfinished);
    const copy = await openFile(unfinished, 'r+');
    await copy.sync().finally(() => copy.close());
    if ((await digestOf(from)) !== (await digestOf(unfinished)))
      throw new Error('the copy does not read back as the backup');
    await rename(unfinished, join(folder, name));
  } catch (error) {
    await rm(unfinished, { force: true }).catch(() => undefined);
    throw error;
  }
}

export const exists = (file: string): Promise<boolean> =>
  stat(file).then(
    () => true,
    () => false,
  );

const NO_ANSWER = 'it does not answer';

/** @throws when it takes longer */
export function inTime<T>(work: Promise<T>, ms: number): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(NO_ANSWER)), ms);
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}

/** A folder that may be on a network: nothing that is asked of it is waited for without an end. */
export class FarFolder {
  /** Requests that have had no answer in time, and none since. */
  #unanswered = 0;

  /**
   * While it has not answered the last time, it is not asked again: that would hold up other files too.
   * @throws what went wrong, or that it does not answer; what was asked then goes on, and may still come to its end
   */
  async ask<T>(work: () => Promise<T>, ms: number): Promise<T> {
    if (this.#unanswered > 0) throw new Error(NO_ANSWER);
    const going = work();
    try {
      return await inTime(going, ms);
    } catch (error) {
      if (isSilence(error)) {
        this.#unanswered += 1;
        const answered = () => void (this.#unanswered -= 1);
        going.then(answered, answered);
      }
      throw error;
    }
  }
}

export const isSilence = (error: unknown): boolean => error instanceof Error && error.message === NO_ANSWER;

async function digestOf(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file)) hash.update(chunk as Uint8Array);
  return hash.digest('hex');
}
