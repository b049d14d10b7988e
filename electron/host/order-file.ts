import { existsSync, readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { applyCommand } from '../../core/edit/apply.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import { checkOrderRows } from '../../core/import/order-rows.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import { Refused, valueOf } from '../refused.ts';
import { readTable } from '../service/csv.ts';

/** A shop with the orders of a file added, as the command line does it: all of them or none. */
export interface WithOrders {
  readonly shop: Shop;
  /** The lines that came from the file. */
  readonly lineIds: readonly string[];
}

/** @throws Refused naming every wrong cell, or saying that there is nothing new in the file */
export function addOrdersOf(file: string, shop: Shop, now: Instant): WithOrders {
  const fileName = basename(file);
  const { table } = readTable(fileName, readBytes(file));
  const { issues, orders, lines, known } = valueOf(checkOrderRows(shop, table.header, table.rows, now));
  if (issues.length > 0)
    throw new Refused(
      'bad-input',
      [
        `${fileName} has ${issues.length} wrong ${issues.length === 1 ? 'cell' : 'cells'}; nothing was planned. Fix the file, then try again.`,
        ...issues.map(({ row, column, reason }) => `  row ${row}, ${column}: ${reason}`),
      ].join('\n'),
    );
  if (lines.length === 0)
    throw new Refused(
      'bad-input',
      known.length > 0
        ? `Every line of ${fileName} already exists in the shop; nothing was planned. Name a file with new lines.`
        : `${fileName} has a header but no orders. Add one row a line.`,
    );
  const { changes } = valueOf(applyCommand(shop, { do: 'orders.import', fileName, orders, lines }));
  return { shop: withChanges(shop, changes), lineIds: lines.map(({ id }) => id) };
}

function readBytes(file: string): Uint8Array {
  if (!existsSync(file)) throw new Refused('bad-input', `There is no file ${file}.`);
  try {
    return readFileSync(file);
  } catch (error) {
    if (error instanceof Error && 'code' in error)
      throw new Refused(
        'bad-input',
        `The file ${file} cannot be read (${String(error.code)}). Name a CSV file.`,
      );
    throw error;
  }
}
