import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeDeliveries,
  contentOf,
  DELIVERY_TABLES,
  oldMigrations,
  rowWriter,
  sinceDeliveries,
} from './data-files.ts';
import { editorOf, memoryLog, migrations, openTestStore, STAMP, tempFolder } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const settings = beforeDeliveries('settings', shop.settings);

/** A file of the version before, whose histories speak of settings. */
function fillBefore(file: string): void {
  open(file, oldMigrations(16)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  for (const kind of ['material', 'colour', 'sheet'] as const) for (const row of shop[kind]) put(kind, row);
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Before' }, after: settings },
  ];
  put('step', { label: 'Rename the shop', at: NOW, changes, undone: 0, by: '' });
  put('fact', {
    ...{ at: NOW, keptAt: NOW, command: '{}', label: 'Settings', operation: null, machineId: null },
    ...{ by: 'desk', corrects: null, reason: '' },
    changes,
  });
  connection.close();
}

describe('a data file from before deliveries were expected', () => {
  it('keeps every row; none is expected, and lines will wait for one that is', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const { fact: before, ...rest } = contentOf(file) as Record<string, { changes: string }[]>;
    open(file).close();
    const { fact, step, ...after } = contentOf(file) as Record<string, { changes: string }[]>;
    expect(step).toHaveLength(1);
    expect({ ...after, step: rest.step }).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([kind, rows]) => [kind, rows.map((row) => sinceDeliveries(kind, row))]),
      ),
      ...DELIVERY_TABLES,
    });
    const [known] = JSON.parse(before![0]!.changes) as { before: object; after: object }[];
    expect(JSON.parse(fact![0]!.changes)).toEqual([
      {
        ...known,
        before: { ...known!.before, awaitMetal: true },
        after: { ...known!.after, awaitMetal: true },
      },
    ]);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Rename the shop');
    expect(store.run('read', ({ rows }) => rows.get('settings', 'shop'))).toMatchObject({
      name: 'Before',
      awaitMetal: true,
    });
  });
});
