import type { FileCheck } from '../../core/import/file-check.ts';
import { checkOrderRows } from '../../core/import/order-rows.ts';
import type { Store } from '../db/open.ts';
import { valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import { readTable, type Table } from './csv.ts';
import type { EditService } from './edit.ts';
import { readShop } from './shop.ts';

/** Work-order lines from a CSV file: look, fix, take. */
export const importService = (store: Store, clock: Clock, edit: EditService) => {
  const check = (fileName: string, table: Table, notes: readonly string[] = []) => {
    const shop = store.run('read the shop', readShop);
    const found = valueOf(checkOrderRows(shop, table.header, table.rows, clock.now()));
    const { issues, ready, known } = found;
    const checked: FileCheck = {
      fileName,
      ...table,
      issues,
      ready,
      known,
      notes: [...notes, ...found.notes],
    };
    return { checked, orders: found.orders, lines: found.lines };
  };

  return {
    /** Read a file's bytes and check every row; nothing is stored. */
    check(fileName: string, bytes: Uint8Array): FileCheck {
      const { table, notes } = readTable(fileName, bytes);
      return check(fileName, table, notes).checked;
    },

    recheck: (fileName: string, table: Table): FileCheck => check(fileName, table).checked,

    /** Take the rows that are ready as one step of the history; the others come back. */
    take(fileName: string, table: Table) {
      const { checked, orders, lines } = check(fileName, table);
      const known = store.run('read the shop', readShop).order;
      const urgent = new Set([...known, ...orders].filter((order) => order.rush).map(({ id }) => id));
      const rush = lines.filter(({ orderId }) => urgent.has(orderId)).map(({ id }) => id);
      if (lines.length > 0) edit.apply({ do: 'orders.import', fileName, orders, lines });
      const open = new Set(checked.issues.map((p) => p.row));
      const rest = { header: table.header, rows: table.rows.filter((r) => open.has(r.row)) };
      return { orders: orders.length, lines: lines.length, rush, left: check(fileName, rest).checked };
    },
  };
};
