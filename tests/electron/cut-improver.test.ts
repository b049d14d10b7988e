import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { contract } from '../../core/contract/index.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import { cutRuns, planQuickly } from '../../core/planning/cut-run.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import { ok } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant } from '../../core/units/brand.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { MOST_ANSWERS } from '../../electron/db/cut-answers.ts';
import { choicesBeside } from '../../electron/service/kept-choices.ts';
import { cutsService } from '../../electron/service/cuts.ts';
import { nodeSolver, type LaunchSolver } from '../../electron/solver/launch.ts';
import { aShop } from '../support/builders.ts';
import { fakeSolvers } from './fake-solver.ts';
import { appFolder, fixedClock, keptPushes, livingIn, memoryLog, refusalOf, storeWith } from './support.ts';

const MONDAY = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);
const demo = loadDemo(join(appFolder, 'demo-data/shop'), MONDAY);
const IDLE_MS = 20;

function start(launch: LaunchSolver, shop = demo, store = storeWith(shop)) {
  const pushes = keptPushes();
  const clock = fixedClock(MONDAY);
  const living = livingIn(store, pushes, clock);
  const log = memoryLog();
  const cuts = cutsService({ living, clock, pushes, launch, log, idleMs: IDLE_MS, secondsEach: 0.1 });
  const phases = () => pushes.sent.flatMap((p) => (p.kind === 'cutsFound' ? [p.improving.phase] : []));
  return { cuts, living, pushes, log, phases };
}
/** A busy machine may take its time. */
const begun = (processes: readonly unknown[], count: number) =>
  vi.waitFor(() => expect(processes).toHaveLength(count), { timeout: 10_000 });
const settle = () => new Promise((resolve) => setTimeout(resolve, 5 * IDLE_MS));

it('every run of the plan that may be better is worked on without being opened, and each is cheaper or as it was', async () => {
  const { cuts, living, phases } = start(nodeSolver(join(appFolder, 'electron/solver/solver.ts')));
  await vi.waitFor(() => expect(phases().at(-1)).toBe('finished'), { timeout: 60_000, interval: 100 });
  const { answers, improving } = cuts.read();
  expect(improving).toEqual({ phase: 'finished', left: 0 });
  expect(contract.cutsRead.output.safeParse(cuts.read()).success).toBe(true);
  const known = new Map(answers.map(({ key, plan }) => [key, plan]));
  const solve = (input: RunInput) => {
    const quick = planQuickly(input);
    const better = known.get(runKey(input));
    return quick.ok && better ? ok(betterOf(quick.value, better)) : quick;
  };
  const cut = [...cutRuns(living.shop, viewOf(living.shop), solve)];
  const open = cut.filter(({ plan }) => plan.ok && plan.value.status !== 'optimal');
  expect(answers.length).toBeGreaterThan(0);
  expect(open.length).toBeGreaterThan(0);
  for (const { input } of open) expect(known.has(runKey(input))).toBe(true);
}, 70_000);

it('a change ends the work, and it begins again when nothing has been changed for a while', async () => {
  const { launch, processes } = fakeSolvers();
  const { living, phases } = start(launch);
  await begun(processes, 1);
  living.reload();
  expect(processes[0]!.killed()).toBe(true);
  await begun(processes, 2);
  expect(phases()).not.toContain('finished');
});

it('nothing is worked on while a search runs', async () => {
  const { launch, processes } = fakeSolvers();
  const { pushes } = start(launch);
  await begun(processes, 1);
  const search = (phase: string) => pushes.send({ kind: 'search', state: { jobId: 'a', phase } } as never);
  search('running');
  expect(processes[0]!.killed()).toBe(true);
  await settle();
  expect(processes).toHaveLength(1);
  search('finished');
  await begun(processes, 2);
});

