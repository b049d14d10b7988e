import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { NO_LOT } from '../../core/material/lot.ts';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { beforeLots, contentOf, LIST_TABLES, oldMigrations, rowWriter, sinceLots } from './data-files.ts';
import { editorOf, memoryLog, migrations, openTestStore, STAMP, tempFolder } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const settings = beforeLots('settings', shop.settings);
const sheet = beforeLots('sheet', shop.sheet[0]!);
const line = beforeLots('line', shop.line[0]!);
const [sheetId, lineId] = [shop.sheet[0]!.id, shop.line[0]!.id];

/** A file of the version before, whose histories speak of settings, stock and lines. */
function fillBefore(file: string): void {
  open(file, oldMigrations(13)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  for (const kind of ['material', 'colour', 'sheet', 'part', 'order', 'line'] as const)
    for (const row of shop[kind]) put(kind, beforeLots(kind, row));
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Before' }, after: settings },
    { kind: 'line', id: lineId, before: { ...line, quantity: 7 }, after: line },
    { kind: 'sheet', id: 'gone', before: { ...sheet, id: 'gone' }, after: null },
  ];
  put('step', { label: 'Change much', at: NOW, changes, undone: 0, by: '' });
  put('fact', {
    ...{ at: NOW, keptAt: NOW, command: '{}', label: 'Receive 2', operation: null, machineId: null },
    ...{ by: 'desk', corrects: null, reason: '' },
    changes: [{ kind: 'sheet', id: sheetId, before: { ...sheet, onHand: 1 }, after: sheet }],
  });
  connection.close();
}

describe('a data file from before sheets were told apart by lot', () => {
  it('keeps every row; its shop tells none apart, and no lot is on record', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const { fact: before, ...rest } = contentOf(file) as Record<string, { changes: string }[]>;
    open(file).close();
    const { fact, step, ...after } = contentOf(file) as Record<string, { changes: string }[]>;
    expect(step).toHaveLength(1);
    expect({ ...after, step: rest.step }).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([kind, rows]) => [kind, rows.map((row) => sinceLots(kind, row))]),
      ),
      ...LIST_TABLES,
    });
    const [known] = JSON.parse(before![0]!.changes) as { before: object; after: object }[];
    expect(JSON.parse(fact![0]!.changes)).toEqual([
      { ...known, before: { ...known!.before, ...NO_LOT }, after: { ...known!.after, ...NO_LOT } },
    ]);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change much');
    const read = store.run('read', ({ rows }) => [
      rows.get('settings', 'shop'),
      rows.get('line', lineId),
      rows.get('sheet', 'gone'),
    ]);
    expect(read).toMatchObject([
      { name: 'Before', stockKnows: null },
      { quantity: 7, ...NO_LOT, mixLots: false },
      NO_LOT,
    ]);
  });
});
