import { desc, eq, getTableName, sql } from 'drizzle-orm';
import { getTableConfig } from 'drizzle-orm/sqlite-core';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import { newSettings, settings, type Settings } from '../../core/shop/settings.ts';
import { rowKinds, type RowKind } from '../../core/shop/state.ts';
import { setAside } from './history-schema.ts';
import { tables } from './schema.ts';

/** A row that could not be read, as it was found. */
export interface SetAside {
  readonly id: number;
  readonly kind: string;
  readonly rowId: string;
  readonly content: string;
  readonly reason: string;
  readonly at: number;
}

type Stored = Record<string, unknown> & { readonly id: string };
const kinds = Object.keys(rowKinds) as RowKind[];

/**
 * Rows that cannot be read leave their table for one of their own, so that the others can be worked with. Rows that refer
 * to one go with it: without their order or their part they could not stand.
 */
export const setAsideIn = (db: BetterSQLite3Database) => {
  let count = 0;
  const move = (kind: RowKind, row: Stored, reason: string): void => {
    for (const child of kinds)
      for (const column of columnsTo(child, kind))
        for (const stored of db.select().from(tables[child]).where(eq(column, row.id)).all())
          move(child, stored as Stored, `It belongs to ${kind} “${row.id}”, which could not be read.`);
    count += 1;
    db.insert(setAside)
      .values({ kind, rowId: row.id, content: JSON.stringify(row), reason, at: sql`unixepoch()` })
      .run();
    db.delete(tables[kind]).where(eq(tables[kind].id, row.id)).run();
  };

  const remove = (id: number): void => void db.delete(setAside).where(eq(setAside.id, id)).run();

  return {
    /** How many were set aside since the file was opened. */
    count: (): number => count,

    /** @returns what stands in its place: the shop's settings are needed, so what can be read of them stays; else nothing */
    take(kind: RowKind, stored: Record<string, unknown>, reason: string): Settings | null {
      const row = { ...stored, id: String(stored.id) };
      move(kind, row, reason);
      if (kind !== 'settings') return null;
      const mended = readable(row);
      db.insert(tables.settings).values(mended).run();
      return mended;
    },

    /** Newest first. */
    list: (): SetAside[] => db.select().from(setAside).orderBy(desc(setAside.id)).all(),

    /** Put a row back into its table: a newer version may read it, or what it belongs to is back. @returns why it cannot be; null when it is back */
    putBack(id: number): string | null {
      const row = db.select().from(setAside).where(eq(setAside.id, id)).get();
      if (!row) return 'It is not set aside any more.';
      const against = againstPuttingBack(db, row);
      if (against !== null) return against;
      db.insert(tables[row.kind as RowKind])
        .values(JSON.parse(row.content) as never)
        .run();
      remove(id);
      return null;
    },

    /** For good. */
    remove,
  };
};

/** Why a row cannot go back into its table, a sentence; null: it can. */
function againstPuttingBack(
  db: BetterSQLite3Database,
  { kind: named, rowId, content }: SetAside,
): string | null {
  const kind = kinds.find((one) => one === named);
  if (!kind) return `This version of Foldweek keeps no ${named}.`;
  const stored = JSON.parse(content) as Stored;
  const row = rowKinds[kind].safeParse(stored);
  if (!row.success) {
    const [first] = row.error.issues;
    return `It still cannot be read: ${first?.path.join('.') || 'row'}: ${first?.message ?? 'unreadable'}.`;
  }
  const stands = (of: RowKind, id: unknown): boolean =>
    db
      .select({ id: tables[of].id })
      .from(tables[of])
      .where(eq(tables[of].id, String(id)))
      .get() !== undefined;
  if (stands(kind, rowId)) return `The shop has a ${kind} “${rowId}” again by now.`;
  for (const parent of kinds)
    for (const { name } of columnsTo(kind, parent))
      if (stored[name] !== null && !stands(parent, stored[name]))
        return `It belongs to ${parent} “${String(stored[name])}”, which is not there; put that back first.`;
  return null;
}

/** The columns of a kind's table that refer to another kind. */
const columnsTo = (child: RowKind, parent: RowKind) =>
  getTableConfig(tables[child])
    .foreignKeys.map((key) => key.reference())
    .filter(({ foreignTable }) => getTableName(foreignTable) === parent)
    .flatMap(({ columns }) => columns);

/** The fields that fit, and those of a new shop for the others. */
function readable(stored: Record<string, unknown>): Settings {
  const usual = { ...newSettings, name: 'Shop', timeZone: 'UTC', units: 'in' as const };
  const fields = Object.keys(settings.shape) as (keyof typeof settings.shape)[];
  const fitting = fields.filter((field) => settings.shape[field].safeParse(stored[field]).success);
  return { ...usual, ...Object.fromEntries(fitting.map((field) => [field, stored[field]])), id: 'shop' };
}
