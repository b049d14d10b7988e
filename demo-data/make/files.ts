import { join } from 'node:path';
import Papa from 'papaparse';
import { orderColumns } from '../../core/import/order-fields.ts';
import { NO_LOT } from '../../core/material/lot.ts';
import { rowKinds } from '../../core/shop/state.ts';
import { readAnchor, readCatalogue, readRows, readSettings } from '../read.ts';
import { finishedColumns, finishedRow, halfYear } from './half-year.ts';
import { brokenOrders, nextWeekOrders, rushOrder } from './imports.ts';
import type { OrderRow } from './orders.ts';
import { partRows } from './parts.ts';
import { mulberry32 } from './rng.ts';
import { sheetRows } from './sheets.ts';
import { openOrders } from './week.ts';

/** Path below demo-data → text. */
export type Files = Readonly<Record<string, string>>;

/** Each kind of file has a seed of its own, so that a change to one leaves the others as they are. */
const SEED = { sheets: 48, orders: 4101, finished: 26, nextWeek: 4161 } as const;

const json = (rows: readonly unknown[]): string =>
  `[\n${rows.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n]\n`;

const csv = (columns: readonly string[], rows: readonly object[]): string =>
  `${Papa.unparse([...rows], { columns: [...columns], newline: '\n' })}\n`;

const ordersCsv = (rows: readonly OrderRow[]): string => csv(orderColumns, rows);

/**
 * The generated files of the shop folder, from the hand-written ones beside them.
 * @param root the demo-data folder
 */
export function shopFiles(root: string): Files {
  const folder = join(root, 'shop');
  const settings = readSettings(folder);
  const monday = readAnchor(folder);
  const { timeZone, units } = settings;
  const byHand = readCatalogue(folder, { timeZone, units, move: (date) => date });

  const parts = partRows();
  const sheets = sheetRows(byHand.material, byHand.colour, mulberry32(SEED.sheets));
  const orders = openOrders(monday, mulberry32(SEED.orders));
  const catalogue = {
    ...byHand,
    part: parts.map((row) => rowKinds.part.parse({ ...row, revision: 0 })),
    sheet: sheets.map((row) => rowKinds.sheet.parse({ ...NO_LOT, ...row, revision: 0 })),
  };
  const waiting = orders.filter((row) => String(row.due) < monday);
  const finished = halfYear(settings, catalogue, monday, waiting, mulberry32(SEED.finished));
  return {
    'shop/parts.json': json(parts),
    'shop/sheets.json': json(sheets),
    'shop/orders.csv': ordersCsv(orders),
    'shop/finished.csv': csv(
      finishedColumns,
      finished.map((record) => finishedRow(record, timeZone)),
    ),
  };
}

/** A row that ends after its fourth cell. */
const CUT_SHORT = '4222,1,Nine Sparrows Roofing,drip-edge\n';

/**
 * The files to try the import with.
 * @param monday the week they are dated for
 */
export function importFiles(root: string, monday: string): Files {
  const colours = readRows(join(root, 'shop'), 'colours.json', 'colour');
  const names = new Map(colours.map((colour) => [colour.id, colour.name]));
  return {
    'next-week.csv': ordersCsv(nextWeekOrders(monday, names, mulberry32(SEED.nextWeek))),
    'rush.csv': ordersCsv(rushOrder(monday)),
    'broken.csv': `${ordersCsv(brokenOrders(monday))}${CUT_SHORT}`,
  };
}
