import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NO_EXTRA_BLANKS } from '../../core/part/extra-blanks.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { beforeExtra, contentOf, LIST_TABLES, oldMigrations, rowWriter, sinceExtra } from './data-files.ts';
import { editorOf, memoryLog, migrations, openTestStore, STAMP, tempFolder } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const settings = beforeExtra('settings', shop.settings);
const part = beforeExtra('part', shop.part[0]!);

/** A file of the version before, whose histories speak of settings and of parts. */
function fillBefore(file: string): void {
  open(file, oldMigrations(12)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  for (const row of shop.part) put('part', beforeExtra('part', row));
  const { id } = shop.part[0]!;
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Before' }, after: settings },
    { kind: 'part', id, before: { ...part, name: 'Before' }, after: part },
    { kind: 'part', id: 'gone', before: { ...part, id: 'gone' }, after: null },
  ];
  put('step', { label: 'Change much', at: NOW, changes, undone: 0, by: '' });
  put('fact', {
    ...{ at: NOW, keptAt: NOW, command: '{}', label: 'Walk-in', operation: null, machineId: null },
    ...{ by: 'floor S1', corrects: null, reason: '' },
    changes: [{ kind: 'part', id, before: null, after: part }],
  });
  connection.close();
}

describe('a data file from before blanks were cut to set up with', () => {
  it('keeps every row, and cuts as many blanks as pieces', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const { fact: before, ...rest } = contentOf(file) as Record<string, { changes: string }[]>;
    open(file).close();
    const { fact, step, ...after } = contentOf(file) as Record<string, { changes: string }[]>;
    expect(step).toHaveLength(1);
    expect({ ...after, step: rest.step }).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([kind, rows]) => [kind, rows.map((row) => sinceExtra(kind, row))]),
      ),
      ...LIST_TABLES,
    });
    const [known] = JSON.parse(before![0]!.changes) as { after: object }[];
    expect(JSON.parse(fact![0]!.changes)).toEqual([
      { ...known, after: { ...known!.after, extraBlanks: null, steps: [] } },
    ]);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change much');
    const read = store.run('read', ({ rows }) => [
      rows.get('settings', 'shop'),
      rows.get('part', shop.part[0]!.id),
      rows.get('part', 'gone'),
    ]);
    expect(read).toMatchObject([
      { name: 'Before', extraBlanks: NO_EXTRA_BLANKS },
      { name: 'Before', extraBlanks: null },
      { extraBlanks: null },
    ]);
  });
});
