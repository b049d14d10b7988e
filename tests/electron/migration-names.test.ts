import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeImportance,
  contentOf,
  oldMigrations,
  rowWriter,
  sinceImportance,
  without,
} from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const settings = without(beforeImportance('settings', shop.settings), 'askWho');
const record = { ...without(shop.record[0]!, 'who'), id: shop.record[0]!.id };

/** A file of the version before, which asks for no names, and a history that speaks of settings and of a record. */
function fillBefore(file: string): void {
  open(file, oldMigrations(6)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  put('record', record);
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Old name' }, after: settings },
    { kind: 'record', id: record.id, before: { ...record, good: 3 }, after: record },
  ];
  put('step', { label: 'Count pieces', at: NOW, changes, undone: 0 });
  connection.close();
}

describe('a data file from before names were asked', () => {
  it('keeps every row; nobody is asked, and nobody is named', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = contentOf(file) as Record<string, object[]>;
    open(file).close();
    const after = contentOf(file);
    expect(after.settings).toEqual(
      before.settings!.map((row) => ({ ...sinceImportance('settings', row), askWho: 0 })),
    );
    expect(after.record).toEqual(before.record!.map((row) => ({ ...row, who: '[]' })));
    expect(before.record).toHaveLength(1);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Count pieces');
    const read = store.run('read', ({ rows }) => [
      rows.get('settings', 'shop'),
      rows.get('record', record.id),
    ]);
    expect(read).toMatchObject([
      { name: 'Old name', askWho: false },
      { good: 3, who: [] },
    ]);
  });
});