it('better sheets are told together every few seconds, for each time a screen looks at all runs anew', async () => {
  const { launch, processes } = fakeSolvers();
  const { cuts, pushes } = start(launch);
  await begun(processes, 1);
  const [heard] = processes[0]!.heard;
  if (heard?.kind !== 'start') throw new Error('it was not started');
  const made = [...cutRuns(demo, viewOf(demo))].flatMap(({ input, plan }) =>
    plan.ok ? [{ key: runKey(input), plan: plan.value, settled: true }] : [],
  );
  const answers = made.slice(0, 4);
  for (let n = 1; n <= 4; n++) {
    const best = { answers: answers.slice(0, n), keys: [], left: 4 - n };
    processes[0]!.send({ kind: 'progress', jobId: heard.jobId, best } as never);
    // A job tells what is new ten times a second.
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
  const told = () =>
    pushes.sent.flatMap((p) => (p.kind === 'cutsFound' && p.answers.length > 0 ? [p.answers.length] : []));
  expect(told()).toEqual([1]);
  cuts.improve(false);
  expect(told()).toEqual([1, 3]);
});

it('it is stopped until it is wanted again, whatever is changed', async () => {
  const { launch, processes } = fakeSolvers();
  const { cuts, living } = start(launch);
  await begun(processes, 1);
  cuts.improve(false);
  expect(processes[0]!.killed()).toBe(true);
  living.reload();
  await settle();
  expect(processes).toHaveLength(1);
  expect(cuts.read().improving.phase).toBe('stopped');
  cuts.improve(true);
  await begun(processes, 2);
});

it('stopped, it stays so after the next start, until it is wanted again', async () => {
  const { launch, processes } = fakeSolvers();
  const { cuts, living } = start(launch);
  cuts.improve(false);
  const again = start(launch, demo, living.store);
  await settle();
  expect(processes).toEqual([]);
  expect(again.cuts.read().improving.phase).toBe('stopped');
  again.cuts.improve(true);
  await begun(processes, 1);
  start(launch, demo, living.store);
  await begun(processes, 2);
});

it('where that it was stopped cannot be kept, it is stopped for now and says so', async () => {
  const { launch, processes } = fakeSolvers();
  const { cuts, living } = start(launch);
  await begun(processes, 1);
  mkdirSync(choicesBeside(living.store.file));
  expect(refusalOf(() => cuts.improve(false)).message).toMatch(
    /Runs are not worked on until Foldweek is started again/,
  );
  expect(processes[0]!.killed()).toBe(true);
  expect(cuts.read().improving.phase).toBe('stopped');
});

it('a file that holds no shop yet is waited for', async () => {
  const { launch, processes } = fakeSolvers();
  const { log, living } = start(launch, aShop());
  living.store.run('empty', ({ rows }) => rows.remove('settings', 'shop'));
  living.reload();
  await settle();
  expect(processes).toEqual([]);
  expect(log.lines.filter((line) => line.startsWith('ERROR'))).toEqual([]);
});

it('of more answers than are kept, those used longest ago are forgotten', () => {
  const store = storeWith(aShop());
  const plan = planQuickly([...cutRuns(demo, viewOf(demo))].find(({ plan: made }) => made.ok)!.input);
  if (!plan.ok) throw new Error('the first run can be cut');
  store.run('fill', ({ cutAnswers }) => {
    for (let i = 0; i < MOST_ANSWERS; i++)
      cutAnswers.put({ key: `run ${i}`, plan: plan.value, settled: true }, 1000 + i);
    cutAnswers.use(['run 0'], 9000);
    cutAnswers.put({ key: 'the newest', plan: plan.value, settled: true }, 9001);
  });
  const left = store.run('look', ({ cutAnswers }) =>
    ['run 0', 'run 1', 'run 2', 'the newest'].filter((key) => cutAnswers.get(key)),
  );
  expect(left).toEqual(['run 0', 'run 2', 'the newest']);
});

function viewOf(shop: Shop) {
  const view = viewPlan(shop, MONDAY);
  if (!view.ok) throw new Error('the demo has no plan');
  return view.value;
}
