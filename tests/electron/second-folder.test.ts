import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import fs from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { anEverythingShop } from '../support/everything-shop.ts';
import { orders, put, startBackups } from './backup-support.ts';
import { laterRefusal, tempFolder } from './support.ts';

describe('the second folder', () => {
  const withSecond = () => {
    const second = join(tempFolder(), 'drive');
    const shop = anEverythingShop();
    return { second, ...startBackups({ ...shop, settings: { ...shop.settings, backupFolder: second } }) };
  };

  it('gets each backup as well', async () => {
    const { second, folder, backups } = withSecond();
    mkdirSync(second);
    const name = await backups.make();
    await settled(() => readdirSync(second).includes(name));
    expect(readFileSync(join(second, name)).equals(readFileSync(join(folder, name)))).toBe(true);
    expect((await backups.read()).backups[0]).toMatchObject({ name, where: 'both' });
    expect(backups.troubles()).toEqual([]);
  });

  it('that is away is said and stops nothing; when it is there again it gets the newest backup', async () => {
    const { second, folder, backups, pushes } = withSecond();
    const name = await backups.make();
    expect(readdirSync(folder)).toEqual([name]);
    await settled(() => backups.troubles().length > 0);
    expect(backups.troubles().join()).toMatch(
      /second folder for backups, .*drive, got none: it is not there.*connect the drive/,
    );
    expect(pushes.sent).toContainEqual({ kind: 'notice' });
    mkdirSync(second);
    await backups.read();
    await settled(() => backups.troubles().length === 0);
    expect(readdirSync(second)).toEqual([name]);
  });

  it('on a network that does not answer holds nothing up: it is said, and not asked again until it has answered', async () => {
    const { second, folder, backups } = withSecond();
    mkdirSync(second);
    const { asked, answer } = silent(second);
    const name = await backups.make();
    await settled(() => asked() > 0);
    vi.advanceTimersByTime(61_000);
    await settled(() => backups.troubles().length > 0);
    expect(backups.troubles().join()).toMatch(/got none: it does not answer/);
    await backups.read();
    expect(readdirSync(folder)).toContain(name);
    expect(asked()).toBe(1);
    answer();
    await settled(() => backups.troubles().length === 0 || (void backups.read(), false));
    expect(readdirSync(second)).toEqual([name]);
  });

  it('that does not answer lets a backup wait that only it has: it is said, and every other backup goes on', async () => {
    const { second, folder, store, backups, later } = withSecond();
    mkdirSync(second);
    const name = await backups.make();
    await settled(() => readdirSync(second).includes(name));
    rmSync(folder, { recursive: true });
    later(60);
    const { asked, answer } = silent(second);
    const preview = laterRefusal(backups.preview(name));
    await settled(() => asked() > 0);
    const own = await backups.make();
    vi.advanceTimersByTime(61_000);
    expect((await preview).message).toMatch(
      /second folder for backups, .*drive, does not answer.*Nothing was changed.*try again/,
    );
    const before = orders(store);
    expect((await laterRefusal(backups.restore(name))).message).toMatch(/does not answer/);
    expect(orders(store)).toEqual(before);
    expect(readdirSync(folder)).toEqual([own]);
    answer();
    await settled(() => readdirSync(folder).includes(name));
    expect(await backups.preview(name)).toMatchObject({ orders: before.length });
  });

  it('gives a backup back that the first has lost', async () => {
    const { second, folder, store, backups } = withSecond();
    mkdirSync(second);
    const name = await backups.make();
    await settled(() => readdirSync(second).includes(name));
    put(store, '2000');
    rmSync(folder, { recursive: true });
    expect((await backups.read()).backups).toMatchObject([{ name, where: 'second' }]);
    await backups.restore(name);
    expect(orders(store)).not.toContain('2000');
  });
});

/** A folder that answers nothing that is asked of it or of a file in it, with the timers in hand, until it is told to. */
function silent(folder: string) {
  const { stat } = fs;
  let asked = 0;
  let answer = (): void => undefined;
  const silence = new Promise<void>((resolve) => (answer = resolve));
  fs.stat = (async (path: string) => {
    if (!path.startsWith(folder)) return stat(path);
    asked += 1;
    return silence.then(() => stat(path));
  }) as typeof stat;
  syncBuiltinESMExports();
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  onTestFinished(() => {
    vi.useRealTimers();
    fs.stat = stat;
    syncBuiltinESMExports();
  });
  return { asked: () => asked, answer: () => answer() };
}

/** Waits for what goes on beside, whatever timers stand still. */
async function settled(done: () => boolean): Promise<void> {
  const until = Date.now() + 5000;
  while (!done()) {
    if (Date.now() > until) throw new Error('it did not come to that');
    await new Promise((resolve) => setImmediate(resolve));
  }
}
