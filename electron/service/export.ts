import { mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join, parse } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { toCsv, type CsvCell } from '../../core/csv.ts';
import { wholeShop, type WholeShop } from '../../core/import/whole-shop.ts';
import { faultOf, MOST } from '../../core/input-limits.ts';
import { formatClock, twoFigures, wallParts } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import { syncFolder, writeWhole } from '../atomic-file.ts';
import type { Store, Work } from '../db/open.ts';
import { columnsOf, instantColumns, tableNames, type TableName, type TableRows } from '../db/whole.ts';
import { Refused } from '../refused.ts';
import { fileStamp, type Clock } from './clock.ts';

/**
 * Write everything beside the data file: `exports/NAME STAMP/everything.json`, from which an empty shop can be filled, and
 * a CSV file a table for people and spreadsheets. The folder has its name once all of it is written.
 * @throws Refused
 */
export function exportAll(store: Store, clock: Clock, version: string): { folder: string; rows: number } {
  const tables = store.run(
    'read everything',
    ({ whole }) =>
      Object.fromEntries(tableNames.map((table) => [table, whole.read(table)])) as Record<
        TableName,
        TableRows[]
      >,
  );
  const zone = tables.settings[0]?.timeZone;
  if (typeof zone !== 'string')
    throw new Refused('unavailable', 'This data file is new; there is nothing to export yet.');
  const at = clock.now();
  const folder = join(dirname(store.file), 'exports', `${parse(store.file).name} ${fileStamp(at)}`);
  const unfinished = `${folder}.part`;
  try {
    rmSync(unfinished, { recursive: true, force: true });
    mkdirSync(unfinished, { recursive: true });
    const whole = { format: 'foldweek-export/1', version, at, tables };
    writeWhole(join(unfinished, 'everything.json'), JSON.stringify(whole));
    for (const table of tableNames)
      writeWhole(join(unfinished, `${table}.csv`), csvOf(table, tables[table], zone));
    rmSync(folder, { recursive: true, force: true });
    renameSync(unfinished, folder);
    syncFolder(dirname(folder));
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    if (!(error instanceof Refused) && !(error instanceof Error && 'code' in error)) throw error;
    throw new Refused(
      'refused',
      `The export could not be written into ${folder}: the disk may be full, or this user may not write there. Nothing was changed; make room, then export again.`,
    );
  }
  return { folder, rows: tableNames.reduce((sum, table) => sum + tables[table].length, 0) };
}

/** One table for a spreadsheet: instants on the shop's clock with their year, lists and objects as JSON text. */
function csvOf(table: TableName, rows: readonly TableRows[], zone: string): string {
  const columns = columnsOf(table);
  const cell = (column: string, value: unknown): CsvCell => {
    if (value === null || value === undefined) return null;
    if (typeof value === 'number' && instantColumns.has(column)) return wallText(value, zone);
    if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
    return JSON.stringify(value);
  };
  return toCsv([columns, ...rows.map((row) => columns.map((column) => cell(column, row[column])))]);
}

/** "2026-12-01 07:00:00" */
function wallText(at: number, zone: string): string {
  const { date, second } = wallParts(instant(at), zone);
  return `${date} ${formatClock(instant(at), zone)}:${twoFigures(second)}`;
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
