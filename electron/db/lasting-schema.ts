import { sql } from 'drizzle-orm';
import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { id, json, revision } from './columns.ts';

/** Tables whose rows outlive the line, machine, sheet size or colour that they speak of, so they refer to nothing. */

export const pin = sqliteTable('pin', { id: id(), revision: revision() });

/** By machine: the changeover under way there. */
export const changeover = sqliteTable('changeover', {
  id: id(),
  operation: text().notNull(),
  since: integer().notNull(),
  revision: revision(),
});

export const record = sqliteTable(
  'record',
  {
    id: id(),
    machineId: text().notNull(),
    partId: text().notNull(),
    materialId: text().notNull(),
    gauge: text().notNull(),
    colourId: text().notNull(),
    lengthMm: real().notNull(),
    quantity: integer().notNull(),
    good: integer().notNull(),
    scrapped: integer().notNull(),
    start: integer().notNull(),
    end: integer(),
    who: json()
      .notNull()
      .default(sql`'[]'`),
    changeoverSeconds: integer(),
    pauses: json()
      .notNull()
      .default(sql`'[]'`),
    estimatedSeconds: integer().notNull(),
    revision: revision(),
  },
  (table) => [index('record_start').on(table.start), index('record_machine').on(table.machineId, table.end)],
);

export const learned = sqliteTable('learned', {
  id: id(),
  machineId: text().notNull(),
  key: text().notNull(),
  before: real().notNull(),
  after: real().notNull(),
  low: real().notNull(),
  high: real().notNull(),
  observations: integer().notNull(),
  at: integer().notNull(),
  revertedAt: integer(),
  revision: revision(),
});

export const movement = sqliteTable(
  'movement',
  {
    id: id(),
    sheetId: text().notNull(),
    at: integer().notNull(),
    what: text().notNull(),
    pieces: integer().notNull(),
    after: integer().notNull(),
    note: text().notNull(),
    revision: revision(),
  },
  (table) => [index('movement_at').on(table.at)],
);

export const cutList = sqliteTable('cutList', {
  id: id(),
  lines: json().notNull(),
  groups: json().notNull(),
  steps: json().notNull(),
  taken: integer(),
  counted: json()
    .notNull()
    .default(sql`'[]'`),
  revision: revision(),
});

export const cutCount = sqliteTable('cutCount', {
  id: id(),
  listId: text().notNull(),
  step: integer().notNull(),
  made: integer().notNull(),
  revision: revision(),
});

export const keptList = sqliteTable('keptList', {
  id: id(),
  groups: json().notNull(),
  steps: json().notNull(),
  revision: revision(),
});

export const otherName = sqliteTable('otherName', {
  id: id(),
  kind: text().notNull(),
  text: text().notNull(),
  oursId: text().notNull(),
  revision: revision(),
});

export const fileLayout = sqliteTable('fileLayout', {
  id: id(),
  kind: text().notNull(),
  layout: json().notNull(),
  revision: revision(),
});
