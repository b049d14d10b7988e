import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { NO_LOT } from '../../core/material/lot.ts';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { beforeTerms, contentOf, NAME_TABLES, oldMigrations, rowWriter, sinceTerms } from './data-files.ts';
import { editorOf, memoryLog, migrations, openTestStore, STAMP, tempFolder } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const settings = beforeTerms('settings', shop.settings);
const line = beforeTerms('line', shop.line[0]!);
/** A reason that quotes what the migration looks for, which must stay as it was written. */
const REASON = 'He said "kind":"line"';

/** A file of the version before, whose histories speak of settings and of a line, added, changed and removed. */
function fillBefore(file: string): void {
  open(file, oldMigrations(10)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  for (const kind of ['material', 'colour', 'part', 'order'] as const)
    for (const row of shop[kind]) put(kind, beforeTerms(kind, row));
  put('line', line);
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: REASON }, after: settings },
    { kind: 'line', id: '1042/1', before: { ...line, quantity: 7 }, after: line },
    {
      kind: 'line',
      id: '1042/9',
      before: { ...line, id: '1042/9', number: 9 },
      after: null,
    },
  ];
  put('step', { label: 'Change much', at: NOW, changes, undone: 0, by: '' });
  const pin = { kind: 'pin', id: '1043/1:shear', before: null, after: { id: '1043/1:shear', revision: 0 } };
  put('step', { label: 'Pin', at: NOW, changes: [pin], undone: 1, by: '' });
  put('fact', {
    ...{ at: NOW, keptAt: NOW, command: '{}', label: 'Done', operation: '1042/1:brake', machineId: 'B1' },
    ...{ by: 'floor B1', corrects: null, reason: REASON },
    changes: [{ kind: 'line', id: '1042/1', before: line, after: { ...line, status: 'done' } }],
  });
  connection.close();
}

describe('a data file from before lines had terms of their own and files names', () => {
  it('keeps every row; lines have no terms of their own, the shop writes points, no names are known', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const before = contentOf(file) as Record<string, { changes: string }[]>;
    open(file).close();
    const { fact, step, ...after } = contentOf(file) as Record<string, { changes: string }[]>;
    const { fact: factBefore, step: stepBefore, ...rest } = before;
    expect(after).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([kind, rows]) => [kind, rows.map((row) => sinceTerms(kind, row))]),
      ),
      ...NAME_TABLES,
    });
    expect(step![1]).toEqual(stepBefore![1]);
    expect(fact).toMatchObject([{ reason: REASON, label: 'Done' }]);
    const own = { due: null, release: null, importance: null, note: '', ...NO_LOT, mixLots: false };
    const [change] = JSON.parse(fact![0]!.changes) as object[];
    const [known] = JSON.parse(factBefore![0]!.changes) as { before: object; after: object }[];
    expect(change).toEqual({
      ...known,
      before: { ...known!.before, ...own },
      after: { ...known!.after, ...own },
    });
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change much');
    const read = store.run('read', ({ rows }) => [
      rows.get('settings', 'shop'),
      rows.get('line', '1042/1'),
      rows.get('line', '1042/9'),
    ]);
    expect(read).toMatchObject([
      { name: REASON, decimals: 'point', setUpDone: [] },
      { quantity: 7, due: null, note: '' },
      { number: 9, release: null, importance: null },
    ]);
  });
});
