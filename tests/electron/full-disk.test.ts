import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore, type Store } from '../../electron/db/open.ts';
import { Backups } from '../../electron/service/backups.ts';
import { exportAll } from '../../electron/service/export.ts';
import { fileLog } from '../../electron/log.ts';
import { anOrder } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import {
  fixedClock,
  keptPushes,
  laterRefusal,
  memoryLog,
  migrations,
  putShop,
  refusalOf,
  STAMP,
} from './support.ts';

/** A disk of three megabytes in memory. Only the administrator of a Linux machine can make one: elsewhere this is left out. */
const disk = mkdtempSync(join(tmpdir(), 'foldweek-disk-'));
const mounted =
  process.platform === 'linux' &&
  spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=3m', 'foldweek', disk]).status === 0;

afterAll(() => {
  if (mounted) spawnSync('umount', [disk]);
  rmSync(disk, { recursive: true, force: true });
});

/** Until nothing more goes on the disk. @returns makes room again */
function fillUp(): () => void {
  const files: string[] = [];
  try {
    for (;;) {
      files.push(join(disk, `fill-${files.length}`));
      writeFileSync(files.at(-1)!, Buffer.alloc(20_000));
    }
  } catch {
    return () => files.forEach((file) => rmSync(file, { force: true }));
  }
}

describe.skipIf(!mounted)('a disk that is really full', () => {
  let makeRoom: () => void;
  let store: Store;
  let backups: Backups;
  let before: string[];
  const kept: string[] = [];
  const log = fileLog(join(disk, 'foldweek.log'));
  const orders = () => store.run('read', ({ rows }) => rows.read('order')).map(({ id }) => id);
  const put = (id: string) =>
    store.run('put', ({ rows }) => rows.put('order', anOrder({ id, note: 'n'.repeat(1900) })));

  beforeAll(async () => {
    store = openStore(join(disk, 'shop.db'), { migrations, stamp: STAMP, log: memoryLog() });
    putShop(store, anEverythingShop());
    before = orders();
    backups = new Backups({ store, clock: fixedClock(), pushes: keptPushes(), log: memoryLog() });
    await backups.make();
    makeRoom = fillUp();
  });
  afterAll(() => store.close());

  it('takes what still fits and refuses the rest, each step whole', () => {
    const refusal = refusalOf(() => {
      for (let n = 0; n < 2000; n++) {
        put(`F${n}`);
        kept.push(`F${n}`);
      }
    });
    expect(refusal.message).toMatch(/disk is full. Nothing of this step was kept; free some space/);
    expect(orders().toSorted()).toEqual([...before, ...kept].toSorted());
  });

  it('says that no backup and no export could be made, and leaves no half of one', async () => {
    const { message } = await laterRefusal(backups.make());
    expect(message).toMatch(/No backup could be made in .*: its disk is full\. Your work is kept/);
    expect((await laterRefusal(exportAll(store, fixedClock(), '1'))).message).toMatch(
      /The export could not be written/,
    );
    expect(readdirSync(join(disk, 'backups'))).toHaveLength(1);
    expect(readdirSync(disk)).not.toContainEqual(expect.stringMatching(/\.part$/));
    expect(() => log.info('said although it cannot be written')).not.toThrow();
  });

  it('with room again goes on with all that was kept, and backups are made', async () => {
    makeRoom();
    put('after');
    expect(orders().toSorted()).toEqual([...before, ...kept, 'after'].toSorted());
    await backups.make();
    expect(backups.troubles()).toEqual([]);
  });
});
