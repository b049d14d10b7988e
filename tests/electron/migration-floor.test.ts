import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeImportance,
  beforeTerms,
  sinceTerms,
  withoutLaterFields,
  contentOf,
  oldMigrations,
  settingsBefore,
  withStockWeight,
  withLaterFields,
  rowWriter,
} from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });

const without = (row: object | null, ...fields: string[]): object | null =>
  row && Object.fromEntries(Object.entries(row).filter(([field]) => !fields.includes(field)));

/** Rows of every kind and a history as the first version kept them. */
function fillFirst(file: string): void {
  open(file, oldMigrations(1)).close();
  const connection = new Database(file);
  connection.pragma('foreign_keys = OFF');
  const shop = anEverythingShop();
  const put = rowWriter(connection);
  put('settings', settingsBefore(shop));
  for (const kind of ['material', 'colour', 'part', 'calendar', 'machine', 'downtime'] as const)
    for (const row of shop[kind]) put(kind, withoutLaterFields(kind, row));
  for (const row of shop.sheet) put('sheet', without(beforeTerms('sheet', row), 'form', 'trimMm')!);
  for (const row of shop.order) put('order', beforeImportance('order', row));
  for (const row of shop.line) put('line', without(beforeTerms('line', row), 'makeUpFor', 'overrun')!);
  for (const row of shop.queue) put('queue', row);
  for (const row of shop.pin) put('pin', row);
  for (const row of shop.record) put('record', without(row, 'who', 'changeoverSeconds', 'pauses')!);
  const line = shop.line.find(({ id }) => id === '1042/2');
  const changes = [
    {
      kind: 'line',
      id: '1042/2',
      before: without(beforeTerms('line', { ...line!, quantity: 21 }), 'makeUpFor', 'overrun'),
      after: without(beforeTerms('line', line!), 'makeUpFor', 'overrun'),
    },
    { kind: 'pin', id: '1043/1:shear', before: null, after: { id: '1043/1:shear', revision: 0 } },
    { kind: 'order', id: '1041', before: shop.order[0]!, after: null },
  ];
  put('step', { label: 'Change line 1042/2', at: NOW, changes, undone: false });
  put('step', { label: 'Nothing', at: NOW, changes: [], undone: true });
  connection.close();
}

describe('a data file from before the floor', () => {
  it('keeps every row; lines make up for nothing, records have no pauses', () => {
    const file = join(tempFolder(), 'first.db');
    fillFirst(file);
    const before = contentOf(file) as Record<string, Record<string, unknown>[]>;
    open(file).close();
    const { step: steps, ...after } = contentOf(file);
    expect(after).toEqual(
      withLaterFields({
        ...Object.fromEntries(Object.entries(before).filter(([table]) => table !== 'step')),
        settings: before.settings!.map(withStockWeight),
        line: before.line!.map((row) => ({ ...row, makeUpFor: null, overrun: 0 })),
        record: before.record!.map((row) => ({ ...row, changeoverSeconds: null, pauses: '[]' })),
        sheet: before.sheet!.map((row) => ({ ...row, form: 'sheet', trimMm: 0 })),
        learned: [],
        movement: [],
        cutList: [],
      }),
    );
    const read = (rows: unknown[]) =>
      (rows as { changes: string }[]).map((row) => ({ ...row, changes: JSON.parse(row.changes) as unknown }));
    const expected = read(before.step!) as { changes: { kind: string; before: object; after: object }[] }[];
    for (const change of expected[0]!.changes.filter((c) => c.kind === 'line')) {
      // Rows of the table keep a truth as 0 or 1, histories as JSON's own.
      const since = (line: object): object => ({
        ...sinceTerms('line', { ...line, makeUpFor: null, overrun: 0 }),
        mixLots: false,
      });
      change.before = since(change.before);
      change.after = since(change.after);
    }
    expect(read(steps!)).toEqual(expected.map((row) => ({ ...row, by: '' })));
    expect(before.line).toHaveLength(3);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'first.db');
    fillFirst(file);
    const store = openTestStore(file);
    const edit = editorOf(store);
    expect(edit.undo()).toBe('Change line 1042/2');
    expect(store.run('read', ({ rows }) => rows.get('line', '1042/2'))).toMatchObject({
      quantity: 21,
      makeUpFor: null,
    });
  });
});
