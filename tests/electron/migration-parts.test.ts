import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { aPart, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { withoutLaterFields, contentOf, oldMigrations, withLaterFields, rowWriter } from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });

/** A file of the version before: parts without family and order, materials without measured deductions. */
function fillBefore(file: string): void {
  open(file, oldMigrations(4)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  const shop = anEverythingShop();
  put('settings', withoutLaterFields('settings', shop.settings));
  const kinds = ['material', 'colour', 'sheet', 'part', 'calendar', 'machine', 'order', 'line'] as const;
  for (const kind of kinds) for (const row of shop[kind]) put(kind, withoutLaterFields(kind, row));
  const was = (kind: string, row: object, id: string, own: object) => ({
    kind,
    id,
    before: { ...withoutLaterFields(kind, row), ...own },
    after: withoutLaterFields(kind, row),
  });
  const changes = [
    was('settings', shop.settings, 'shop', { name: 'Old name' }),
    was('material', shop.material[0]!, 'galv', { kFactor: 0.4 }),
    was('part', shop.part[0]!, 'corner', { name: 'Old corner' }),
    { kind: 'part', id: 'gone', before: withoutLaterFields('part', aPart({ id: 'gone' })), after: null },
  ];
  put('step', { label: 'Change much', at: NOW, changes, undone: 0 });
  connection.close();
}

const rowsOf = (file: string) =>
  Object.fromEntries(Object.entries(contentOf(file)).filter(([table]) => table !== 'step')) as Record<
    string,
    object[]
  >;

describe('a data file from before parts had families and shops their own deductions and verdicts', () => {
  it('keeps every row; no part has a family, nothing was measured, every rule is as usual', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = rowsOf(file);
    open(file).close();
    expect(before.part).toHaveLength(2);
    expect(rowsOf(file)).toEqual(withLaterFields(before));
  });

  it('can still undo what was done to parts, materials and settings before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change much');
    const read = store.run('read', ({ rows }) => ({
      settings: rows.get('settings', 'shop'),
      material: rows.get('material', 'galv'),
      part: rows.get('part', 'corner'),
      gone: rows.get('part', 'gone'),
    }));
    expect(read.settings).toMatchObject({ name: 'Old name', partRules: {} });
    expect(read.material).toMatchObject({ kFactor: 0.4, temper: null, deductions: [] });
    expect(read.part).toMatchObject({ name: 'Old corner', bendOrder: null, family: null });
    expect(read.gone).toMatchObject({ id: 'gone', bendOrder: null, family: null });
  });
});
