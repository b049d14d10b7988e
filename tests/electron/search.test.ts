import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { editService } from '../../electron/service/edit.ts';
import { describe, expect, it } from 'vitest';
import type { SearchState } from '../../core/contract/search.ts';
import { gistOf } from '../../core/planning/figures.ts';
import { viewPlan } from '../../core/planning/plan-view.ts';
import type { Queues } from '../../core/schedule/problem.ts';
import type { Shop } from '../../core/shop/state.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { searchService } from '../../electron/service/search.ts';
import { nodeSolver, type LaunchSolver } from '../../electron/solver/launch.ts';
import type { FromSolver, TaskOf } from '../../electron/solver/messages.ts';
import { aShop, NOW } from '../support/builders.ts';
import { madeFrom } from '../support/edits.ts';
import { fakeSolvers } from './fake-solver.ts';
import {
  appFolder,
  fixedClock,
  keptPushes,
  laterRefusal,
  memoryLog,
  storeWith,
  tempFolder,
  testQuestions,
  shopIn,
  livingIn,
} from './support.ts';

const realSolver = nodeSolver(join(appFolder, 'electron/solver/solver.ts'));
const demo = (): Shop => loadDemo(join(appFolder, 'demo-data/shop'), NOW);

function start(shop = demo(), launch: LaunchSolver = realSolver) {
  const store = storeWith(shop);
  const pushes = keptPushes();
  const log = memoryLog();
  const living = livingIn(store, pushes);
  const edit = editService(living, fixedClock());
  const questions = testQuestions(launch, log);
  const search = searchService({ living, clock: fixedClock(), pushes, edit, launch, questions, log });
  const states = (): SearchState[] => pushes.sent.flatMap((p) => (p.kind === 'search' ? [p.state] : []));
  const told = (wanted: (state: SearchState) => boolean): Promise<SearchState> =>
    new Promise((resolve) => {
      const stop = pushes.listen((push) => {
        if (push.kind !== 'search' || !wanted(push.state)) return;
        stop();
        resolve(push.state);
      });
    });
  /** The state in which the search ended. */
  const ended = () => told(({ phase }) => phase !== 'running');
  /** The first state with a better plan than the search began from. */
  const bettered = () => told(({ objective, startObjective }) => objective! < startObjective!);
  return { ...search, edit, states, ended, bettered, log, queues: () => shopIn(store).queue };
}

/** A solver process that only a test sees: it answers a search as told. */
const fakeSolver = (
  answer: (
    asked: { readonly jobId: string; readonly queues: Queues },
    send: (message: FromSolver) => void,
    exit: () => void,
  ) => void,
): LaunchSolver =>
  fakeSolvers((process, { jobId, task }) =>
    answer({ jobId, queues: (task as TaskOf<'search'>).queues }, process.send, process.exit),
  ).launch;

/** The demo shop with these queues at a glance. */
function gistWith(queue: Shop['queue']) {
  const shop = { ...demo(), queue };
  const view = viewPlan(shop, NOW);
  if (!view.ok) throw new Error('the demo shop cannot be planned');
  return gistOf(shop, view.value.schedule);
}

const counts = { step: 1, evaluations: 10, bound: null };

