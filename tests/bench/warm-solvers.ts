import { join } from 'node:path';
import { keptSolvers } from '../../electron/service/kept-solvers.ts';
import { searchJob } from '../../electron/service/search-job.ts';
import { nodeSolver } from '../../electron/solver/launch.ts';

/** Nothing to do: whoever answers it is up and running. */
const NOTHING = {
  problem: {
    name: 'warm-up',
    now: 0,
    machines: [{ id: 'M', stage: 's', initial: null, changeover: null, open: null }],
    jobs: [],
    objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
  },
  queues: {},
  seconds: 0,
  seed: 1,
  log: { error: () => undefined },
};

/** Longer than any bench. */
const KEPT_MS = 86_400_000;

/** Solver processes that are up already, so that many short benches do not measure how long one takes to start. */
export async function warmSolvers(): Promise<ReturnType<typeof keptSolvers>> {
  const kept = keptSolvers(nodeSolver(join(import.meta.dirname, '../../electron/solver/solver.ts')), KEPT_MS);
  await searchJob({ ...NOTHING, launch: kept.launch }).end;
  return kept;
}
