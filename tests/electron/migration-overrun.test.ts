import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { defaultWeights } from '../../core/shop/settings.ts';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeTerms,
  withoutLaterFields,
  contentOf,
  oldMigrations,
  settingsBefore,
  without,
  withStockWeight,
  withLaterFields,
  rowWriter,
} from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const lineBefore = (row: object): object => without(beforeTerms('line', row), 'overrun');

/** A file of the version before: lines without overrun, weights without stock, a history that speaks of both. */
function fillBefore(file: string): void {
  open(file, oldMigrations(3)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  const shop = anEverythingShop();
  put('settings', settingsBefore(shop));
  const kinds = ['material', 'colour', 'sheet', 'part', 'calendar', 'machine', 'order', 'queue'] as const;
  for (const kind of kinds) for (const row of shop[kind]) put(kind, withoutLaterFields(kind, row));
  for (const row of shop.line) put('line', lineBefore(row));
  const settings = settingsBefore(shop);
  const line = { ...lineBefore(shop.line[0]!), id: shop.line[0]!.id };
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Old name' }, after: settings },
    { kind: 'line', id: line.id, before: { ...line, quantity: 21 }, after: line },
  ];
  put('step', { label: 'Rename the shop', at: NOW, changes, undone: 0 });
  connection.close();
}

const rowsOf = (file: string) =>
  Object.fromEntries(Object.entries(contentOf(file)).filter(([table]) => table !== 'step')) as Record<
    string,
    object[]
  >;

describe('a data file from before lines had an overrun and stock a weight', () => {
  it('keeps every row; no line may be cut over, stock weighs what it does in a new shop', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = rowsOf(file);
    open(file).close();
    expect(rowsOf(file)).toEqual(
      withLaterFields({
        ...before,
        settings: before.settings!.map(withStockWeight),
        line: before.line!.map((row) => ({ ...row, overrun: 0 })),
      }),
    );
  });

  it('can still undo what was done to a line and to the settings before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Rename the shop');
    const { settings, line } = store.run('read', ({ rows }) => ({
      settings: rows.get('settings', 'shop'),
      line: rows.get('line', anEverythingShop().line[0]!.id),
    }));
    expect(settings).toMatchObject({ name: 'Old name', weights: { material: defaultWeights.material } });
    expect(line).toMatchObject({ quantity: 21, overrun: 0 });
  });
});
