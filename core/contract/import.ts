import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { lineId } from '../shop/order.ts';
import { call } from './call.ts';

/** One wrong cell: which row (as counted in the file, header is row 1), which column, what stood there, why not. */
export const cellIssue = z.strictObject({
  row: z.int(),
  column: z.string(),
  value: z.string(),
  reason: z.string(),
});
export type CellIssue = DeepReadonly<z.infer<typeof cellIssue>>;

/** A file as read: cells as text, in the file's own order. Rows shorter than the header are filled with ''. */
const table = z.strictObject({
  header: z.array(z.string()).max(100),
  rows: z.array(z.strictObject({ row: z.int(), cells: z.array(z.string()) })).max(20_000),
});

const checked = z.strictObject({
  fileName: z.string(),
  ...table.shape,
  issues: z.array(cellIssue),
  /** Row numbers that can be taken now. */
  ready: z.array(z.int()),
  /** Row numbers that stand in the shop already, word for word: nothing to add. */
  known: z.array(z.int()),
  /** What was noticed about the file: encoding, separator, columns left out. Whole sentences. */
  notes: z.array(z.string()),
});
export type CheckedImport = DeepReadonly<z.infer<typeof checked>>;

const file = z.strictObject({ fileName: z.string().max(300), base64: z.string().max(40_000_000) });
const asMended = z.strictObject({ fileName: z.string().max(300), ...table.shape });

/** Read a CSV file of work-order lines and check every row; nothing is stored. */
export const importCheck = call('import.check', file, checked);

/** Check again after cells were mended on screen. */
export const importRecheck = call('import.recheck', asMended, checked);

/** Take the good rows as one step of the history; the bad ones come back to be mended. */
export const importTake = call(
  'import.take',
  asMended,
  z.strictObject({
    orders: z.int(),
    lines: z.int(),
    /** Those of the lines whose work order is marked rush. */
    rush: z.array(lineId),
    left: checked,
  }),
);

/** Read a CSV file of finished operations (core/import/finished-rows.ts) and check every row; nothing is stored. */
export const importFinishedCheck = call('import.finished.check', file, checked);

/** Check such a file again after cells were mended on screen. */
export const importFinishedRecheck = call('import.finished.recheck', asMended, checked);

/** Take the good rows of such a file as one step of the history; the bad ones come back to be mended. */
export const importFinishedTake = call(
  'import.finished.take',
  asMended,
  z.strictObject({ operations: z.int(), left: checked }),
);
