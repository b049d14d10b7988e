import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { MOST } from '../input-limits.ts';

/** One wrong cell: which row (as counted in the file, header is row 1), which column, what stood there, why not. */
const cellIssue = z.strictObject({
  row: z.int(),
  column: z.string(),
  value: z.string(),
  reason: z.string(),
});
export type CellIssue = DeepReadonly<z.infer<typeof cellIssue>>;

const cell = z.string().max(MOST.cellCharacters);

/** A file as read: cells as text, in the file's own order. Rows shorter than the header are filled with ''. */
export const table = z.strictObject({
  header: z.array(cell).max(MOST.columns),
  rows: z.array(z.strictObject({ row: z.int(), cells: z.array(cell).max(MOST.columns) })).max(MOST.rows),
});

export const fileCheck = z.strictObject({
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
export type FileCheck = DeepReadonly<z.infer<typeof fileCheck>>;

/** What a check of a table's rows finds, whatever the rows are of. */
export type RowFindings = Pick<FileCheck, 'issues' | 'ready' | 'known' | 'notes'>;
