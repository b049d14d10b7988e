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
  };
};

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
