import { z } from 'zod';
import { rowKinds, type RowKind, type RowOf, type Shop } from './state.ts';

/** One row before and after; null where it did not or does not exist. */
export type RowChange = {
  [K in RowKind]: {
    readonly kind: K;
    readonly id: string;
    readonly before: RowOf<K> | null;
    readonly after: RowOf<K> | null;
  };
}[RowKind];

/** What a command does to the rows, and how the history names it ("Undo: …"). */
export interface Edit {
  readonly label: string;
  readonly changes: readonly RowChange[];
}

/** The same for what crosses the border: every row fits the schema of its kind. */
export const rowChange = z.discriminatedUnion(
  'kind',
  (Object.keys(rowKinds) as RowKind[]).map((kind) =>
    z.strictObject({
      kind: z.literal(kind),
      id: z.string(),
      before: rowKinds[kind].nullable() as z.ZodType,
      after: rowKinds[kind].nullable() as z.ZodType,
    }),
  ) as unknown as [
    z.ZodObject<{ kind: z.ZodLiteral<RowKind> }>,
    ...z.ZodObject<{ kind: z.ZodLiteral<RowKind> }>[],
  ],
) as unknown as z.ZodType<RowChange, RowChange>;

type Row = NonNullable<RowChange['after']>;

/**
 * A change with the next revision set: a new row has 1, since what a form says of a new one is 0. @param before the row as it is, null when it is new
 * @param after what it becomes (its own revision is ignored), null to remove it
 */
export function change<K extends RowKind>(
  kind: K,
  before: RowOf<K> | null,
  after: RowOf<K> | null,
): RowChange {
  const id = (after ?? before)?.id;
  if (id === undefined) throw new RangeError('change: neither before nor after');
  const next = after && { ...after, revision: before ? before.revision + 1 : 1 };
  return { kind, id, before, after: next } as RowChange;
}

/** The changes with each row once: from what it was before the first of its changes to what it is after the last. */
export function oneEach(changes: readonly RowChange[]): readonly RowChange[] {
  const rows = new Map<string, RowChange>();
  for (const change of changes) {
    const key = `${change.kind} ${change.id}`;
    const first = rows.get(key);
    rows.set(key, first ? ({ ...change, before: first.before } as RowChange) : change);
  }
  if (rows.size === changes.length) return changes;
  return [...rows.values()].filter(({ before, after }) => before !== null || after !== null);
}

/** The way back: last change first, before and after swapped. */
export const invert = (changes: readonly RowChange[]): RowChange[] =>
  changes.map((c) => ({ ...c, before: c.after, after: c.before }) as RowChange).reverse();

/** True when two rows say the same, whatever their revisions. */
export function sameContent(a: Row | null, b: Row | null): boolean {
  if (a === null || b === null) return a === b;
  return JSON.stringify(sorted({ ...a, revision: 0 })) === JSON.stringify(sorted({ ...b, revision: 0 }));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, v]) => [k, sorted(v)]),
  );
}

/** The shop after the changes; untouched kinds keep their arrays, so that screens can compare by reference. */
export function withChanges(shop: Shop, changes: readonly RowChange[]): Shop {
  const next: Record<string, unknown> = { ...shop };
  const touched = new Map<RowKind, Map<string, Row>>();
  for (const { kind, id, after } of changes) {
    if (kind === 'settings') {
      if (after) next.settings = after;
      continue;
    }
    let rows = touched.get(kind);
    if (!rows)
      touched.set(kind, (rows = new Map((shop[kind] as readonly Row[]).map((row) => [row.id, row]))));
    if (after) rows.set(id, after);
    else rows.delete(id);
  }
  for (const [kind, rows] of touched) next[kind] = [...rows.values()].sort(byId);
  return next as unknown as Shop;
}

/** Ids in the order people count: "1042/2" before "1042/10". */
export function byId(a: { readonly id: string }, b: { readonly id: string }): number {
  return compareIds(a.id, b.id);
}

export function compareIds(a: string, b: string): number {
  const as = a.split(/(\d+)/);
  const bs = b.split(/(\d+)/);
  for (let i = 0; i < Math.min(as.length, bs.length); i++) {
    const x = as[i] ?? '';
    const y = bs[i] ?? '';
    if (x === y) continue;
    const both = /^\d/.test(x) && /^\d/.test(y);
    const difference = both ? Number(x) - Number(y) : 0;
    if (difference !== 0) return difference;
    return x < y ? -1 : 1;
  }
  return as.length - bs.length;
}
