import { availableParallelism } from 'node:os';
import type { ProblemInput, Queues } from '../../core/schedule/problem.ts';
import { SolverJob, type JobOptions } from './solver-job.ts';

/** How many search side by side: two where the machine has the cores. */
export const searchProcesses = (): number => Math.min(2, availableParallelism());

interface SearchOptions extends Pick<JobOptions<'search'>, 'launch' | 'log' | 'onChange'> {
  readonly problem: ProblemInput;
  /** The plan as it is. */
  readonly queues: Queues;
  readonly seconds: number;
  /** Process i searches with seed + i; the best plan of all counts. */
  readonly seed: number;
}

/** A search for a better plan. It ends before its time when its plan is proven best. */
export const searchJob = ({ problem, queues, seconds, seed, ...host }: SearchOptions): SolverJob<'search'> =>
  new SolverJob({
    ...host,
    name: 'the search',
    sorry: 'The search stopped working.',
    tasks: Array.from({ length: searchProcesses() }, (_, at) => ({
      kind: 'search',
      problem,
      queues,
      seed: seed + at,
    })),
    budgetMs: seconds * 1000,
    isBetter: (a, b) => a.objective < b.objective,
  });
