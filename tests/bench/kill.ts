import { spawn, type ChildProcess } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { instant } from '../../core/units/brand.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { lookInto } from '../../electron/db/backup.ts';
import { openStore } from '../../electron/db/open.ts';
import { putShop } from '../../electron/service/begin.ts';
import { readShop } from '../../electron/service/shop.ts';
import { Client, workUntilGone, type Kept } from './kill-client.ts';

const root = join(import.meta.dirname, '../..');
/** The app is ended somewhere within so long after its first answer. */
const LONGEST_MS = 1200;

const open = (file: string) =>
  openStore(file, {
    migrations: join(root, 'migrations'),
    stamp: '2026-01-01T00-00-00',
    log: { info: () => undefined, error: console.error },
  });

/**
 * Kill the app's process (SIGKILL) at random moments while orders are imported, plans stored, pieces counted and backups
 * made, and look each time whether its file opens, is whole, and holds everything that was said to be kept.
 * It says nothing about power cuts: what the operating system had taken over survives the process.
 */
export async function benchKill(times: number): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'foldweek-kill-'));
  const file = join(folder, 'foldweek.db');
  const result = { times, lost: 0, corrupt: 0, opened: 0 };
  const said = { steps: 0, facts: 0, orders: 0, backups: 0 };
  try {
    fill(file);
    for (let round = 0; round < times; round++) {
      const kept: Kept = { steps: [], facts: [], orders: [], backups: [] };
      await killed(folder, kept, round);
      for (const what of Object.keys(said) as (keyof Kept)[]) said[what] += kept[what].length;
      const found = lookAfter(file, kept);
      result.opened += Number(found.opened);
      result.corrupt += Number(!found.whole);
      result.lost += found.lost;
    }
    process.stderr.write(`Said to be kept: ${JSON.stringify(said)}\n`);
    console.log(JSON.stringify(result));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function fill(file: string): void {
  const store = open(file);
  const shop = loadDemo(join(root, 'demo-data/shop'), instant(Math.floor(Date.now() / 1000)));
  store.run('bench', (work) => putShop(work, shop));
  store.close();
}

async function killed(folder: string, kept: Kept, round: number): Promise<void> {
  const host = spawn(process.execPath, [join(import.meta.dirname, 'kill-host.ts'), folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = new Promise<void>((resolve) => host.once('exit', () => resolve()));
  const client = await Client.enter(await firstLine(host));
  // However its last request ends: only what was answered counts.
  const work = workUntilGone(client, kept, round).catch(() => undefined);
  await sleep(randomInt(LONGEST_MS));
  if (host.exitCode !== null) throw new Error('the app ended by itself');
  host.kill('SIGKILL');
  await Promise.all([gone, work]);
}

async function firstLine(host: ChildProcess): Promise<string> {
  for await (const line of createInterface({ input: host.stdout! })) return line;
  throw new Error('the app did not start');
}

/** What is left of a file whose app was killed. */
function lookAfter(file: string, kept: Kept): { opened: boolean; whole: boolean; lost: number } {
  try {
    const store = open(file);
    const lost = store.run('look', (work) => {
      readShop(work, Math.floor(Date.now() / 1000));
      const { rows, whole } = work;
      const all = (table: 'step' | 'fact') => [...whole.pages(table, 1000)].flat();
      const steps = new Set(all('step').map(({ id }) => id));
      const facts = new Map(all('fact').map(({ id, command }) => [id, JSON.stringify(command)]));
      return (
        kept.steps.filter((id) => !steps.has(id)).length +
        kept.facts.filter(({ id, command }) => facts.get(id) !== JSON.stringify(command)).length +
        kept.orders.filter((id) => rows.get('order', id) === null || rows.get('line', `${id}/1`) === null)
          .length +
        rows.aside.count()
      );
    });
    store.close();
    lookInto(file);
    return {
      opened: true,
      whole: true,
      lost: lost + kept.backups.filter((name) => !isWhole(file, name)).length,
    };
  } catch (error) {
    process.stderr.write(`${String(error)}\n`);
    return { opened: false, whole: false, lost: 0 };
  }
}

function isWhole(file: string, name: string): boolean {
  const backup = join(file, '..', 'backups', name);
  return existsSync(backup) && lookInto(backup).orders > 0;
}
