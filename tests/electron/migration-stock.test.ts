import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { aSheet, NOW } from '../support/builders.ts';
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

const asBefore = (row: object): object => without(beforeTerms('sheet', row), 'form', 'trimMm');

/** A file of the version before: sheets without form and trim, a history that speaks of some. */
function fillBefore(file: string): void {
  open(file, oldMigrations(2)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  const shop = anEverythingShop();
  put('settings', settingsBefore(shop));
  for (const kind of ['material', 'colour', 'part', 'calendar', 'machine', 'order', 'queue'] as const)
    for (const row of shop[kind]) put(kind, withoutLaterFields(kind, row));
  for (const row of shop.line) put('line', without(beforeTerms('line', row), 'overrun'));
  for (const row of shop.sheet) put('sheet', asBefore(row));
  const changes = [
    {
      kind: 'sheet',
      id: 'galv-24-moss',
      before: asBefore(aSheet({ onHand: 12 })),
      after: asBefore(aSheet()),
    },
    { kind: 'sheet', id: 'galv-22-moss', before: asBefore(aSheet({ id: 'galv-22-moss' })), after: null },
  ];
  put('step', { label: 'Change sheets', at: NOW, changes, undone: 0 });
  connection.close();
}

/** Everything but the history. */
const rowsOf = (file: string) =>
  Object.fromEntries(Object.entries(contentOf(file)).filter(([table]) => table !== 'step')) as Record<
    string,
    object[]
  >;

describe('a data file from before the stock', () => {
  it('keeps every row; what lies in stock are sheets with edges that can be trusted', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = rowsOf(file);
    open(file).close();
    const after = rowsOf(file);
    expect(before.sheet).toHaveLength(3);
    expect(after).toEqual(
      withLaterFields({
        ...before,
        settings: before.settings!.map(withStockWeight),
        line: before.line!.map((row) => ({ ...row, overrun: 0 })),
        sheet: before.sheet!.map((row) => ({ ...row, form: 'sheet', trimMm: 0 })),
        movement: [],
        cutList: [],
      }),
    );
  });

  it('can still undo what was done to a sheet size before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change sheets');
    const read = (id: string) => store.run('read', ({ rows }) => rows.get('sheet', id));
    expect(read('galv-24-moss')).toMatchObject({ onHand: 12, form: 'sheet', trimMm: 0 });
    expect(read('galv-22-moss')).toMatchObject({ onHand: 40, form: 'sheet', trimMm: 0 });
  });
});
