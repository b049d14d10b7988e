import { join } from 'node:path';
import { keptSolvers } from '../../electron/service/kept-solvers.ts';
import { searchProcesses } from '../../electron/service/search-job.ts';
import { SolverJob } from '../../electron/service/solver-job.ts';
import { nodeSolver } from '../../electron/solver/launch.ts';

/** Nothing to do: whoever answers it is up and running. */
const NOTHING = {
  kind: 'search',
  problem: {
    name: 'warm-up',
    now: 0,
    machines: [{ id: 'M', stage: 's', initial: null, changeover: null, open: null }],
    jobs: [],
    objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
  },
  queues: {},
  seed: 1,
} as const;

/** Longer than any bench. */
const KEPT_MS = 86_400_000;

/** Solver processes that are up already, so that many short benches do not measure how long one takes to start. */
export async function warmSolvers(): Promise<ReturnType<typeof keptSolvers>> {
  const kept = keptSolvers(nodeSolver(join(import.meta.dirname, '../../electron/solver/solver.ts')), KEPT_MS);
  const warmUp = () =>
    new SolverJob<'search'>({
      name: 'the warm-up',
      sorry: 'The solver processes do not start.',
      tasks: [NOTHING],
      budgetMs: 0,
      launch: kept.launch,
      log: { error: console.error },
    });
  await Promise.all(Array.from({ length: searchProcesses() }, () => warmUp().end));
  return kept;
}
