import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { at, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeTerms,
  contentOf,
  oldMigrations,
  PUBLISHING_TABLES,
  rowWriter,
  without,
} from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const weights = { ...without(shop.settings.weights, 'stability'), calm: 0.5 };
const settings = {
  ...without(beforeTerms('settings', shop.settings), 'currency', 'publishing', 'backupFolder'),
  weights,
};
const rush = shop.order.find(({ importance }) => importance !== 1)!;
const order = { ...without(rush, 'importance', 'closedAt'), weight: rush.importance };
/** A reason that quotes a field's old name, which must stay as it was written. */
const REASON = 'He said "aside":true, "calm": and "weight":';
const pauses = [
  { from: at('2026-11-27', '10:00'), to: at('2026-11-27', '11:00'), reason: 'Tea' },
  { from: at('2026-11-27', '12:00'), to: null, reason: REASON, aside: true },
];
const record = { ...shop.record[0]!, end: null, pauses };

/** A file of the version before, whose history speaks of settings, an order and a record. */
function fillBefore(file: string): void {
  open(file, oldMigrations(8)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  put('order', order);
  put('record', record);
  const changes = [
    {
      kind: 'settings',
      id: 'shop',
      before: { ...settings, weights: { ...weights, calm: 2 } },
      after: settings,
    },
    { kind: 'order', id: rush.id, before: { ...order, weight: 3 }, after: order },
    { kind: 'record', id: record.id, before: { ...record, good: 3 }, after: record },
  ];
  put('step', { label: 'Change what matters', at: NOW, changes, undone: 0 });
  connection.close();
}
const suspended = [pauses[0], { ...without(pauses[1]!, 'aside'), suspended: true }];

describe('a data file from before importance, stability and a currency', () => {
  it('keeps every row under the new names, and what people wrote as they wrote it', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = contentOf(file) as Record<string, object[]>;
    open(file).close();
    const after = contentOf(file) as Record<string, { pauses: string; weights: string }[]>;
    expect(after).toMatchObject(PUBLISHING_TABLES);
    expect(after.order).toEqual([
      { ...without(before.order![0]!, 'weight'), importance: rush.importance, closedAt: null },
    ]);
    expect(after.settings![0]).toMatchObject({ currency: null });
    expect(JSON.parse(after.settings![0]!.weights)).toEqual({ ...without(weights, 'calm'), stability: 0.5 });
    expect(JSON.parse(after.record![0]!.pauses)).toEqual(suspended);
    expect(without(after.record![0]!, 'pauses')).toEqual(without(before.record![0]!, 'pauses'));
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change what matters');
    const read = store.run('read', ({ rows }) => [
      rows.get('settings', 'shop'),
      rows.get('order', rush.id),
      rows.get('record', record.id),
    ]);
    expect(read).toMatchObject([
      { currency: null, weights: { stability: 2 } },
      { importance: 3 },
      { good: 3, pauses: suspended },
    ]);
  });
});
