import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { fileKind } from '../shop/file-layout.ts';
import { namedKind } from '../shop/other-name.ts';

/** How a file was read: what a person looks at before anything of it is taken. */

/** How one column is read. */
const columnReading = z.strictObject({
  /** Its heading; "column 3" without one, "Length (2)" where one like it stands before. */
  title: z.string(),
  /** The field that it is; null: none. */
  field: z.string().nullable(),
  /** It goes to the note. */
  toNote: z.boolean(),
  /** How that is known. `alike` and `content` are proposals: please check. */
  by: z.enum(['heading', 'alike', 'content', 'remembered', 'said']).nullable(),
  /** Of lengths and thicknesses: the unit of bare figures, and whether the file or a person named it, or it is the shop's own. */
  unit: z.string().nullable(),
  unitFrom: z.enum(['heading', 'said', 'remembered', 'shop']).nullable(),
  decimals: z.enum(['point', 'comma']).nullable(),
  dates: z.enum(['dmy', 'mdy', 'ymd']).nullable(),
  /** The first cells that hold something. */
  examples: z.array(z.string()),
});
export type ColumnReading = DeepReadonly<z.infer<typeof columnReading>>;

const meaning = z.strictObject({ when: z.enum(['point', 'comma', 'dmy', 'mdy', 'ymd']), means: z.string() });
const choice = z.strictObject({ id: z.string(), name: z.string() });
const asked = {
  id: z.string(),
  /** The question as a sentence. */
  words: z.string(),
  /** How many rows wait for it. */
  rows: z.int(),
};

/** What must be said before the rows that wait for it can be read; each is asked once for the whole file. */
const question = z.discriminatedUnion('is', [
  /** Which column is a field that the file must have: one of these, or one value for every row. */
  z.strictObject({ is: z.literal('column'), field: z.string(), titles: z.array(z.string()), ...asked }),
  /** Whether decimals stand behind a point or a comma. */
  z.strictObject({
    is: z.literal('decimals'),
    field: z.string(),
    title: z.string(),
    row: z.int(),
    text: z.string(),
    meanings: z.array(meaning),
    ...asked,
  }),
  /** The order of day, month and year. */
  z.strictObject({
    is: z.literal('dates'),
    field: z.string(),
    title: z.string(),
    row: z.int(),
    text: z.string(),
    meanings: z.array(meaning),
    ...asked,
  }),
  /** The unit of bare figures: fractions stand among them, and the shop thinks in millimetres. */
  z.strictObject({
    is: z.literal('units'),
    field: z.string(),
    title: z.string(),
    row: z.int(),
    text: z.string(),
    meanings: z.array(z.strictObject({ when: z.enum(['mm', 'in']), means: z.string() })),
    ...asked,
  }),
  /** What of the shop a text stands for. `more`: beside the nearest, anything else of the shop may be it. */
  z.strictObject({
    is: z.literal('same'),
    what: namedKind,
    field: z.string(),
    text: z.string(),
    choices: z.array(choice),
    ...asked,
  }),
]);
export type Question = DeepReadonly<z.infer<typeof question>>;

const cellReading = z.strictObject({
  field: z.string(),
  /** As the file has it, or as it was typed again. */
  text: z.string(),
  /** As it is understood; '' where it is not. */
  read: z.string(),
  /** What stands in the shop, where the row changes it. */
  was: z.string().optional(),
  /** Why it cannot be taken, and what to do: whole sentences. */
  issue: z.string().optional(),
  /** It is taken as it is once somebody says that it is meant (`accept`). */
  acceptable: z.literal(true).optional(),
});
export type CellReading = DeepReadonly<z.infer<typeof cellReading>>;

export const rowState = z.enum(['wrong', 'waiting', 'changed', 'new', 'known']);
export type RowState = z.infer<typeof rowState>;

const rowReading = z.strictObject({
  /** As counted in the file. */
  row: z.int(),
  state: rowState,
  /** What it becomes or changes, in the words of the shop: "line 1042/2"; '' where it becomes nothing. */
  subject: z.string(),
  /** Of the row as a whole: what to know of it. Whole sentences or ''. */
  words: z.string(),
  cells: z.array(cellReading),
});
export type RowReading = DeepReadonly<z.infer<typeof rowReading>>;

export const reading = z.strictObject({
  kind: fileKind,
  fileName: z.string(),
  /** The sheets of a spreadsheet. */
  sheets: z.array(z.string()),
  /** The row that names the columns. */
  header: z.int(),
  columns: z.array(columnReading),
  questions: z.array(question),
  /** What was noticed about the file, what was left out, what was taken for granted. Whole sentences. */
  notes: z.array(z.string()),
  /** Wrong rows first, then those that wait, change, are new, are known; each in the file's order. */
  rows: z.array(rowReading),
  counts: z.strictObject({
    wrong: z.int(),
    waiting: z.int(),
    changed: z.int(),
    new: z.int(),
    known: z.int(),
  }),
  /** What the shop has of the file's orders that the file lacks. It stays as it is. */
  missing: z.array(z.strictObject({ id: z.string(), words: z.string() })),
});
export type Reading = DeepReadonly<z.infer<typeof reading>>;
