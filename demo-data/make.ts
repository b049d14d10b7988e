import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { readAnchor, readCatalogue, readRows, readSettings } from './read.ts';
import { finishedColumns, finishedRow, halfYear } from './make/half-year.ts';
import { mulberry32 } from './make/rng.ts';
import { partRows } from './make/parts.ts';
import { sheetRows } from './make/sheets.ts';
import { orderColumns } from './make/orders.ts';
import { openOrders } from './make/week.ts';

/**
 * Writes the generated files of the demo shop (README.md says which are written by hand):
 *   node demo-data/make.ts
 */

const here = fileURLToPath(new URL('.', import.meta.url));
const folder = join(here, 'shop');
const write = (name: string, text: string): void => writeFileSync(join(here, name), text);
const json = (rows: readonly unknown[]): string =>
  `[\n${rows.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n]\n`;
const csv = (columns: readonly string[], rows: readonly object[]): string =>
  `${Papa.unparse([...rows], { columns: [...columns], newline: '\n' })}\n`;

const settings = readSettings(folder);
const monday = readAnchor(folder);
write('shop/parts.json', json(partRows()));

const materials = readRows(folder, 'materials.json', 'material');
const colours = readRows(folder, 'colours.json', 'colour');
write('shop/sheets.json', json(sheetRows(materials, colours, mulberry32(48))));

const orders = openOrders(monday, mulberry32(4101));
write('shop/orders.csv', csv(orderColumns, orders));

const reading = { timeZone: settings.timeZone, units: settings.units, shiftDays: 0 };
const catalogue = readCatalogue(folder, reading);
const waiting = orders.filter((row) => String(row.due) < monday);
const finished = halfYear(settings, catalogue, monday, waiting, mulberry32(26));
write(
  'shop/finished.csv',
  csv(
    finishedColumns,
    finished.map((record) => finishedRow(record, settings.timeZone)),
  ),
);
