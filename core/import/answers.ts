import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { MOST } from '../input-limits.ts';
import { layout } from '../shop/file-layout.ts';
import { namedKind } from '../shop/other-name.ts';

const text = z.string().max(MOST.shortCellCharacters);
const row = z.int().min(1).max(MOST.lines);

/**
 * What people say about a file: everything that is asked, and what they set right. The same file with the same answers is
 * read the same again; nothing is kept between two readings.
 */
export const answers = z
  .strictObject({
    /** The sheet of a spreadsheet that is read; the first without it. */
    sheet: z.string().max(MOST.fileNameCharacters),
    /** The row that names the columns. */
    header: row,
    /** Which column is which field, with its unit, order of dates and decimal mark. A column of '': the file has none of it. */
    ...layout.shape,
    /** What a field says in every row, where the file has no column of it. */
    every: z.record(z.string().max(40), text),
    /** What texts stand for that the shop does not know. */
    same: z.array(z.strictObject({ what: namedKind, text: text.min(1), is: text.min(1) })).max(MOST.rows),
    /** Cells typed again. */
    cells: z
      .array(z.strictObject({ row, field: z.string().max(40), text: z.string().max(MOST.cellCharacters) }))
      .max(MOST.rows),
    /** Rows that stay out. */
    leaveOut: z.array(row).max(MOST.rows),
    /** Rows that are meant as they are, though something in them is unlikely: a due date that is past. */
    accept: z.array(row).max(MOST.rows),
  })
  .partial();
export type Answers = DeepReadonly<z.infer<typeof answers>>;
