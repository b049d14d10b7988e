import { z } from 'zod';
import { rowChange } from '../shop/row-change.ts';
import { rowKinds } from '../shop/state.ts';

/**
 * Everything that a data file holds, as one JSON text: `format` "foldweek-export/1", when and by which version it was
 * written, and under `tables` a list of rows for each kind, fields named as in core/shop (lengths in millimetres, times in
 * whole seconds, instants in seconds since 1970 UTC, money in whole cents). Besides the shop's own rows: `step` (what can be
 * undone), `fact` (the floor's log), `savedPlan` (plans kept and published), `cutAnswer` (sheets found for runs) and
 * `setAside` (rows that could not be read, as they were found).
 */
export const wholeShop = z.strictObject({
  format: z.literal('foldweek-export/1'),
  version: z.string(),
  at: z.int(),
  tables: z.strictObject({
    ...listsOf(rowKinds),
    settings: z.array(rowKinds.settings).length(1, 'a shop has one row of settings'),
    step: z.array(
      z.strictObject({
        id: z.int(),
        label: z.string(),
        at: z.int(),
        changes: z.array(rowChange),
        undone: z.boolean(),
        by: z.string(),
      }),
    ),
    fact: z.array(
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
    savedPlan: z.array(
      z.strictObject({
        id: z.int(),
        name: z.string(),
        what: z.string(),
        at: z.int(),
        by: z.string(),
        queues: z.unknown(),
        pins: z.unknown(),
        figures: z.unknown(),
        stepId: z.int().nullable(),
      }),
    ),
    cutAnswer: z.array(
      z.strictObject({ key: z.string(), plan: z.unknown(), settled: z.boolean(), usedAt: z.int() }),
    ),
    setAside: z.array(
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
export type WholeShop = z.infer<typeof wholeShop>;

/** One list of rows a kind. */
function listsOf<K extends string, S extends z.ZodType>(
  kinds: Readonly<Record<K, S>>,
): Record<K, z.ZodArray<S>> {
  return Object.fromEntries(
    Object.entries<S>(kinds).map(([kind, schema]) => [kind, z.array(schema)]),
  ) as unknown as Record<K, z.ZodArray<S>>;
}