describe('planning the week', () => {
  it('tells of its progress, falls, and stores the best plan as one step that can be undone', async () => {
    const { start: plan, ended, states, edit, queues } = start();
    const { jobId } = await plan(1, 1);
    const end = await ended();
    expect(end).toMatchObject({ jobId, phase: 'finished', message: null, budgetSeconds: 1 });
    expect(end.objective!).toBeLessThan(end.startObjective!);
    expect(end.curve.at(-1)?.objective).toBe(end.objective);
    expect(end.curve.every((point, i) => i === 0 || point.objective < end.curve[i - 1]!.objective)).toBe(
      true,
    );
    expect(end.gist).toEqual(gistWith(queues()));
    expect(end.startGist).toEqual(gistWith([]));
    expect(end.gist).not.toEqual(end.startGist);
    expect(states().length).toBeGreaterThan(3);
    expect(states().length).toBeLessThanOrEqual(14);
    expect(edit.history().undo.map((s) => s.label)).toEqual(['Plan the week']);
    expect(queues().every((q) => q.operations.length > 0)).toBe(true);
    edit.undo();
    expect(queues().every((q) => q.operations.length === 0)).toBe(true);
  });

  it('stops at once when told, and keeps the best so far', async () => {
    const { start: plan, stop, ended, bettered, edit } = start();
    const better = bettered();
    const { jobId } = await plan(60, 1);
    await better;
    const end = ended();
    const toldAt = performance.now();
    stop(jobId);
    expect(await end).toMatchObject({ phase: 'stopped', message: null });
    const took = performance.now() - toldAt;
    // A tenth of a second on an idle machine; the rest is room for a busy one.
    expect(took).toBeLessThan(1000);
    expect(edit.history().undo).toHaveLength(1);
  });

  it('is refused while it is going on, and may be asked again after', async () => {
    const { start: plan, stop, ended } = start();
    const { jobId } = await plan(30, 1);
    expect((await laterRefusal(plan(1, 1))).code).toBe('busy');
    const end = ended();
    stop(jobId);
    await end;
    const again = ended();
    await plan(0.2, 2);
    expect((await again).phase).toBe('finished');
  });

  it('ends early when its plan is proven best', async () => {
    const { start: plan, ended } = start(
      aShop({ order: aShop().order.slice(0, 1), line: aShop().line.slice(0, 1) }),
    );
    await plan(60, 1);
    const end = await ended();
    expect(end.phase).toBe('finished');
    expect(end.seconds).toBeLessThan(10);
  });

  it('plans so that lines are likely on time when asked, and says so', async () => {
    const { start: plan, ended, edit, queues } = start();
    await plan(1, 1, 0.9);
    const end = await ended();
    // The dates that it searched with lie earlier; what it says is by those that customers were given.
    expect(end.gist).toEqual(gistWith(queues()));
    expect(end).toMatchObject({ phase: 'finished', protect: 0.9, message: null });
    expect(end.objective!).toBeLessThan(end.startObjective!);
    expect(edit.history().undo).toHaveLength(1);
  });

  it('cannot protect lines while too little work was finished', async () => {
    const { start: plan } = start(aShop());
    expect((await laterRefusal(plan(1, 1, 0.9))).message).toMatch(/finished/);
  });

  it('names the step of the history that its plan became', async () => {
    const { start: plan, ended, edit } = start();
    await plan(0.5, 1);
    expect((await ended()).stepId).toBe(edit.history().undo[0]?.id);
  });

  it('is refused when there is nothing to plan', async () => {
    expect((await laterRefusal(start(aShop({ order: [], line: [] })).start(1, 1))).message).toMatch(
      /nothing to plan/,
    );
  });

  it('sets its plan aside when the shop was changed meanwhile', async () => {
    const { start: plan, ended, edit, queues } = start();
    await plan(0.5, 1);
    edit.apply(madeFrom(demo(), { do: 'operation.pin', operations: [`${demo().line.at(-1)!.id}:shear`] }));
    const mine = queues();
    const end = await ended();
    expect(end.message).toMatch(/You changed the shop while.*yours was kept/);
    expect(end.stepId).toBeNull();
    expect(queues()).toEqual(mine);
  });
});

describe('a search process that fails', () => {
  it('at once is told as a sentence, the plan stays, and one can try again', async () => {
    const crash = join(tempFolder(), 'crash.mjs');
    writeFileSync(crash, 'process.exit(3);');
    const { start: plan, ended, queues, read } = start(demo(), nodeSolver(crash));
    await plan(5, 1);
    const end = await ended();
    expect(end).toMatchObject({
      phase: 'failed',
      message: expect.stringMatching(/stopped working.*plan stays as it was.*plan again/),
    });
    expect(queues().every((q) => q.operations.length === 0)).toBe(true);
    expect(read()?.phase).toBe('failed');
    await expect(plan(5, 1)).resolves.toMatchObject({});
    await ended();
  });

  it('half-way leaves the best plan found until then', async () => {
    const launch = fakeSolver(({ jobId, queues }, send, exit) => {
      send({ kind: 'progress', jobId, counts, best: { queues, objective: 1 } });
      exit();
    });
    const { start: plan, ended, edit } = start(demo(), launch);
    await plan(5, 1);
    expect(await ended()).toMatchObject({
      phase: 'failed',
      message: expect.stringMatching(/best plan found until then was kept/),
    });
    expect(edit.history().undo.map((s) => s.label)).toEqual(['Plan the week']);
  });

  it('is ignored when it speaks of an older job', async () => {
    const launch = fakeSolver(({ jobId }, send) => {
      send({ kind: 'failed', jobId: 'older', message: 'late news' });
      send({ kind: 'done', jobId, counts, best: null });
    });
    const { start: plan, ended } = start(demo(), launch);
    await plan(5, 1);
    expect(await ended()).toMatchObject({ phase: 'finished' });
  });

  it('by breaking a rule has its plan thrown away and logged', async () => {
    const launch = fakeSolver(({ jobId, queues }, send) => {
      const [first, ...others] = queues.S1!;
      const broken = { ...queues, S1: [...others, others[0]!], B1: [first!, ...queues.B1!] };
      send({ kind: 'done', jobId, counts, best: { queues: broken, objective: 1 } });
    });
    const { start: plan, ended, queues } = start(demo(), launch);
    await plan(5, 1);
    expect(await ended()).toMatchObject({
      phase: 'failed',
      message: expect.stringMatching(/plan stays as it was/),
    });
    expect(queues().every((q) => q.operations.length === 0)).toBe(true);
  });
});
