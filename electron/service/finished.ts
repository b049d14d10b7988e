import type { FileCheck } from '../../core/import/file-check.ts';
import { checkFinishedRows } from '../../core/import/finished-rows.ts';
import type { Store } from '../db/open.ts';
import { valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import { readTable, type Table } from './csv.ts';
import type { EditService } from './edit.ts';
import { readShop } from './shop.ts';

/** Finished operations from a CSV file: look, fix, take. */
export const finishedService = (store: Store, clock: Clock, edit: EditService) => {
  const check = (fileName: string, table: Table, notes: readonly string[] = []) => {
    const found = store.run('check finished operations', (work) =>
      valueOf(
        checkFinishedRows(
          readShop(work),
          table.header,
          table.rows,
          (id) => work.rows.get('record', id),
          clock.now(),
        ),
      ),
    );
    const { issues, ready, known, records } = found;
    const checked: FileCheck = {
      fileName,
      ...table,
      issues,
      ready,
      known,
      notes: [...notes, ...found.notes],
    };
    return { checked, records };
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
      const { checked, records } = check(fileName, table);
      if (records.length > 0) edit.apply({ do: 'records.import', fileName, records });
      const open = new Set(checked.issues.map((p) => p.row));
      const rest = { header: table.header, rows: table.rows.filter((r) => open.has(r.row)) };
      return { operations: records.length, left: check(fileName, rest).checked };
    },
  };
};
