import { writeFileSync, mkdirSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Store } from '../../electron/db/open.ts';
import { Backups } from '../../electron/service/backups.ts';
import { aShop } from '../support/builders.ts';
import { fixedClock, keptPushes, memoryLog, openTestStore, STAMP, storeWith, tempFolder } from './support.ts';

/** What the user was asked, and what is answered: the label that a button's own contains. */
const asked = vi.hoisted(() => ({
  buttons: [] as string[][],
  details: [] as string[],
  answers: [] as string[],
  meanwhile: () => {},
}));
vi.mock('electron', () => ({
  dialog: {
    showMessageBoxSync({ buttons, detail }: { buttons: string[]; detail: string }) {
      asked.buttons.push(buttons);
      asked.details.push(detail);
      asked.meanwhile();
      const answer = asked.answers.shift() ?? 'Quit';
      return buttons.findIndex((label) => label.includes(answer));
    },
  },
}));
const { openWithDialog } = await import('../../electron/open-data.ts');

afterEach(() => Object.assign(asked, { buttons: [], details: [], answers: [], meanwhile: () => {} }));

const openAt = (file: string) => openWithDialog(file, (path) => openTestStore(path), STAMP);
const orders = (store: Store) => store.run('read', ({ rows }) => rows.read('order').length);

describe('a data file at the start', () => {
  it('that is whole is opened without a question', () => {
    const file = join(tempFolder(), 'shop.db');
    storeWith(aShop(), file).close();
    expect(openAt(file)).toMatchObject({ notice: null });
    expect(asked.buttons).toEqual([]);
  });

  it('out of reach is tried again, and gets no empty one in its place', () => {
    const file = join(tempFolder(), 'drive', 'shop.db');
    const away = `${dirname(file)}-away`;
    mkdirSync(dirname(file));
    storeWith(aShop(), file).close();
    renameSync(dirname(file), away);
    asked.answers = ['Try again'];
    asked.meanwhile = () => renameSync(away, dirname(file));
    const opened = openAt(file);
    expect(asked.buttons).toEqual([['Quit', 'Try again']]);
    expect(asked.details[0]).toMatch(/cannot be reached \(its folder is not there\)/);
    expect(orders(opened!.store)).toBe(aShop().order.length);
  });

  it('from a newer version is named as that, and can only be left', () => {
    const file = join(tempFolder(), 'shop.db');
    storeWith(aShop(), file).close();
    const connection = new Database(file);
    connection.pragma('user_version = 999');
    connection.close();
    expect(openAt(file)).toBeNull();
    expect(asked.buttons).toEqual([['Quit', 'Try again']]);
    expect(asked.details[0]).toMatch(/comes from a newer Foldweek/);
  });

  it('that is damaged is kept, and its newest backup is worked in, if the user says so', async () => {
    const file = join(tempFolder(), 'shop.db');
    const store = storeWith(aShop(), file);
    await new Backups({ store, clock: fixedClock(), pushes: keptPushes(), log: memoryLog() }).make();
    store.close();
    writeFileSync(file, 'no database at all, and long enough for a header');
    asked.answers = ['Open the backup of'];
    const opened = openAt(file);
    expect(asked.buttons[0]).toEqual([
      'Quit',
      expect.stringMatching(/^Open the backup of /),
      'Work in shop-2.db instead',
    ]);
    expect(orders(opened!.store)).toBe(aShop().order.length);
    expect(opened!.notice).toMatch(/was damaged; it is kept as .*\.damaged-.*You are working in the backup/);
  });

  it('that is damaged and has no backup can be left alone beside another one', () => {
    const file = join(tempFolder(), 'shop.db');
    writeFileSync(file, 'no database at all, and long enough for a header');
    asked.answers = ['Work in'];
    const opened = openAt(file);
    expect(asked.buttons[0]).toEqual(['Quit', 'Work in shop-2.db instead']);
    expect(opened!.store.file).toBe(join(dirname(file), 'shop-2.db'));
    expect(opened!.notice).toMatch(/is damaged.*You are working in .*shop-2\.db/);
  });
});
