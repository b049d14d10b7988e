import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { revision } from '../fields.ts';
import { MOST } from '../input-limits.ts';

/** What a file of a shop can hold: one kind of thing, a row each. */
export const fileKind = z.enum([
  'orders',
  'finished',
  'parts',
  'materials',
  'colours',
  'sheets',
  'stock',
  'machines',
  'tools',
]);
export type FileKind = z.infer<typeof fileKind>;

const field = z.string().min(1).max(40);
const heading = z.string().max(MOST.shortCellCharacters);

/** How a file's columns are read, as people said it once; every record is by field. */
export const layout = z.strictObject({
  /** The heading of its column. */
  columns: z.record(field, heading),
  /** The unit of its figures, where the cells themselves have none. */
  units: z.record(field, z.string().max(20)),
  /** The order of day, month and year, where the cells leave it open. */
  dates: z.record(field, z.enum(['dmy', 'mdy', 'ymd'])),
  /** The decimal mark, where the cells leave it open. */
  decimals: z.record(field, z.enum(['point', 'comma'])),
  /** Headings of columns that go to the note. */
  toNote: z.array(heading).max(MOST.columns),
});
export type Layout = DeepReadonly<z.infer<typeof layout>>;

/** The layout of files of one shape, remembered for the next such file. */
export const fileLayout = z.strictObject({
  /** Names the shape: kind and headings (core/import). */
  id: z.string().min(1).max(200),
  kind: fileKind,
  layout,
  revision,
});
export type FileLayout = DeepReadonly<z.infer<typeof fileLayout>>;
