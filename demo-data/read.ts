import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { z } from 'zod';
import { importKinds } from '../core/import/kinds.ts';
import { orderColumns } from '../core/import/order-fields.ts';
import { readFile } from '../core/import/read-file.ts';
import { NO_LOT } from '../core/material/lot.ts';
import { sentence } from '../core/result.ts';
import { rowKinds, type RowKind, type RowOf, type Shop } from '../core/shop/state.ts';
import { toInstant } from '../core/time/wall.ts';
import { instant, type Instant } from '../core/units/brand.ts';
import { parseLength, type LengthUnits } from '../core/units/length.ts';

/**
 * A demo folder's files as rows. The files keep what a person would write: wall-clock times, lengths in the shop's
 * units, no revisions. Anything that does not fit is a bug in our own data, so it throws.
 */

/** How the folder's dates and lengths are read: by the shop's zone and units, dates moved to the present. */
interface Reading {
  readonly timeZone: string;
  readonly units: LengthUnits;
  readonly move: (date: string) => string;
}

/** Rows of a JSON file, each given revision 0 and checked against its kind's schema. */
export function readRows<K extends RowKind>(
  folder: string,
  file: string,
  kind: K,
  edit: (row: Record<string, unknown>) => Record<string, unknown> = (row) => row,
): RowOf<K>[] {
  const raw = z.array(z.record(z.string(), z.unknown())).parse(readJson(folder, file));
  return byId(raw.map((row) => rowKinds[kind].parse({ ...edit(row), revision: 0 }) as RowOf<K>));
}

const readJson = (folder: string, file: string): unknown =>
  JSON.parse(readFileSync(join(folder, file), 'utf8'));

const byId = <T extends { readonly id: string }>(rows: T[]): T[] =>
  rows.sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));

/** A CSV file's rows, each cell by its column's name. */
export function readTable(folder: string, file: string): ((column: string) => string)[] {
  const text = readFileSync(join(folder, file), 'utf8');
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  if (errors[0]) throw new Error(`${file}, row ${errors[0].row}: ${errors[0].message}`);
  return data.map((row) => (column) => {
    const cell = row[column];
    if (cell === undefined) throw new Error(`${file} has no column "${column}"`);
    return cell;
  });
}

/** The Monday that the folder's dates are written around. */
export const readAnchor = (folder: string): string =>
  z.strictObject({ monday: z.iso.date() }).parse(readJson(folder, 'anchor.json')).monday;

export const readSettings = (folder: string): RowOf<'settings'> =>
  rowKinds.settings.parse({ ...z.looseObject({}).parse(readJson(folder, 'settings.json')), revision: 0 });

/** A cell like "2026-12-04 14:00" with its date moved; an empty one stays empty. */
const moveCell = (cell: string, move: Reading['move']): string =>
  cell === '' ? '' : `${move(cell.slice(0, 10))}${cell.slice(10)}`;

/** The instant of such a cell on the shop's wall, moved. */
function readInstant(cell: string, { timeZone, move }: Reading): Instant {
  const [date = '', clock = ''] = moveCell(cell, move).split(' ');
  return toInstant(date, clock, timeZone);
}

function readLength(cell: string, { units }: Reading): number {
  const length = parseLength(cell, { units, decimals: 'point', settled: true });
  if (!length.ok) throw new Error(sentence(length.issues));
  return length.value;
}

/** What seldom changes: everything but orders, lines, plan and records. */
export type Catalogue = Pick<
  Shop,
  'material' | 'colour' | 'sheet' | 'part' | 'calendar' | 'machine' | 'tool' | 'downtime' | 'absence'
>;

export function readCatalogue(folder: string, reading: Reading): Catalogue {
  const { move } = reading;
  return {
    material: readRows(folder, 'materials.json', 'material'),
    colour: readRows(folder, 'colours.json', 'colour'),
    sheet: readRows(folder, 'sheets.json', 'sheet', (row) => ({ ...NO_LOT, ...row })),
    part: readRows(folder, 'parts.json', 'part'),
    calendar: readRows(folder, 'calendars.json', 'calendar').map((calendar) => ({
      ...calendar,
      closures: calendar.closures.map((c) => ({ ...c, from: move(c.from), to: move(c.to) })),
      overtime: calendar.overtime.map((o) => ({ ...o, date: move(o.date) })),
    })),
    machine: readRows(folder, 'machines.json', 'machine'),
    downtime: readRows(folder, 'downtimes.json', 'downtime', (row) => ({
      ...row,
      from: readInstant(z.string().parse(row['from']), reading),
      to: readInstant(z.string().parse(row['to']), reading),
    })),
    tool: readRows(folder, 'tools.json', 'tool'),
    absence: [],
  };
}

/**
 * Work orders and lines of a file in the import format, read by the import's own rules but for dates in the past.
 * @param shop the shop the file belongs to, without orders yet
 */
export function readOrders(
  folder: string,
  file: string,
  shop: Shop,
  move: Reading['move'],
): Pick<Shop, 'order' | 'line'> {
  const rows = readTable(folder, file).map((cell) =>
    orderColumns.map((column) =>
      column === 'not before' || column === 'due' ? moveCell(cell(column), move) : cell(column),
    ),
  );
  const grid = [orderColumns, ...rows].map((cells, index) => ({
    row: index + 1,
    cells: cells.map((text) => ({ text })),
  }));
  const { reading, command } = readFile(importKinds.orders, {
    shop: { ...shop, record: [] },
    fileName: file,
    grid: { rows: grid, notes: [], sheets: [] },
    answers: {},
    now: instant(0),
    past: { order: () => false, line: () => false, record: () => null },
  });
  const { wrong, waiting } = reading.counts;
  if (wrong + waiting > 0 || command?.do !== 'orders.import')
    throw new Error(`${file}: ${JSON.stringify(reading.questions)} ${JSON.stringify(reading.rows[0])}`);
  const inOrder = [...command.lines].sort((a, b) =>
    a.orderId === b.orderId ? a.number - b.number : a.orderId < b.orderId ? -1 : 1,
  );
  return { order: byId([...command.orders]), line: inOrder };
}

/** Operations done on the floor. */
export function readRecords(folder: string, file: string, reading: Reading): Shop['record'] {
  const records = readTable(folder, file).map((cell) =>
    rowKinds.record.parse({
      id: cell('operation'),
      machineId: cell('machine'),
      partId: cell('part'),
      materialId: cell('material'),
      gauge: cell('gauge'),
      colourId: cell('colour'),
      lengthMm: readLength(cell('length'), reading),
      quantity: Number(cell('quantity')),
      good: Number(cell('good')),
      scrapped: Number(cell('scrapped')),
      start: readInstant(cell('start'), reading),
      end: readInstant(cell('end'), reading),
      changeoverSeconds: null,
      who: [],
      pauses: [],
      estimatedSeconds: Number(cell('estimate s')),
      revision: 0,
    }),
  );
  return byId(records);
}
