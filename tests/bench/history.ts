import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { InputOf, OutputOf } from '../../core/contract/call.ts';
import type { contract } from '../../core/contract/index.ts';
import { seenQueues } from '../../core/edit/stale.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';
import { makeAnswers } from '../../electron/host/answers.ts';
import { makeServe, type Serve } from '../../electron/host/serve.ts';
import { openStore } from '../../electron/db/open.ts';
import { Backups } from '../../electron/service/backups.ts';
import { makePushes } from '../../electron/service/pushes.ts';
import { nodeSolver } from '../../electron/solver/launch.ts';
import { launchBrowser, openBrowser } from '../e2e/open.ts';
import { lane } from '../e2e/steps.ts';
import { findBrowser } from '../e2e/runtimes.ts';
import { MONDAY } from './years.ts';

const root = join(import.meta.dirname, '../..');
const EDITS = 50;
const READS = 15;

interface Figures {
  readonly openMs: number;
  readonly readMs: number;
  readonly readBytes: number;
  readonly editMs: number;
  readonly undoMs: number;
  readonly rssMb: number;
}

/**
 * What years of finished work behind the open work cost: opening the file, reading the shop, a command and its undo (each
 * by the host's one door, with JSON), the board in a browser. Prints one JSON line; the board needs a build.
 */
export async function benchHistory(lines: number): Promise<void> {
  const dataDir = mkdtempSync(join(tmpdir(), 'foldweek-history-'));
  try {
    // Each in a process of its own: the memory told is the host's.
    inProcess('make', dataDir, lines);
    const figures = JSON.parse(inProcess('measure', dataDir, lines)) as Figures;
    const boardMs = await boardAfter(dataDir);
    process.stdout.write(`${JSON.stringify({ lines, ...figures, boardMs })}\n`);
  } finally {
    rmSync(dataDir, { recursive: true, force: true });
  }
}

function inProcess(what: 'make' | 'measure', dataDir: string, lines: number): string {
  const child = join(import.meta.dirname, 'history-child.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [child, what, dataDir, String(lines)], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The bench could not ${what} the data file: ${stderr}`);
  return stdout;
}

/** The host's own figures on a data file. */
export async function measureHost(dataDir: string): Promise<Figures> {
  const [openMs, { serve, close }] = await timed(() => openHost(dataDir));
  const reads: number[] = [];
  let readBytes = 0;
  for (let i = 0; i < READS; i++) {
    const [ms, text] = await timed(async () => JSON.stringify(await ask(serve, 'shop.read', {})));
    reads.push(ms);
    readBytes = text.length;
  }
  const { edits, undos } = await editAndUndo(serve);
  const rssMb = Math.round(process.memoryUsage.rss() / 2 ** 20);
  close();
  return {
    ...{ openMs: rounded(openMs), readMs: median(reads), readBytes },
    ...{ editMs: median(edits), undoMs: median(undos), rssMb },
  };
}

const rounded = (ms: number): number => Math.round(ms * 100) / 100;
const median = (times: readonly number[]): number =>
  rounded(times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN);

async function timed<T>(work: () => T | Promise<T>): Promise<[ms: number, made: T]> {
  const from = performance.now();
  const made = await work();
  return [performance.now() - from, made];
}

/** A host on the data file, its shop in memory. */
async function openHost(dataDir: string): Promise<{ serve: Serve; close: () => void }> {
  const log = { info: () => undefined, error: console.error };
  const clock = { now: () => MONDAY, fixed: true };
  const file = join(dataDir, 'foldweek.db');
  const store = openStore(file, { migrations: join(root, 'migrations'), stamp: 'bench', log });
  const pushes = makePushes(log);
  // A screen is told of each change, as text.
  pushes.listen((push) => JSON.stringify(push));
  const answers = makeAnswers({
    ...{ kind: 'browser', version: 'bench', appFolder: root, store, clock, pushes, log },
    backups: new Backups({ store, clock, pushes, log }),
    launchSolver: nodeSolver(join(root, 'electron', 'solver', 'solver.ts')),
    notice: null,
    printPdf: null,
  });
  const serve = makeServe(answers, log, () => store.kept);
  await ask(serve, 'shop.read', {});
  return { serve, close: () => store.close() };
}

async function ask(serve: Serve, name: string, input: unknown): Promise<unknown> {
  const reply = await serve(name, input, 'bench');
  if (!reply.ok) throw new Error(`${name}: ${reply.error.message}`);
  return reply.value;
}

/** Pins and moves in turn, one by one, and then all undone. */
async function editAndUndo(serve: Serve): Promise<{ edits: number[]; undos: number[] }> {
  let { shop } = (await ask(serve, 'shop.read', {})) as { shop: Shop };
  const view = viewPlan(shop, MONDAY);
  if (!view.ok) throw new Error('the demo shop has no plan');
  const operations = [...view.value.operations.keys()].slice(0, EDITS);
  const edits: number[] = [];
  const undos: number[] = [];
  for (const [i, operation] of operations.entries()) {
    const machineId = view.value.operations.get(operation)?.machines[0]?.id ?? '';
    const seen = seenQueues(shop);
    const command: InputOf<typeof contract.editApply>['command'] =
      i % 2
        ? { do: 'operation.move', blocks: [{ operations: [operation], machineId, position: 3 }], seen }
        : { do: 'operation.pin', operations: [operation], seen };
    const [ms, done] = await timed(async () => {
      const made = (await ask(serve, 'edit.apply', { command })) as OutputOf<typeof contract.editApply>;
      JSON.stringify(made);
      return made;
    });
    shop = withChanges(shop, done.changes);
    edits.push(ms);
  }
  for (let i = 0; i < operations.length; i++)
    undos.push((await timed(() => ask(serve, 'edit.undo', { stepId: null })))[0]);
  return { edits, undos };
}

/** From the start of a host to a board that can be used, in a browser that is open already; null where there is none. */
async function boardAfter(dataDir: string): Promise<number | null> {
  if (!findBrowser()) return null;
  const browser = await launchBrowser();
  const [ms, { close }] = await timed(async () => {
    const opened = await openBrowser(dataDir, browser);
    await lane(opened.page, 'Shear').getByRole('option').first().waitFor();
    return opened;
  });
  await close();
  return Math.round(ms);
}
