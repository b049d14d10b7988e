import { defineConfig } from 'drizzle-kit';

/**
 * A new migration: `npx drizzle-kit generate --name WHAT_CHANGED`, then, by hand and before it is released, add
 * STRICT to every CREATE TABLE it made (drizzle-kit cannot write it, and its snapshot does not record it).
 * tests/electron/migrations.test.ts fails until that is done, and when a released migration is edited.
 */
export default defineConfig({
  dialect: 'sqlite',
  schema: ['./electron/db/schema.ts', './electron/db/lasting-schema.ts', './electron/db/history-schema.ts'],
  out: './migrations',
});
