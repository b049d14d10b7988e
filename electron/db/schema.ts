import { sql } from 'drizzle-orm';
import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import type { RowKind } from '../../core/shop/state.ts';
import { id, json, revision } from './columns.ts';
import {
  changeover,
  cutCount,
  cutList,
  fileLayout,
  keptList,
  learned,
  movement,
  otherName,
  pin,
  record,
} from './lasting-schema.ts';

/**
 * The tables: one a row kind, a column a field, nested values as JSON text. Field names are the nouns' own, so a row
 * read is a row of core/shop/state.ts and its schema checks it. Those whose rows refer to nothing are in
 * lasting-schema.ts; what the host keeps beside the shop (histories, plans, answers) is in history-schema.ts.
 */

export const settings = sqliteTable('settings', {
  id: id(),
  name: text().notNull(),
  timeZone: text().notNull(),
  units: text().notNull(),
  currency: text(),
  weights: json().notNull(),
  frozenHours: real().notNull(),
  transferShare: real().notNull(),
  crewLimit: integer(),
  girthRule: text().notNull(),
  partRules: json()
    .notNull()
    .default(sql`'{}'`),
  publishing: text().notNull().default('always'),
  backupFolder: text(),
  askWho: integer({ mode: 'boolean' }).notNull().default(false),
  decimals: text().notNull().default('point'),
  remnants: json(),
  extraBlanks: json()
    .notNull()
    .default(sql`'{"setUp":0,"scrapShare":0}'`),
  stockKnows: json(),
  awaitMetal: integer({ mode: 'boolean' }).notNull().default(true),
  setUpDone: json()
    .notNull()
    .default(sql`'[]'`),
  revision: revision(),
});

export const material = sqliteTable('material', {
  id: id(),
  name: text().notNull(),
  metal: text().notNull(),
  tensileMpa: real().notNull(),
  temper: text(),
  kFactor: real().notNull(),
  gauges: json().notNull(),
  deductions: json()
    .notNull()
    .default(sql`'[]'`),
  revision: revision(),
});

export const colour = sqliteTable('colour', {
  id: id(),
  name: text().notNull(),
  hex: text().notNull(),
  revision: revision(),
});

const materialId = () =>
  text()
    .notNull()
    .references(() => material.id);
const colourId = () =>
  text()
    .notNull()
    .references(() => colour.id);

/** What tells sheets of one metal apart (core/material/lot.ts). */
const lotColumns = () => ({
  lot: text().notNull().default(''),
  paint: text(),
  film: text(),
});

export const sheet = sqliteTable('sheet', {
  id: id(),
  materialId: materialId(),
  gauge: text().notNull(),
  colourId: colourId(),
  ...lotColumns(),
  widthMm: real().notNull(),
  lengthMm: real().notNull(),
  form: text().notNull().default('sheet'),
  trimMm: real().notNull().default(0),
  costCents: integer().notNull(),
  onHand: integer().notNull(),
  revision: revision(),
});

export const delivery = sqliteTable('delivery', {
  id: id(),
  sheetId: text()
    .notNull()
    .references(() => sheet.id),
  pieces: integer().notNull(),
  due: integer().notNull(),
  note: text().notNull(),
  revision: revision(),
});

export const part = sqliteTable('part', {
  id: id(),
  name: text().notNull(),
  profile: json().notNull(),
  lengthMm: real().notNull(),
  bendOrder: json(),
  family: json(),
  extraBlanks: json(),
  steps: json()
    .notNull()
    .default(sql`'[]'`),
  note: text().notNull(),
  revision: revision(),
});

export const calendar = sqliteTable('calendar', {
  id: id(),
  name: text().notNull(),
  shifts: json().notNull(),
  closures: json().notNull(),
  overtime: json().notNull(),
  revision: revision(),
});

export const machine = sqliteTable('machine', {
  id: id(),
  name: text().notNull(),
  stage: text().notNull(),
  maxLengthMm: real(),
  maxThicknessMm: real(),
  tonnes: real(),
  dieOpeningMm: real(),
  betweenFramesMm: real(),
  backGaugeMm: json(),
  minStripMm: real(),
  crew: integer().notNull(),
  calendarId: text()
    .notNull()
    .references(() => calendar.id),
  changeover: json().notNull(),
  standards: json().notNull(),
  timesEdition: integer().notNull().default(1),
  state: json(),
  revision: revision(),
});

export const tool = sqliteTable('tool', {
  id: id(),
  name: text().notNull(),
  kind: text().notNull(),
  openingMm: real(),
  angleDeg: real(),
  radiusMm: real(),
  gooseneck: integer({ mode: 'boolean' }).notNull(),
  lengthMm: real().notNull(),
  ratingKnPerM: real(),
  machineIds: json().notNull(),
  note: text().notNull(),
  revision: revision(),
});

export const downtime = sqliteTable('downtime', {
  id: id(),
  machineId: text()
    .notNull()
    .references(() => machine.id),
  from: integer().notNull(),
  to: integer().notNull(),
  reason: text().notNull(),
  revision: revision(),
});

export const absence = sqliteTable('absence', {
  id: id(),
  people: integer().notNull(),
  from: integer().notNull(),
  to: integer().notNull(),
  reason: text().notNull(),
  revision: revision(),
});

export const order = sqliteTable(
  'order',
  {
    id: id(),
    customer: text().notNull(),
    release: integer(),
    due: integer().notNull(),
    importance: real().notNull(),
    rush: integer({ mode: 'boolean' }).notNull(),
    status: text().notNull(),
    closedAt: integer(),
    note: text().notNull(),
    revision: revision(),
  },
  (table) => [index('order_closed').on(table.closedAt)],
);

export const line = sqliteTable(
  'line',
  {
    id: id(),
    orderId: text()
      .notNull()
      .references(() => order.id),
    number: integer().notNull(),
    partId: text()
      .notNull()
      .references(() => part.id),
    materialId: materialId(),
    gauge: text().notNull(),
    colourId: colourId(),
    ...lotColumns(),
    mixLots: integer({ mode: 'boolean' }).notNull().default(false),
    lengthMm: real().notNull(),
    quantity: integer().notNull(),
    overrun: integer().notNull().default(0),
    status: text().notNull(),
    makeUpFor: text(),
    due: integer(),
    release: integer(),
    importance: real(),
    note: text().notNull().default(''),
    revision: revision(),
  },
  (table) => [index('line_order').on(table.orderId)],
);

export const queue = sqliteTable('queue', {
  id: text()
    .primaryKey()
    .references(() => machine.id),
  operations: json().notNull(),
  revision: revision(),
});

/** What floor and paper follow where plans are published by hand. */
export const published = sqliteTable('published', {
  id: text()
    .primaryKey()
    .references(() => machine.id),
  operations: json().notNull(),
  revision: revision(),
});

/** By kind, as the app reaches them; drizzle-kit finds the exported ones. */
export const tables = {
  settings,
  material,
  colour,
  sheet,
  delivery,
  part,
  calendar,
  machine,
  tool,
  downtime,
  absence,
  order,
  line,
  queue,
  published,
  pin,
  changeover,
  record,
  learned,
  movement,
  cutList,
  cutCount,
  keptList,
  otherName,
  fileLayout,
} as const satisfies Record<RowKind, unknown>;
