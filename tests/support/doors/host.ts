import { join, resolve } from 'node:path';
import type { Reply } from '../../../core/contract/call.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { openStore, type Store } from '../../../electron/db/open.ts';
import { tableNames } from '../../../electron/db/whole.ts';
import { makeAnswers } from '../../../electron/host/answers.ts';
import { startHttp } from '../../../electron/host/http.ts';
import { makeServe, type Serve } from '../../../electron/host/serve.ts';
import type { Log } from '../../../electron/log.ts';
import { Backups } from '../../../electron/service/backups.ts';
import { putShop } from '../../../electron/service/begin.ts';
import { makePushes } from '../../../electron/service/pushes.ts';
import { readShop } from '../../../electron/service/shop.ts';
import { nodeSolver, type LaunchSolver, type Solver } from '../../../electron/solver/launch.ts';
import { NOW } from '../builders.ts';

const appFolder = resolve(import.meta.dirname, '../../..');

/** A whole host with a small shop, and what a judge needs to see of it. */
export interface DoorHost {
  readonly serve: Serve;
  readonly origin: string;
  /** The session's cookie over HTTP. */
  readonly cookie: string;
  /** Lines of the log so far. */
  readonly logged: string[];
  /** Every table of the data file, as texts by the table's name. */
  content(): Record<string, string[]>;
  /** Whether the shop in memory says what the file says. */
  agrees(): Promise<boolean>;
  /** The data file as it was at first. */
  reset(): void;
  close(): Promise<void>;
}

/** @param shop null: a data file that no shop was begun in */
export async function openDoorHost(folder: string, shop: Shop | null): Promise<DoorHost> {
  const logged: string[] = [];
  const log: Log = {
    info: () => undefined,
    error: (message, cause) =>
      logged.push(`${message}: ${cause instanceof Error ? cause.stack : String(cause)}`),
  };
  const migrations = join(appFolder, 'migrations');
  const store = openStore(join(folder, 'shop.db'), { migrations, stamp: '2026-11-30T12-00-00', log });
  if (shop) store.run('fill', (work) => putShop(work, shop));
  await store.backUp(folder, 'first.db');
  const clock = { now: () => NOW, fixed: true };
  const pushes = makePushes(log);
  const solvers = questionsOnly(nodeSolver(join(appFolder, 'electron/solver/solver.ts')));
  const answers = makeAnswers({
    ...{ kind: 'browser', version: '0', appFolder, store, clock, pushes, log, notice: null, printPdf: null },
    backups: new Backups({ store, clock, pushes, log }),
    launchSolver: solvers.launch,
  });
  const serve = makeServe(answers, log, () => store.kept);
  const http = await startHttp({ port: 0, pages: join(appFolder, 'renderer'), serve, pushes, log });
  const entered = await fetch(http.address, { redirect: 'manual' });
  return {
    serve,
    origin: new URL(http.address).origin,
    cookie: (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '',
    logged,
    content: () => contentOf(store),
    agrees: () => agrees(store, serve),
    reset: () => store.replaceBy(join(folder, 'first.db')),
    async close() {
      solvers.close();
      await http.close();
      store.close();
    },
  };
}

const contentOf = (store: Store): Record<string, string[]> =>
  store.run('look', ({ whole }) =>
    Object.fromEntries(
      tableNames.map((table) => [
        table,
        [...whole.pages(table, 1000)].flat().map((row) => JSON.stringify(row)),
      ]),
    ),
  );

async function agrees(store: Store, serve: Serve): Promise<boolean> {
  const reply = (await serve('shop.read', {})) as Reply<{ shop: Shop }>;
  if (!reply.ok) return reply.error.code === 'unavailable';
  const inFile = store.run('read', (work) => readShop(work, NOW));
  return JSON.stringify(reply.value.shop) === JSON.stringify(inFile);
}

/**
 * Questions are answered by a process as ever. Longer work is given up as soon as it has begun: it is the doors that are
 * tried here, and thousands of searches would try nothing else.
 */
function questionsOnly(launch: LaunchSolver) {
  const open = new Set<Solver>();
  return {
    launch(): Solver {
      let hear: Parameters<Solver['onMessage']>[0] = () => undefined;
      let gone: () => void = () => undefined;
      let real: Solver | null = null;
      const start = (): Solver => {
        const solver = launch();
        open.add(solver);
        solver.onMessage((message) => hear(message));
        solver.onExit(() => {
          open.delete(solver);
          gone();
        });
        return solver;
      };
      return {
        send(message) {
          if (message.kind === 'start' && !['why', 'promise', 'protect'].includes(message.task.kind))
            setImmediate(() => hear({ kind: 'refused', jobId: message.jobId, message: 'It was given up.' }));
          else (real ??= message.kind === 'start' ? start() : null)?.send(message);
        },
        onMessage: (listener) => void (hear = listener),
        onExit: (listener) => void (gone = listener),
        kill: () => real?.kill(),
      };
    },
    close: () => open.forEach((solver) => solver.kill()),
  };
}
