import { customType, integer, text } from 'drizzle-orm/sqlite-core';

/** A nested value. Text that is no JSON is handed on as it is: the row's schema then names the damaged row. */
export const json = customType<{ data: unknown; driverData: string | null }>({
  dataType: () => 'text',
  toDriver: (value) => (value === null ? null : JSON.stringify(value)),
  fromDriver: (stored) => {
    if (stored === null) return null;
    try {
      return JSON.parse(stored) as unknown;
    } catch {
      return stored;
    }
  },
});

/** What people say aloud. */
export const id = () => text().primaryKey();
/** Grows with each change of the row. */
export const revision = () => integer().notNull();
