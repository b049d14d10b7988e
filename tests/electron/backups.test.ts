import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { newestUsable, takePlace } from '../../electron/db/backup.ts';
import { aCalendar, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { orders, put, startBackups } from './backup-support.ts';
import { contentOf } from './data-files.ts';
import { laterRefusal, livingIn, openTestStore, STAMP, tempFolder } from './support.ts';

describe('a backup', () => {
  it('holds every row of every table, and is one file that nothing else is needed for', async () => {
    const { file, folder, store, backups } = startBackups();
    const name = await backups.make();
    expect(readdirSync(folder)).toEqual([name]);
    const copied = contentOf(join(folder, name));
    store.close();
    expect(copied).toEqual(contentOf(file));
    expect(copied.line!.length).toBeGreaterThan(0);
  });

  it('made while work goes on holds what had been kept before it was asked for', async () => {
    const { folder, store, backups } = startBackups();
    put(store, '2000');
    const making = backups.make();
    for (let n = 0; n < 50; n++) {
      put(store, `B${n}`);
      await new Promise((resolve) => setImmediate(resolve));
    }
    const name = await making;
    const kept = orders(openTestStore(join(folder, name)));
    expect(kept).toContain('2000');
    expect(orders(store)).toContain('B49');
  });

  it('can be looked into: orders, lines, and when something was last entered', async () => {
    const { store, backups, later } = startBackups();
    store.run('put', ({ steps }) => steps.add('x', later(60), [], ''));
    const name = await backups.make();
    const { order, line } = anEverythingShop();
    expect(await backups.preview(name)).toEqual({
      orders: order.length,
      lines: line.length,
      newest: NOW + 60,
    });
  });

  it('that was damaged since is named, and nothing is done with it', async () => {
    const { folder, store, backups } = startBackups();
    const name = await backups.make();
    writeFileSync(join(folder, name), readFileSync(join(folder, name)).fill(7, 5000, 30_000));
    const before = orders(store);
    expect((await laterRefusal(backups.preview(name))).message).toMatch(/is damaged. Nothing was changed/);
    expect((await laterRefusal(backups.restore(name))).message).toMatch(/is damaged. Nothing was changed/);
    expect(orders(store)).toEqual(before);
  });

  it('of another name than ours is not reached for', async () => {
    const { backups } = startBackups();
    for (const name of ['../shop.db', 'shop.db', 'other 2026-11-30T12-00-00 day.db'])
      expect((await laterRefusal(backups.preview(name))).message).toMatch(/There is no backup/);
  });
});

describe('restoring', () => {
  it('goes on with the backup; what was here until then is a backup too, and the screens read anew', async () => {
    const { store, clock, pushes, backups, later } = startBackups();
    const living = livingIn(store, pushes, clock);
    store.onReplaced(() => living.reload());
    const name = await backups.make();
    put(store, '2000');
    living.reload();
    expect(living.shop.order.map(({ id }) => id)).toContain('2000');
    later(60);
    const { kept } = await backups.restore(name);
    expect(living.shop.order.map(({ id }) => id)).not.toContain('2000');
    expect(pushes.sent.at(-1)).toMatchObject({ kind: 'changes', changes: null });
    put(store, '2001');
    await backups.restore(kept);
    expect(orders(store)).toContain('2000');
    expect(orders(store)).not.toContain('2001');
  });

  it('survives a restart, and leaves one data file', async () => {
    const { file, store, backups } = startBackups();
    const name = await backups.make();
    put(store, '2000');
    await backups.restore(name);
    put(store, '2002');
    store.close();
    expect(readdirSync(dirname(file)).sort()).toEqual(['backups', 'shop.db']);
    const kept = orders(openTestStore(file));
    expect(kept).toContain('2002');
    expect(kept).not.toContain('2000');
  });
});

describe('a backup that cannot be gone back to', () => {
  it('from a newer version is refused, and the work goes on with what was here', async () => {
    const { file, folder, store, backups } = startBackups();
    const name = await backups.make();
    const connection = new Database(join(folder, name));
    connection.pragma('user_version = 999');
    connection.close();
    put(store, '2000');
    expect((await laterRefusal(backups.restore(name))).message).toMatch(/comes from a newer Foldweek/);
    expect(orders(store)).toContain('2000');
    put(store, '2001');
    store.close();
    expect(readdirSync(dirname(file)).filter((name) => /\.(part|aside)$/.test(name))).toEqual([]);
    expect(orders(openTestStore(file))).toContain('2001');
  });
});

describe('a data file that is damaged', () => {
  it('is kept beside the newest backup that can be used, which takes its place', async () => {
    const { file, folder, store, backups, later } = startBackups();
    const good = await backups.make();
    later(60);
    const spoilt = await backups.make();
    writeFileSync(join(folder, spoilt), 'no database');
    store.close();
    writeFileSync(file, 'neither');
    writeFileSync(`${file}-wal`, 'left over');
    expect(newestUsable(file)).toMatchObject({ name: good });
    const kept = takePlace(file, good, STAMP);
    expect(readFileSync(kept, 'utf8')).toBe('neither');
    expect(readFileSync(`${kept}-wal`, 'utf8')).toBe('left over');
    expect(orders(openTestStore(file))).toEqual(anEverythingShop().order.map(({ id }) => id));
  });

  it('without a usable backup has none to offer', () => {
    expect(newestUsable(join(tempFolder(), 'shop.db'))).toBeNull();
  });
});

describe('backups by themselves', () => {
  it('are made each working day; on a day on which no machine is open only when something was changed since', async () => {
    const shop = anEverythingShop();
    const calendar = shop.calendar.map((one) => ({ ...aCalendar(), id: one.id }));
    const { folder, store, backups, later } = startBackups({ ...shop, calendar });
    const nextDay = async () => {
      later(86_400);
      await backups.look();
      return readdirSync(folder).length;
    };
    // The clock begins on a Monday; the machines are open until Friday, and this Saturday for overtime.
    await backups.look();
    const week = [await nextDay(), await nextDay(), await nextDay(), await nextDay(), await nextDay()];
    expect(week).toEqual([2, 3, 4, 5, 6]);
    expect(await nextDay()).toBe(6);
    put(store, '2000');
    await backups.look();
    expect(readdirSync(folder)).toHaveLength(7);
    expect(await nextDay()).toBe(8);
  });

  it('are made at the start (what was cut off before goes), before an import, and where none can be made it is said and stops nothing', async () => {
    const { folder, backups, file } = startBackups();
    mkdirSync(folder);
    for (const end of ['', '-journal'])
      writeFileSync(join(folder, `shop 2026-11-30T11-00-00 day.db.part${end}`), 'cut off');
    const stop = backups.watch();
    await stop();
    expect(readdirSync(folder)).toEqual([expect.stringMatching(/ start\.db$/)]);
    renameSync(folder, `${folder}-was`);
    writeFileSync(folder, 'a file where the folder was');
    await backups.before('before-import');
    expect(backups.troubles().join()).toMatch(
      /No backup could be made in .*Your work is kept in the data file/,
    );
    rmSync(folder);
    await backups.before('before-import');
    expect(backups.troubles()).toEqual([]);
    expect(readdirSync(dirname(file))).toContain('backups');
  });
});
