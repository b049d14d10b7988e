import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeSteps,
  contentOf,
  DELIVERY_TABLES,
  oldMigrations,
  rowWriter,
  sinceSteps,
} from './data-files.ts';
import { editorOf, memoryLog, migrations, openTestStore, STAMP, tempFolder } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();
const part = beforeSteps('part', shop.part[0]!);

/** A file of the version before, with machines that others refer to and a history that speaks of parts. */
function fillBefore(file: string): void {
  open(file, oldMigrations(15)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', beforeSteps('settings', shop.settings));
  for (const row of shop.part) put('part', beforeSteps('part', row));
  for (const row of shop.calendar) put('calendar', row);
  for (const row of shop.machine) put('machine', row);
  for (const row of shop.queue) put('queue', row);
  const { id } = shop.part[0]!;
  const changes = [
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

describe('a data file from before routings had further steps', () => {
  it('keeps every row; no part has a further step, and what refers to a machine still does', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const { fact: before, ...rest } = contentOf(file) as Record<string, { changes: string }[]>;
    open(file).close();
    const { fact, step, ...after } = contentOf(file) as Record<string, { changes: string }[]>;
    expect(step).toHaveLength(1);
    expect({ ...after, step: rest.step }).toEqual({
      ...Object.fromEntries(
        Object.entries(rest).map(([kind, rows]) => [kind, rows.map((row) => sinceSteps(kind, row))]),
      ),
      ...DELIVERY_TABLES,
    });
    const [known] = JSON.parse(before![0]!.changes) as { after: object }[];
    expect(JSON.parse(fact![0]!.changes)).toEqual([{ ...known, after: { ...known!.after, steps: [] } }]);
  });

  it('can still undo what was done before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    expect(editorOf(store).undo()).toBe('Change much');
    const read = store.run('read', ({ rows }) => [
      rows.get('part', shop.part[0]!.id),
      rows.get('part', 'gone'),
    ]);
    expect(read).toMatchObject([{ name: 'Before', steps: [] }, { steps: [] }]);
  });
});
