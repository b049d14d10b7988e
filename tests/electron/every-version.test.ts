import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { defaultWeights } from '../../core/shop/settings.ts';
import { rowKinds, type RowKind } from '../../core/shop/state.ts';
import { connect } from '../../electron/db/connection.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { contentOf, oldMigrations, rowWriter } from './data-files.ts';
import { memoryLog, migrations, openTestStore, shopIn, STAMP, tempFolder } from './support.ts';

type Row = Record<string, unknown>;

const shop = anEverythingShop();
const { stability, material, ...weights } = shop.settings.weights;
const LATEST = readdirSync(migrations).filter((name) => name.endsWith('.sql')).length;

/** Stock had no weight at first; it then got that of a new shop. */
const stockWeight = (version: number): number => (version < 4 ? defaultWeights.material : material);

/** What the tables beside the shop's own held, as far as a version had them. */
const beside: Readonly<Record<string, Row[]>> = {
  step: [{ label: 'Pin 1042/1 shearing', at: 1, changes: '[]', undone: 0, by: 'desk' }],
  fact: [
    {
      at: 1,
      keptAt: 2,
      command: '{}',
      label: 'Start',
      operation: '1042/1:shear',
      machineId: 'S1',
      by: 'floor S1',
      corrects: null,
      reason: '',
      changes: '[]',
    },
  ],
  savedPlan: [
    {
      name: 'Week 49',
      what: 'named',
      at: 3,
      by: 'desk',
      queues: '{}',
      pins: '[]',
      figures: null,
      stepId: null,
    },
  ],
  cutAnswer: [{ key: 'k', plan: '{}', settled: 1, usedAt: 5 }],
  setAside: [{ kind: 'order', rowId: '7', content: '{"id":"7"}', reason: 'status: lost', at: 6 }],
};

/** A row as a version wrote it: fields were only ever added since, but for these. */
function asOf(version: number, table: string, row: Row): Row {
  if (table === 'order' && version < 9) return { ...row, weight: row.importance };
  if (table !== 'settings') return row;
  if (version < 4) return { ...row, weights: { ...weights, calm: stability } };
  return version < 9 ? { ...row, weights: { ...weights, calm: stability, material } } : row;
}

const rowsFor = (table: string): readonly Row[] =>
  table === 'settings'
    ? [shop.settings]
    : table in rowKinds
      ? shop[table as Exclude<RowKind, 'settings'>]
      : beside[table]!;

/** A file of a version with rows in every table that it had. */
function fill(file: string, version: number): void {
  connect(file, { migrations: oldMigrations(version), stamp: STAMP, log: memoryLog() }).close();
  const connection = new Database(file);
  connection.pragma('foreign_keys = OFF');
  const put = rowWriter(connection);
  const tables = connection
    .prepare("select name from sqlite_master where type = 'table' and name not like 'sqlite_%'")
    .pluck()
    .all() as string[];
  for (const table of tables) {
    const columns = (connection.pragma(`table_info("${table}")`) as { name: string }[]).map(
      ({ name }) => name,
    );
    for (const row of rowsFor(table)) {
      const known = Object.entries(asOf(version, table, row)).filter(([column]) => columns.includes(column));
      put(table, Object.fromEntries(known));
    }
  }
  connection.close();
}

/** What became of a stored row's fields that are named or written otherwise now. */
function sinceThen(table: string, row: Row): Row {
  if (table === 'order' && 'weight' in row) {
    const { weight, ...rest } = row;
    return { ...rest, importance: weight };
  }
  if (table !== 'settings') return row;
  const { calm = stability, ...known } = JSON.parse(row.weights as string) as Row;
  return { ...row, weights: JSON.stringify({ ...known, stability: calm }) };
}

const canonical = (table: string, row: Row): Row =>
  table === 'settings'
    ? { ...row, weights: Object.entries(JSON.parse(row.weights as string) as Row).sort() }
    : row;

describe('a data file of every version there ever was, with rows in every table', () => {
  const versions = Array.from({ length: LATEST }, (_, n) => n + 1);

  it.each(versions)('version %i keeps each of them, and each can be read', (version) => {
    const file = join(tempFolder(), 'old.db');
    fill(file, version);
    const before = contentOf(file) as Record<string, Row[]>;
    for (const [table, rows] of Object.entries(before)) expect(rows.length, table).toBeGreaterThan(0);

    const store = openTestStore(file);
    const read = shopIn(store);
    expect(store.run('count', ({ rows }) => rows.aside.count())).toBe(0);
    expect(read.order.map(({ id, importance }) => [id, importance])).toEqual(
      shop.order.map(({ id, importance }) => [id, importance]),
    );
    expect(read.settings.weights).toEqual({ ...shop.settings.weights, material: stockWeight(version) });
    store.close();

    const after = contentOf(file) as Record<string, Row[]>;
    expect(new Database(file).pragma('foreign_key_check')).toEqual([]);
    for (const [table, rows] of Object.entries(before)) {
      expect(after[table], table).toHaveLength(rows.length);
      rows.forEach((row, n) => {
        const expected = canonical(table, sinceThen(table, row));
        const stored = canonical(table, after[table]![n]!);
        // What a later version added has no counterpart; everything that was there is there.
        if (table === 'settings' && version < 4)
          (expected.weights as unknown[]).push(['material', stockWeight(version)]);
        if (table === 'settings') (expected.weights as [string, unknown][]).sort();
        expect(stored, `${table}, row ${n + 1}`).toMatchObject(expected);
      });
    }
  });
});
