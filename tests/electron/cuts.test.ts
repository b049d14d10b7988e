import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contract } from '../../core/contract/index.ts';
import type { CutState } from '../../core/contract/cuts.ts';
import { checkSteps } from '../../core/cutting/check-steps.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import { cutsService } from '../../electron/service/cuts.ts';
import { nodeSolver, type LaunchSolver } from '../../electron/solver/launch.ts';
import { aLine, aRun, aSheet } from '../core/cutting/random-run.ts';
import { aShop } from '../support/builders.ts';
import { fakeSolvers } from './fake-solver.ts';
import { appFolder, fixedClock, keptPushes, livingIn, memoryLog, storeWith } from './support.ts';

const realSolver = nodeSolver(join(appFolder, 'electron/solver/solver.ts'));

/** Many girths and lengths: more than a moment's work. */
const longRun = (): RunInput =>
  aRun(
    Array.from({ length: 40 }, (_, k) =>
      aLine(`${1000 + k}/1`, 60 + 17.3 * k, [1219.2, 1828.8, 2438.4, 3048][k % 4]!, 3 + (k % 5)),
    ),
    [aSheet('narrow', 914.4, 3048), aSheet('wide', 1219.2, 3048)],
  );
const shortRun = (): RunInput => aRun([aLine('1/1', 300, 3000, 8)], [aSheet('S', 1219.2, 3048)]);

function start(launch: LaunchSolver = realSolver, store = storeWith(aShop())) {
  const pushes = keptPushes();
  const log = memoryLog();
  const living = livingIn(store, pushes);
  const cuts = cutsService({ living, clock: fixedClock(), pushes, launch, log });
  const states = (): CutState[] => pushes.sent.flatMap((p) => (p.kind === 'cut' ? [p.state] : []));
  const ended = (): Promise<CutState> =>
    new Promise((resolve) => {
      const stop = pushes.listen((push) => {
        if (push.kind !== 'cut' || push.state.phase === 'running') return;
        stop();
        resolve(push.state);
      });
    });
  return { ...cuts, states, ended, log };
}

describe('cutting a run beside the screens', () => {
  it('ends with sheets that are proven best and cut all that was asked', async () => {
    const { solve, ended, read } = start();
    const run = shortRun();
    const end = ended();
    const { jobId } = solve(run, 20, false);
    const state = await end;
    expect(state).toMatchObject({ jobId, key: runKey(run), phase: 'finished', message: null });
    expect(state.plan).toMatchObject({
      status: 'optimal',
      costCents: 2 * aSheet('S', 1219.2, 3048).costCents,
    });
    expect(checkSteps(run, state.plan!.groups, state.plan!.steps)).toEqual([]);
    expect(read().answers).toEqual([{ key: runKey(run), plan: state.plan }]);
  });

  it('tells of better sheets while it looks, none dearer than those before, with a bound that only rises', async () => {
    const { solve, ended, states } = start();
    const end = ended();
    solve(longRun(), 2, false);
    await end;
    const plans = states().flatMap(({ plan }) => plan ?? []);
    expect(plans.length).toBeGreaterThan(2);
    plans.slice(1).forEach((plan, k) => {
      expect(plan.costCents).toBeLessThanOrEqual(plans[k]!.costCents);
      expect(plan.lowerBoundCents).toBeGreaterThanOrEqual(plans[k]!.lowerBoundCents);
    });
    expect(states().every((state) => contract.cutsRead.output.shape.state.safeParse(state).success)).toBe(
      true,
    );
  });

  it('stops at once when told, and keeps the best so far', async () => {
    const { solve, stop, ended, read } = start();
    const { jobId } = solve(longRun(), 60, false);
    await new Promise<void>((resolve) => {
      const look = setInterval(() => {
        if (!read().state?.plan) return;
        clearInterval(look);
        resolve();
      }, 20);
    });
    const end = ended();
    const toldAt = performance.now();
    stop(jobId);
    expect(await end).toMatchObject({ phase: 'stopped', message: null });
    expect(performance.now() - toldAt).toBeLessThan(100);
    expect(read().answers).toHaveLength(1);
  });

  it('is not begun again by itself where it was worked on to the end, but is when asked for more', async () => {
    const { solve, ended, states } = start();
    const first = ended();
    solve(shortRun(), 20, false);
    await first;
    const told = states().length;
    solve(shortRun(), 20, false);
    expect(
      states()
        .slice(told)
        .map((state) => state.phase),
    ).toEqual(['finished']);
    const again = ended();
    solve(shortRun(), 20, true);
    expect((await again).plan?.status).toBe('optimal');
  });

  it('is found again after a restart, as good as it was and without being worked on anew', async () => {
    const store = storeWith(aShop());
    const before = start(realSolver, store);
    const end = before.ended();
    before.solve(shortRun(), 20, false);
    const { plan } = await end;
    const none = fakeSolvers();
    const after = start(none.launch, store);
    expect(after.read().answers).toEqual([{ key: runKey(shortRun()), plan }]);
    after.solve(shortRun(), 20, false);
    expect(after.states().at(-1)).toMatchObject({ phase: 'finished', plan });
    expect(none.processes).toEqual([]);
  });

  it('gives way to a run asked for later', async () => {
    const { solve, ended, states } = start();
    const older = solve(longRun(), 60, false);
    const end = ended();
    const newer = solve(shortRun(), 20, false);
    expect(await end).toMatchObject({ jobId: older.jobId, phase: 'stopped' });
    const last = await ended();
    expect(last).toMatchObject({ jobId: newer.jobId, phase: 'finished' });
    expect(states().at(-1)?.jobId).toBe(newer.jobId);
  });

  it('that crashes is told as a sentence and logged', async () => {
    const { solve, ended, log } = start(fakeSolvers((process) => process.exit()).launch);
    const end = ended();
    solve(shortRun(), 5, false);
    expect(await end).toMatchObject({
      phase: 'failed',
      message: expect.stringMatching(/stopped working.*best found so far.*again/),
    });
    expect(log.lines.join()).toMatch(/had trouble.*process ended/);
  });
});
