import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { aRecord, aShop, anOrder, at, NOW } from '../support/builders.ts';
import {
  beforeTerms,
  contentOf,
  oldMigrations,
  PUBLISHING_TABLES,
  rowWriter,
  sinceTerms,
  without,
} from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = aShop();
const settings = without(beforeTerms('settings', shop.settings), 'publishing', 'backupFolder');
const orderBefore = (row: object): object => without(row, 'closedAt');
const ENDED = at('2026-11-27', '15:00');
const done = orderBefore(anOrder({ status: 'done' }));
const cancelled = orderBefore(anOrder({ id: '1043', status: 'cancelled' }));
const open1044 = orderBefore(anOrder({ id: '1044' }));

/** A file of the version before: an order that is done, one cancelled before anything was made, one open. */
function fillBefore(file: string): void {
  open(file, oldMigrations(9)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  for (const kind of ['material', 'colour', 'part'] as const)
    for (const row of shop[kind]) put(kind, beforeTerms(kind, row));
  for (const row of [done, cancelled, open1044]) put('order', row);
  put('line', beforeTerms('line', shop.line[0]!));
  put('record', aRecord({ id: '1042/1:shear', end: ENDED - 3600 }));
  put('record', aRecord({ id: '1042/1:brake', end: ENDED }));
  const changes = [
    { kind: 'order', id: '1043', before: { ...cancelled, status: 'open' }, after: cancelled },
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Old name' }, after: settings },
  ];
  put('step', { label: 'Cancel 1043', at: NOW, changes, undone: 0 });
  connection.close();
}

describe('a data file from before plans were published and orders knew when they closed', () => {
  it('keeps every row; an order that is done closed with its last work, one without work at its due date', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = contentOf(file) as Record<string, object[]>;
    open(file).close();
    const { step, order, settings: shopRow, ...after } = contentOf(file) as Record<string, object[]>;
    expect(order!.map((row) => (row as { closedAt: number | null }).closedAt)).toEqual([
      ENDED,
      (cancelled as { due: number }).due,
      null,
    ]);
    expect(order!.map(orderBefore)).toEqual(before.order);
    expect(shopRow).toMatchObject([{ publishing: 'always', backupFolder: null }]);
    expect(step).toMatchObject([{ by: '', label: 'Cancel 1043' }]);
    expect(after).toEqual({
      ...without(before, 'step', 'order', 'settings'),
      line: before.line!.map((row) => sinceTerms('line', row)),
      part: before.part!.map((row) => sinceTerms('part', row)),
      ...PUBLISHING_TABLES,
    });
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Cancel 1043');
    const read = store.run('read', ({ rows }) => [rows.get('settings', 'shop'), rows.get('order', '1043')]);
    expect(read).toMatchObject([{ name: 'Old name' }, { status: 'open', closedAt: null }]);
  });
});
