import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { beforeTools, contentOf, oldMigrations, rowWriter, sinceTools, TOOL_TABLES } from './data-files.ts';
import { editorOf, memoryLog, migrations, openTestStore, STAMP, tempFolder } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const settings = beforeTools('settings', shop.settings);
const brake = beforeTools('machine', shop.machine[0]!);

/** A file of the version before, whose histories speak of settings and of a machine. */
function fillBefore(file: string): void {
  open(file, oldMigrations(11)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', settings);
  for (const row of shop.calendar) put('calendar', row);
  for (const row of shop.machine) put('machine', beforeTools('machine', row));
  const changes = [
    { kind: 'settings', id: 'shop', before: { ...settings, name: 'Before' }, after: settings },
    { kind: 'machine', id: 'B1', before: { ...brake, tonnes: 40 }, after: brake },
    { kind: 'machine', id: 'B9', before: { ...brake, id: 'B9' }, after: null },
  ];
  put('step', { label: 'Change much', at: NOW, changes, undone: 0, by: '' });
  put('fact', {
    ...{ at: NOW, keptAt: NOW, command: '{}', label: 'Done', operation: null, machineId: 'B1' },
    ...{ by: 'floor B1', corrects: null, reason: '' },
    changes: [{ kind: 'machine', id: 'B1', before: brake, after: { ...brake, state: null } }],
  });
  connection.close();
}

describe('a data file from before brakes had tools', () => {
  it('keeps every row; no tools are on record, and times stay those of the first edition', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const { fact: before, ...rest } = contentOf(file) as Record<string, { changes: string }[]>;
    open(file).close();
    const { fact, step, ...after } = contentOf(file) as Record<string, { changes: string }[]>;
    expect(step).toHaveLength(1);
    expect({ ...after, step: rest.step }).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([kind, rows]) => [kind, rows.map((row) => sinceTools(kind, row))]),
      ),
      ...TOOL_TABLES,
    });
    const own = { betweenFramesMm: null, timesEdition: 1 };
    const [known] = JSON.parse(before![0]!.changes) as { before: object; after: object }[];
    expect(JSON.parse(fact![0]!.changes)).toEqual([
      { ...known, before: { ...known!.before, ...own }, after: { ...known!.after, ...own } },
    ]);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change much');
    const read = store.run('read', ({ rows }) => [
      rows.get('settings', 'shop'),
      rows.get('machine', 'B1'),
      rows.get('machine', 'B9'),
    ]);
    expect(read).toMatchObject([
      { name: 'Before', remnants: null },
      { tonnes: 40, betweenFramesMm: null, timesEdition: 1 },
      { betweenFramesMm: null, timesEdition: 1 },
    ]);
  });
});
