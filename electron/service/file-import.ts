import { checkFinishedRows } from '../../core/import/finished-rows.ts';
import type { FileCheck, RowFindings } from '../../core/import/file-check.ts';
import { checkOrderRows } from '../../core/import/order-rows.ts';
import { valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import { readTable, type Table } from './csv.ts';
import type { EditService } from './edit.ts';
import type { LivingShop } from './living-shop.ts';

/**
 * A CSV file: look, fix, take.
 * @param findingsOf checks every row; nothing is stored
 * @param keep stores what the ready rows say as one step of the history, and counts it
 */
function fileImport<Found extends RowFindings, Taken extends object>(
  findingsOf: (table: Table) => Found,
  keep: (fileName: string, found: Found, by: string) => Taken,
) {
  const check = (fileName: string, table: Table, notes: readonly string[] = []): FileCheck => {
    const { issues, ready, known, notes: own } = findingsOf(table);
    return { fileName, ...table, issues, ready, known, notes: [...notes, ...own] };
  };

  return {
    /** Read a file's bytes and check every row; nothing is stored. */
    check(fileName: string, bytes: Uint8Array): FileCheck {
      const { table, notes } = readTable(fileName, bytes);
      return check(fileName, table, notes);
    },

    recheck: (fileName: string, table: Table): FileCheck => check(fileName, table),

    /** Take the rows that are ready; the others come back. */
    take(fileName: string, table: Table, by = ''): Taken & { left: FileCheck } {
      const found = findingsOf(table);
      const taken = keep(fileName, found, by);
      const open = new Set(found.issues.map((p) => p.row));
      const rest = { header: table.header, rows: table.rows.filter((r) => open.has(r.row)) };
      return { ...taken, left: check(fileName, rest) };
    },
  };
}

/** Work-order lines from a CSV file. */
export const orderImport = (living: LivingShop, clock: Clock, edit: EditService) =>
  fileImport(
    ({ header, rows }) => valueOf(checkOrderRows(living.shop, header, rows, clock.now())),
    (fileName, { orders, lines }, by) => {
      const known = living.shop.order;
      const urgent = new Set([...known, ...orders].filter((order) => order.rush).map(({ id }) => id));
      const rush = lines.filter(({ orderId }) => urgent.has(orderId)).map(({ id }) => id);
      const stepId =
        lines.length > 0 ? edit.apply({ do: 'orders.import', fileName, orders, lines }, by).stepId : null;
      return { orders: orders.length, lines: lines.length, rush, stepId };
    },
  );

/** Finished operations from a CSV file. */
export const finishedImport = (living: LivingShop, clock: Clock, edit: EditService) =>
  fileImport(
    ({ header, rows }) =>
      living.store.run('check finished operations', (work) =>
        valueOf(
          checkFinishedRows(living.shop, header, rows, (id) => work.rows.get('record', id), clock.now()),
        ),
      ),
    (fileName, { records }, by) => {
      const factId =
        records.length > 0 ? edit.apply({ do: 'records.import', fileName, records }, by).factId : null;
      return { operations: records.length, factId };
    },
  );
