import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  beforeImportance,
  contentOf,
  oldMigrations,
  PUBLISHING_TABLES,
  rowWriter,
  sinceImportance,
  without,
} from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });
const shop = anEverythingShop();

/** A file of the version before, with hours of a machine out of use and its history. */
function fillBefore(file: string): void {
  open(file, oldMigrations(7)).close();
  const connection = new Database(file);
  const put = rowWriter(connection);
  put('settings', beforeImportance('settings', { ...shop.settings, crewLimit: 3 }));
  for (const row of shop.calendar) put('calendar', row);
  for (const row of shop.machine) put('machine', beforeImportance('machine', row));
  const [downtime] = shop.downtime;
  put('downtime', downtime!);
  const changes = [{ kind: 'downtime', id: downtime!.id, before: null, after: downtime }];
  put('step', { label: 'Add downtime', at: NOW, changes, undone: 0 });
  connection.close();
}

const filled = (): string => {
  const file = join(tempFolder(), 'before.db');
  fillBefore(file);
  return file;
};

describe('a data file from before people could be out', () => {
  it('keeps every row, and nobody is out', () => {
    const file = filled();
    const before = contentOf(file) as Record<string, object[]>;
    open(file).close();
    expect(before.downtime).toHaveLength(1);
    const kept = Object.fromEntries(
      Object.entries(before).map(([kind, rows]) => [kind, rows.map((row) => sinceImportance(kind, row))]),
    );
    const { step: steps, ...after } = contentOf(file);
    expect(after).toEqual({ ...without(kept, 'step'), ...PUBLISHING_TABLES, absence: [] });
    expect(steps).toHaveLength(1);
  });

  it('can still undo what was done before, and takes people who are out, undone and done again', () => {
    const store = openTestStore(filled());
    const edit = editorOf(store);
    expect(edit.undo()).toBe('Add downtime');
    const row = { id: 'out-1', people: 2, from: NOW, to: NOW + 3600, reason: 'course', revision: 0 };
    edit.apply({ do: 'row.save', kind: 'absence', row: row as never });
    const read = () => store.run('read', ({ rows }) => rows.read('absence'));
    expect(read()).toMatchObject([{ id: 'out-1', people: 2, reason: 'course' }]);
    edit.undo();
    expect(read()).toEqual([]);
    edit.redo();
    expect(read()).toMatchObject([{ people: 2, reason: 'course' }]);
  });
});
