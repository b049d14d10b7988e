import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { gunzipSync } from 'node:zlib';
import { toCsv, type CsvCell } from '../../core/csv.ts';
import { wholeShop, type WholeShop } from '../../core/import/whole-shop.ts';
import { faultOf, MOST } from '../../core/input-limits.ts';
import { offsetAt } from '../../core/time/wall.ts';
import { syncFolder } from '../atomic-file.ts';
import type { Store, Work } from '../db/open.ts';
import {
  columnsOf,
  instantColumns,
  lookThrough,
  tableNames,
  type TableName,
  type TableRows,
  type Whole,
} from '../db/whole.ts';
import { Refused } from '../refused.ts';
import { fileStamp, type Clock } from './clock.ts';

/** Rows that are written at once; then others get their turn. */
const PAGE = 500;
const COPY = 'copy.db';

/**
 * Write everything beside the data file: `exports/NAME STAMP/everything.json`, from which an empty shop can be filled, and
 * a CSV file a table for people and spreadsheets. It is read off a backup made for it, so that it is the shop at one moment
 * and the work goes on beside. The folder has its name once all of it is written.
 * @throws Refused
 */
export async function exportAll(
  store: Store,
  clock: Clock,
  version: string,
): Promise<{ folder: string; rows: number }> {
  const zone = store.run('read the settings', ({ rows }) => rows.get('settings', 'shop'))?.timeZone;
  if (zone === undefined)
    throw new Refused('unavailable', 'This data file is new; there is nothing to export yet.');
  const at = clock.now();
  const folder = join(dirname(store.file), 'exports', `${parse(store.file).name} ${fileStamp(at)}`);
  const unfinished = `${folder}.part`;
  try {
    rmSync(unfinished, { recursive: true, force: true });
    mkdirSync(unfinished, { recursive: true });
    await store.backUp(unfinished, COPY);
    const head = `{"format":"foldweek-export/1","version":${JSON.stringify(version)},"at":${at},"tables":{`;
    const rows = await lookThrough(join(unfinished, COPY), (whole) =>
      writeTables(whole, unfinished, head, wallClock(zone)),
    );
    rmSync(join(unfinished, COPY));
    rmSync(folder, { recursive: true, force: true });
    renameSync(unfinished, folder);
    syncFolder(dirname(folder));
    return { folder, rows };
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    if (!(error instanceof Refused) && !(error instanceof Error && 'code' in error)) throw error;
    throw new Refused(
      'refused',
      `The export could not be written into ${folder}: the disk may be full, or this user may not write there. Nothing was changed; make room, then export again.`,
    );
  }
}

/** @param head opens the JSON text @returns how many rows were written */
async function writeTables(whole: Whole, folder: string, head: string, wall: WallText): Promise<number> {
  const json = openSync(join(folder, 'everything.json'), 'w');
  let total = 0;
  try {
    writeSync(json, head);
    for (const table of tableNames) {
      const csv = openSync(join(folder, `${table}.csv`), 'w');
      try {
        writeSync(csv, toCsv([columnsOf(table)]));
        writeSync(json, `${table === tableNames[0] ? '' : ','}${JSON.stringify(table)}:[`);
        let written = 0;
        for (const page of whole.pages(table, PAGE)) {
          writeSync(json, `${written === 0 ? '' : ','}${page.map((row) => JSON.stringify(row)).join()}`);
          writeSync(csv, toCsv(page.map((row) => cellsOf(table, row, wall))));
          written += page.length;
          await turn();
        }
        writeSync(json, ']');
        total += written;
        fsyncSync(csv);
      } finally {
        closeSync(csv);
      }
    }
    writeSync(json, '}}');
    fsyncSync(json);
  } finally {
    closeSync(json);
  }
  syncFolder(folder);
  return total;
}

type WallText = (at: number) => string;

/** A row for a spreadsheet: instants on the shop's clock with their year, lists and objects as JSON text. */
const cellsOf = (table: TableName, row: TableRows, wall: WallText): CsvCell[] =>
  columnsOf(table).map((column) => {
    const value = row[column];
    if (value === null || value === undefined) return null;
    if (typeof value === 'number') return instantColumns.has(column) ? wall(value) : value;
    return typeof value === 'string' || typeof value === 'boolean' ? value : JSON.stringify(value);
  });

/** Zones change their offset on a quarter of an hour. */
const QUARTER = 900;

/** Tells instants as "2026-12-01 07:00:00"; a zone's offset is looked up once a quarter of an hour. */
function wallClock(zone: string): WallText {
  const offsets = new Map<number, number>();
  return (at) => {
    const quarter = Math.floor(at / QUARTER);
    const offset = offsets.get(quarter) ?? offsetAt(quarter * QUARTER, zone);
    offsets.set(quarter, offset);
    return new Date((at + offset) * 1000).toISOString().slice(0, 19).replace('T', ' ');
  };
}

/** What an `everything.json` holds, every row checked. @param gzipped as the screen sends it @throws Refused with the first thing wrong */
export function readExport(fileName: string, gzipped: Uint8Array): WholeShop {
  const refuse = (why: string) => new Refused('bad-input', `${fileName} ${why} Nothing was taken from it.`);
  const raw = unpacked(gzipped);
  if (raw === undefined)
    throw refuse('is no export of Foldweek, or was cut short. Choose the file everything.json of an export.');
  const fault = faultOf(raw, { values: Infinity, longTexts: ['content'] });
  if (fault) throw refuse(`cannot be read: ${fault}.`);
  const parsed = wholeShop.safeParse(raw);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  const [tables, table, row, ...field] = (issue?.path ?? []).map(String);
  if (tables !== 'tables' || table === undefined)
    throw refuse(
      'is no export of Foldweek that this version can read. Choose the file everything.json of an export.',
    );
  const where = row === undefined ? table : `${table}, row ${Number(row) + 1}, ${field.join('.') || 'row'}`;
  throw refuse(`cannot be read: ${where}: ${issue?.message ?? 'unreadable'}.`);
}

function unpacked(gzipped: Uint8Array): unknown {
  try {
    return JSON.parse(gunzipSync(gzipped, { maxOutputLength: MOST.exportBytes }).toString('utf8')) as unknown;
  } catch {
    return undefined;
  }
}

/** Put everything of an export into a fresh data file. */
export function putExport({ whole }: Work, { tables }: WholeShop): void {
  for (const table of tableNames) whole.put(table, tables[table] as readonly TableRows[]);
}
