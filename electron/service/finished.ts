import type { CheckedImport } from '../../core/contract/import.ts';
import { checkFinishedRows } from '../../core/shop/finished-rows.ts';
import type { Store } from '../db/open.ts';
import { valueOf } from '../refused.ts';
import type { Clock } from './clock.ts';
import { readTable } from './csv.ts';
import type { EditService } from './edit.ts';
import { readShop } from './shop.ts';

/** Finished operations from a CSV file: look, take. */
export const finishedService = (store: Store, clock: Clock, edit: EditService) => {
  const check = (fileName: string, bytes: Uint8Array) => {
    const { table, notes } = readTable(fileName, bytes);
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
    const { problems, ready, known, records } = found;
    const checked: CheckedImport = {
      fileName,
      ...table,
      problems,
      ready,
      known,
      notes: [...notes, ...found.notes],
    };
    return { checked, records };
  };

  return {
    /** Read a file's bytes and check every row; nothing is stored. */
    check: (fileName: string, bytes: Uint8Array): CheckedImport => check(fileName, bytes).checked,

    /** Take the rows that are ready as one step of the history; the file's state after comes back. */
    take(fileName: string, bytes: Uint8Array) {
      const { records } = check(fileName, bytes);
      if (records.length > 0) edit.apply({ do: 'records.import', fileName, records });
      return { operations: records.length, left: check(fileName, bytes).checked };
    },
  };
};
