import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Push } from '../../core/contract/push.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Instant } from '../../core/units/brand.ts';
import { openStore, type Store } from '../../electron/db/open.ts';
import type { Log } from '../../electron/log.ts';
import { Refused } from '../../electron/refused.ts';
import { putShop as fill } from '../../electron/service/begin.ts';
import type { Clock } from '../../electron/service/clock.ts';
import { editService, type EditService } from '../../electron/service/edit.ts';
import { LivingShop } from '../../electron/service/living-shop.ts';
import { makePushes, type Pushes } from '../../electron/service/pushes.ts';
import { readShop } from '../../electron/service/shop.ts';
import { QuestionWorker } from '../../electron/service/question-worker.ts';
import type { LaunchSolver } from '../../electron/solver/launch.ts';
import { NOW } from '../support/builders.ts';

export const appFolder = resolve(import.meta.dirname, '../..');
export const migrations = join(appFolder, 'migrations');

/** In the names of backups. */
export const STAMP = '2026-11-30T12-00-00';

/** A folder that is gone when the test is over. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'foldweek-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Keeps what was logged. */
export function memoryLog(): Log & { readonly lines: string[] } {
  const lines: string[] = [];
  return {
    lines,
    info: (message) => lines.push(message),
    error: (message, cause) => lines.push(`ERROR ${message} ${String(cause ?? '')}`),
  };
}

/** A data file that is closed when the test is over. */
export function openTestStore(file: string, folder = migrations, log: Log = memoryLog()): Store {
  const store = openStore(file, { migrations: folder, stamp: STAMP, log });
  onTestFinished(() => store.close());
  return store;
}

/** A data file that holds the shop. */
export function storeWith(shop: Shop, file = join(tempFolder(), 'test.db')): Store {
  const store = openTestStore(file);
  putShop(store, shop);
  return store;
}

export const putShop = (store: Store, shop: Shop): void => store.run('put', (work) => fill(work, shop));

export const fixedClock = (now: Instant = NOW): Clock => ({ now: () => now, fixed: true });

/** The shop in a data file, as the host holds it. */
export const livingIn = (
  store: Store,
  pushes: Pushes = makePushes(memoryLog()),
  clock: Clock = fixedClock(),
): LivingShop => new LivingShop(store, clock, pushes);

/** Commands on a data file, as the host carries them out. */
export const editorOf = (store: Store, pushes?: Pushes, clock: Clock = fixedClock()): EditService =>
  editService(livingIn(store, pushes, clock), clock);

/** What the file holds of the living shop. */
export const shopIn = (store: Store): Shop => store.run('read', (work) => readShop(work, NOW));

/** Pushes that are kept to be looked at. */
export function keptPushes(log: Log = memoryLog()): Pushes & { readonly sent: Push[] } {
  const pushes = makePushes(log);
  const sent: Push[] = [];
  pushes.listen((push) => sent.push(push));
  return { ...pushes, sent };
}

/** What is refused in time, as the user reads it. */
export const laterRefusal = async (work: Promise<unknown>): Promise<Refused> => {
  const outcome = await work.then(
    () => null,
    (error: unknown) => error,
  );
  return refusalOf(() => {
    if (outcome !== null) throw outcome;
  });
};

/** Questions answered by a process that ends with the test. */
export function testQuestions(launch: LaunchSolver, log: Log = memoryLog()): QuestionWorker {
  const questions = new QuestionWorker(launch, log);
  onTestFinished(() => questions.close());
  return questions;
}

/** What is refused, as the user reads it. */
export function refusalOf(work: () => unknown): Refused {
  try {
    work();
  } catch (error) {
    if (error instanceof Refused) return error;
    throw error;
  }
  throw new Error('it was not refused');
}
