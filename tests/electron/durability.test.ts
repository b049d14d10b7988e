import { chmodSync, mkdirSync, readdirSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { connect } from '../../electron/db/connection.ts';
import { anOrder, aShop } from '../support/builders.ts';
import { memoryLog, migrations, openTestStore, refusalOf, STAMP, storeWith, tempFolder } from './support.ts';

/** Connections as they are opened, to make the disk seem full. */
const opened = vi.hoisted((): Database.Database[] => []);
vi.mock(import('../../electron/db/connection.ts'), async (original) => {
  const real = await original();
  return {
    ...real,
    connect(...given) {
      const connection = real.connect(...given);
      opened.push(connection);
      return connection;
    },
  };
});

const open = (file: string) => connect(file, { migrations, stamp: STAMP, log: memoryLog() });

/** What is set on a new file's connection. */
function pragmas(): Record<string, unknown> {
  const connection = open(join(tempFolder(), 'new.db'));
  const names = ['journal_mode', 'synchronous', 'fullfsync', 'checkpoint_fullfsync', 'foreign_keys'];
  const set = names.map((name) => [name, connection.pragma(name, { simple: true })]);
  connection.close();
  return Object.fromEntries(set) as Record<string, unknown>;
}

describe('power cuts', () => {
  it('lose no commit that was answered: each is synced before (FULL is 2)', () => {
    expect(pragmas()).toMatchObject({ journal_mode: 'wal', synchronous: 2, foreign_keys: 1 });
  });

  it('on a Mac: the drive’s own cache is emptied too, which nothing else does there', () => {
    const platform = vi.spyOn(process, 'platform', 'get').mockReturnValue('darwin');
    onTestFinished(() => platform.mockRestore());
    expect(pragmas()).toMatchObject({ synchronous: 2, fullfsync: 1, checkpoint_fullfsync: 1 });
  });
});

const orders = (store: ReturnType<typeof openTestStore>) =>
  store.run('read', ({ rows }) => rows.read('order')).map(({ id }) => id);
const put = (store: ReturnType<typeof openTestStore>, id: string) =>
  store.run('put', ({ rows }) => rows.put('order', anOrder({ id })));

describe('a data file whose folder goes away', () => {
  const away = (file: string) => `${dirname(file)}-away`;

  it('takes nothing more, and says so; when it is back the work goes on with all that was kept', () => {
    const file = join(tempFolder(), 'shop', 'shop.db');
    mkdirSync(dirname(file));
    const store = storeWith(aShop(), file);
    const before = orders(store);
    renameSync(dirname(file), away(file));
    const refusal = refusalOf(() => put(store, '2000'));
    expect(refusal).toMatchObject({ code: 'unavailable' });
    expect(refusal.message).toMatch(/cannot be reached.*Nothing of this step was kept.*try again/);
    renameSync(away(file), dirname(file));
    expect(orders(store)).toEqual(before);
    put(store, '2001');
    expect(orders(store)).toEqual([...before, '2001']);
  });

  it('that goes in the middle of a step keeps nothing of that step', () => {
    const file = join(tempFolder(), 'shop', 'shop.db');
    mkdirSync(dirname(file));
    const store = storeWith(aShop(), file);
    const before = orders(store);
    expect(
      refusalOf(() =>
        store.run('put', ({ rows }) => {
          rows.put('order', anOrder({ id: '2000' }));
          renameSync(dirname(file), away(file));
        }),
      ).code,
    ).toBe('unavailable');
    renameSync(away(file), dirname(file));
    expect(orders(store)).toEqual(before);
  });

  it('and comes back as a copy: the copy is opened, and whoever holds the shop is told', () => {
    const folder = tempFolder();
    const file = join(folder, 'shop.db');
    const store = storeWith(aShop(), file);
    let told = 0;
    store.onReplaced(() => (told += 1));
    const other = join(tempFolder(), 'shop.db');
    const second = storeWith(aShop(), other);
    put(second, '3000');
    second.close();
    for (const end of ['', '-wal']) renameSync(`${file}${end}`, `${file}.was${end}`);
    renameSync(other, file);
    expect(orders(store)).toContain('3000');
    expect(told).toBe(1);
    put(store, '3001');
    store.close();
    expect(orders(openTestStore(file))).toContain('3001');
  });

  it('is not made anew where it was expected: its drive may be unplugged', () => {
    const file = join(tempFolder(), 'gone', 'shop.db');
    const refusal = refusalOf(() => open(file));
    expect(refusal).toMatchObject({ code: 'unavailable' });
    expect(refusal.message).toMatch(/its folder is not there.*connect the drive/);
  });
});

describe('a full disk', () => {
  it('keeps nothing of a step and says so; with room again, work goes on', () => {
    const file = join(tempFolder(), 'shop.db');
    const store = storeWith(aShop(), file);
    const before = orders(store);
    const connection = opened.at(-1)!;
    const pages = connection.pragma('page_count', { simple: true }) as number;
    connection.pragma(`max_page_count = ${pages}`);
    const refusal = refusalOf(() =>
      store.run('put', ({ rows }) => {
        for (let n = 0; n < 2000; n++) rows.put('order', anOrder({ id: `F${n}` }));
      }),
    );
    expect(refusal).toMatchObject({ code: 'refused' });
    expect(refusal.message).toMatch(/disk is full. Nothing of this step was kept/);
    expect(orders(store)).toEqual(before);
    connection.pragma('max_page_count = 1000000');
    put(store, '2001');
    expect(orders(store)).toEqual([...before, '2001']);
  });
});

describe.skipIf(process.platform === 'win32')('a data file that may only be read', () => {
  /** As someone who is not the administrator, whom no permission stops. */
  const asUser = <T>(work: () => T): T => {
    if (process.geteuid?.() !== 0) return work();
    process.seteuid?.(65_534);
    try {
      return work();
    } finally {
      process.seteuid?.(0);
    }
  };

  it('is not called damaged: it is named as what it is', () => {
    const file = join(tempFolder(), 'shop.db');
    storeWith(aShop(), file).close();
    chmodSync(file, 0o444);
    chmodSync(dirname(file), 0o555);
    const refusal = asUser(() => refusalOf(() => open(file)));
    chmodSync(dirname(file), 0o755);
    expect(refusal).toMatchObject({ code: 'unavailable' });
    expect(refusal.message).toMatch(/is whole, but this user may not write it/);
  });

  it('nor is a folder in which none can be made', () => {
    const folder = tempFolder();
    chmodSync(folder, 0o555);
    const refusal = asUser(() => refusalOf(() => open(join(folder, 'new.db'))));
    expect(refusal).toMatchObject({ code: 'unavailable' });
    expect(readdirSync(folder)).toEqual([]);
  });
});
