import { z } from 'zod';
import { keptPlan } from '../shop/kept-plan.ts';
import { rowChange } from '../shop/row-change.ts';
import { rowKinds } from '../shop/state.ts';
import { upToDate } from './earlier-export.ts';

const presentShop = z.strictObject({
  format: z.literal('foldweek-export/1'),
  version: z.string(),
  at: z.int(),
  tables: z.strictObject({
    ...listsOf(rowKinds),
    settings: z.array(rowKinds.settings).length(1, 'a shop has one row of settings'),
    step: rowsOf(
      z.strictObject({
        id: z.int(),
        label: z.string(),
        at: z.int(),
        changes: z.array(rowChange),
        undone: z.boolean(),
        by: z.string(),
      }),
    ),
    fact: rowsOf(
      z.strictObject({
        id: z.int(),
        at: z.int(),
        keptAt: z.int(),
        command: z.unknown(),
        label: z.string(),
        operation: z.string().nullable(),
        machineId: z.string().nullable(),
        by: z.string(),
        corrects: z.int().nullable(),
        reason: z.string(),
        changes: z.array(rowChange),
      }),
    ),
    savedPlan: rowsOf(
      z.strictObject({
        id: z.int(),
        name: z.string(),
        what: z.enum(['published', 'named']),
        at: z.int(),
        by: z.string(),
        ...keptPlan,
        stepId: z.int().nullable(),
      }),
    ),
    cutAnswer: rowsOf(
      z.strictObject({ key: z.string(), plan: z.unknown(), settled: z.boolean(), usedAt: z.int() }),
    ),
    setAside: rowsOf(
      z.strictObject({
        id: z.int(),
        kind: z.string(),
        rowId: z.string(),
        content: z.string(),
        reason: z.string(),
        at: z.int(),
      }),
    ),
  }),
});
/**
 * Everything that a data file holds, as one JSON text: `format` "foldweek-export/1", when and by which version it was
 * written, and under `tables` a list of rows for each kind, fields named as in core/shop (lengths in millimetres, times in
 * whole seconds, instants in seconds since 1970 UTC, money in whole cents). Besides the shop's own rows: `step` (what can be
 * undone), `fact` (the floor's log), `savedPlan` (plans kept and published), `cutAnswer` (sheets found for runs) and
 * `setAside` (rows that could not be read, as they were found).
 * One that an earlier version wrote is read as this one writes it.
 */
export const wholeShop = z.preprocess(upToDate, presentShop);
export type WholeShop = z.infer<typeof wholeShop>;

/** One list of rows a kind. */
function listsOf<K extends string, S extends z.ZodType>(
  kinds: Readonly<Record<K, S>>,
): Record<K, z.ZodArray<S>> {
  return Object.fromEntries(
    Object.entries<S>(kinds).map(([kind, schema]) => [kind, rowsOf(schema)]),
  ) as unknown as Record<K, z.ZodArray<S>>;
}

/** Rows of a table: each under an id of its own. */
function rowsOf<S extends z.ZodType>(row: S): z.ZodArray<S> {
  return z.array(row).superRefine((rows, { addIssue }) => {
    const seen = new Set<unknown>();
    for (const [k, one] of rows.entries()) {
      const id = (one as { id?: unknown; key?: unknown }).id ?? (one as { key?: unknown }).key;
      if (seen.has(id)) addIssue({ code: 'custom', path: [k, 'id'], message: 'it is there twice' });
      seen.add(id);
    }
  });
}
