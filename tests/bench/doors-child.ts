import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Verdict } from '../support/doors/case.ts';
import { tryFile, type Hosts } from '../support/doors/file-case.ts';
import { openDoorHost } from '../support/doors/host.ts';
import { tryRequest } from '../support/doors/request-case.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import type { FromChild, ToChild } from './doors.ts';

/** Tries cases one after the other for tests/bench/doors.ts, in a process of its own, which may be lost. */

const tell = (message: FromChild): void => void process.send?.(message);
const folder = mkdtempSync(join(tmpdir(), 'foldweek-doors-'));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));

async function open(): Promise<Hosts> {
  for (const name of ['shop', 'fresh']) mkdirSync(join(folder, name));
  return {
    shop: await openDoorHost(join(folder, 'shop'), anEverythingShop()),
    fresh: await openDoorHost(join(folder, 'fresh'), null),
  };
}

async function work({ door, from, to, seed }: ToChild): Promise<void> {
  const hosts = await open();
  const once = (k: number): Promise<Verdict> => (door === 'file' ? tryFile : tryRequest)(hosts, seed + k);
  for (let k = from; k < to; k++) {
    tell({ kind: 'begun', k });
    let verdict = await once(k);
    // A machine that does something else for a second is no fault: what hangs, hangs again.
    for (let again = 0; again < 2 && verdict.fault === 'hung'; again++) verdict = await once(k);
    tell({ kind: 'verdict', k, verdict });
  }
  await hosts.shop.close();
  await hosts.fresh.close();
  tell({ kind: 'end' });
}

// Whoever gave the cases has gone.
process.once('disconnect', () => process.exit());
process.once('message', (message: ToChild) => {
  work(message).then(
    () => process.disconnect?.(),
    (error: unknown) => {
      console.error(error);
      process.exit(1);
    },
  );
});
