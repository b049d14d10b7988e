import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../electron/db/open.ts';
import { NOW, someSettings } from '../support/builders.ts';
import { aCutList, aStep } from '../support/stock-builders.ts';
import { beforeImportance, contentOf, oldMigrations, rowWriter, without } from './data-files.ts';
import { memoryLog, migrations, openTestStore, tempFolder, editorOf, STAMP } from './support.ts';

const open = (file: string, folder = migrations) =>
  openStore(file, { migrations: folder, stamp: STAMP, log: memoryLog() });

const before = aCutList({ steps: [aStep()] as never });
const after = aCutList({ steps: [], revision: 1 });

/** A file of the version before: a changed list that cannot say whether its sheets were taken, and how it was changed. */
function fillBefore(file: string): void {
  open(file, oldMigrations(5)).close();
  const connection = new Database(file);
  const { id, lines, groups, steps, revision } = after;
  connection
    .prepare('insert into cutList values (?, ?, ?, ?, ?)')
    .run(id, JSON.stringify(lines), JSON.stringify(groups), JSON.stringify(steps), revision);
  rowWriter(connection)('settings', without(beforeImportance('settings', someSettings()), 'askWho'));
  const put = connection.prepare('insert into step (label, at, changes, undone) values (?, ?, ?, 0)');
  const change = (own: object) => JSON.stringify([{ kind: 'cutList', id, ...own }]);
  put.run('Move step 1', NOW, change({ before: null, after: without(before, 'taken', 'counted') }));
  put.run(
    'Take step 1 out',
    NOW,
    change({ before: without(before, 'taken', 'counted'), after: without(after, 'taken', 'counted') }),
  );
  connection.close();
}

describe('a data file from before sheets were taken for a run', () => {
  it('keeps its changed lists; their sheets were not taken', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const { cutList } = contentOf(file) as { cutList: object[] };
    open(file).close();
    expect(cutList).toHaveLength(1);
    expect(contentOf(file).cutList).toEqual(cutList.map((row) => ({ ...row, taken: null, counted: '[]' })));
  });

  it('can still undo what was done to a list before', () => {
    const file = join(tempFolder(), 'before.db');
    fillBefore(file);
    const store = openTestStore(file);
    const edit = editorOf(store);
    const read = () => store.run('read', ({ rows }) => rows.get('cutList', before.id));
    expect(edit.undo()).toBe('Take step 1 out');
    expect(read()).toMatchObject({ steps: before.steps, taken: null });
    expect(edit.undo()).toBe('Move step 1');
    expect(read()).toBeNull();
  });
});
