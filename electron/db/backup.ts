import { copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { backupReason, type BackupReason } from '../../core/contract/backup.ts';
import { syncFile, syncFolder } from '../atomic-file.ts';
import type { Log } from '../log.ts';
import { APPLICATION_ID } from './migrate.ts';
import { damaged } from './trouble.ts';

export interface Backup {
  /** Its file's name in the folder. */
  readonly name: string;
  /** Epoch seconds. */
  readonly at: number;
  readonly reason: BackupReason;
  readonly bytes: number;
}

/** What a backup holds, to choose by. */
export interface BackupContent {
  readonly orders: number;
  readonly lines: number;
  /** When something was last entered, epoch seconds; null: nothing ever was. */
  readonly newest: number | null;
}

const backupReasons = backupReason.options;

/** Beside the data file. */
export const backupFolderOf = (file: string): string => join(dirname(file), 'backups');

const endOf = (reason: BackupReason): string => ` ${reason}.db`;

/** A name that no backup in the folder bears: "foldweek 2026-11-25T09-22-11 start.db". @param stamp in UTC */
export function freeName(folder: string, file: string, stamp: string, reason: BackupReason): string {
  const start = `${parse(file).name} ${stamp}`;
  for (let n = 1; ; n++) {
    const name = `${start}${n === 1 ? '' : `.${n}`}${endOf(reason)}`;
    if (!existsSync(join(folder, name))) return name;
  }
}

/** When and why the backup of that name of a data file was made; null: it is none. */
export function named(name: string, file: string): Pick<Backup, 'at' | 'reason'> | null {
  const start = parse(file).name;
  const reason = backupReasons.find((one) => name.endsWith(endOf(one)));
  if (!reason || !name.startsWith(`${start} `)) return null;
  const stamp = name.slice(start.length + 1, -endOf(reason).length);
  const [, day, hours, minutes, seconds] =
    /^(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)(?:\.\d+)?$/.exec(stamp) ?? [];
  const at = Date.parse(`${day}T${hours}:${minutes}:${seconds}Z`);
  return Number.isNaN(at) ? null : { at: at / 1000, reason };
}

/**
 * Copy an open data file as it is at one moment, beside the work that goes on; look whether the copy can be used; only
 * then it gets its name.
 * @throws what SQLite or the file system says; no unfinished copy is left
 */
export async function backUp(
  source: Database.Database,
  folder: string,
  name: string,
): Promise<BackupContent> {
  const unfinished = join(folder, `${name}.part`);
  try {
    await source.backup(unfinished);
    const content = await verify(unfinished);
    syncFile(unfinished);
    renameSync(unfinished, join(folder, name));
    syncFolder(folder);
    return content;
  } catch (error) {
    removeCopy(unfinished);
    throw error;
  }
}

function removeCopy(file: string): void {
  for (const end of ['', '-journal', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
}

/** Before an older file is changed: nothing else goes on then, so all of it at once. */
export function copyBeforeMigration(
  connection: Database.Database,
  file: string,
  { stamp, log }: { readonly stamp: string; readonly log: Log },
): void {
  const folder = backupFolderOf(file);
  mkdirSync(folder, { recursive: true });
  const name = freeName(folder, file, stamp, 'before-update');
  const unfinished = join(folder, `${name}.part`);
  removeCopy(unfinished);
  connection.prepare('VACUUM INTO ?').run(unfinished);
  const copy = new Database(unfinished);
  try {
    if (copy.pragma('quick_check(1)', { simple: true }) !== 'ok') throw damaged(unfinished);
  } finally {
    copy.close();
  }
  syncFile(unfinished);
  renameSync(unfinished, join(folder, name));
  syncFolder(folder);
  log.info(`A copy of the data file was kept as ${join(folder, name)} before bringing it to this version.`);
}

/**
 * Open a copy, check every table of it and count what it holds, table by table so that others get their turn. It is then a
 * single file, without the two that SQLite keeps beside an open one.
 * @throws when it cannot be used
 */
async function verify(file: string): Promise<BackupContent> {
  const copy = new Database(file);
  try {
    copy.pragma('journal_mode = DELETE');
    if (copy.pragma('application_id', { simple: true }) !== APPLICATION_ID) throw damaged(file);
    for (const table of tablesOf(copy)) {
      if (copy.pragma(`quick_check("${table}")`, { simple: true }) !== 'ok') throw damaged(file);
      await turn();
    }
    return contentOf(copy);
  } finally {
    copy.close();
  }
}

/** What a backup holds. @throws when it is damaged */
export function lookInto(file: string): BackupContent {
  const copy = new Database(file, { readonly: true, fileMustExist: true });
  try {
    if (copy.pragma('application_id', { simple: true }) !== APPLICATION_ID) throw damaged(file);
    if (copy.pragma('quick_check(1)', { simple: true }) !== 'ok') throw damaged(file);
    return contentOf(copy);
  } finally {
    copy.close();
  }
}

const tablesOf = (connection: Database.Database): string[] =>
  connection
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];

/** An older file has no log of the floor yet. */
function contentOf(connection: Database.Database): BackupContent {
  const number = (query: string) => connection.prepare(query).pluck().get() as number | null;
  const last = [
    number('select max(at) from step'),
    tablesOf(connection).includes('fact') ? number('select max(keptAt) from fact') : null,
  ].filter((at) => at !== null);
  return {
    orders: number('select count(*) from "order"') ?? 0,
    lines: number('select count(*) from line') ?? 0,
    newest: last.length > 0 ? Math.max(...last) : null,
  };
}

/** The newest backup of a data file that can be used; null: there is none. */
export function newestUsable(file: string): Pick<Backup, 'name' | 'at'> | null {
  const folder = backupFolderOf(file);
  const found = existsSync(folder) ? readdirSync(folder) : [];
  const backups = found.flatMap((name) => {
    const known = named(name, file);
    return known ? [{ name, at: known.at }] : [];
  });
  const newestFirst = backups.sort((a, b) => b.at - a.at || (a.name < b.name ? 1 : -1));
  return newestFirst.find(({ name }) => isUsable(join(folder, name))) ?? null;
}

function isUsable(file: string): boolean {
  try {
    lookInto(file);
    return true;
  } catch {
    // Whatever is wrong with it: the one before may do.
    return false;
  }
}

/**
 * Put a backup in the place of a damaged file, which is kept beside it. Nobody may have it open.
 * @returns where the damaged one is now
 */
export function takePlace(file: string, backup: string, stamp: string): string {
  const kept = `${file}.damaged-${stamp}`;
  const coming = `${file}.part`;
  copyFileSync(join(backupFolderOf(file), backup), coming);
  syncFile(coming);
  for (const end of ['', '-wal', '-shm'])
    if (existsSync(`${file}${end}`)) renameSync(`${file}${end}`, `${kept}${end}`);
  renameSync(coming, file);
  syncFolder(dirname(file));
  return kept;
}
