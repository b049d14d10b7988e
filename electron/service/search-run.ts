import type { ProblemInput, Queues } from '../../core/schedule/problem.ts';
import type { LaunchSolver, Solver } from '../solver/launch.ts';
import type { Best, FromSolver, ToSolver } from '../solver/messages.ts';
import { stopSolver, untilDone } from './solver-run.ts';

/** What is known of a run while it goes on. */
export interface RunProgress {
  readonly seconds: number;
  readonly step: number;
  readonly evaluations: number;
  readonly bound: number | null;
  readonly best: Best | null;
}

export interface RunEnd extends RunProgress {
  /** `failed` when every solver process failed; the best plan before that is still there. */
  readonly phase: 'finished' | 'stopped' | 'failed';
  /** What a failed process said, for the log. */
  readonly failure: string | null;
}

export interface RunOptions {
  readonly jobId: string;
  readonly problem: ProblemInput;
  readonly queues: Queues;
  readonly seconds: number;
  /** Process i searches with seed + i. */
  readonly seed: number;
  readonly processes: number;
  readonly launch: LaunchSolver;
  readonly onProgress: (progress: RunProgress) => void;
}

export interface Run {
  readonly end: Promise<RunEnd>;
  /** Ask for the best so far; `end` then resolves soon. */
  stop(): void;
}

type Counts = Omit<RunProgress, 'seconds' | 'best'>;
type Report = Extract<FromSolver, { kind: 'progress' | 'done' }>;

/** One run of the search: several processes, each with its own seed; the best plan of all counts. */
export function startRun({ jobId, problem, queues, seconds, ...options }: RunOptions): Run {
  const startedAt = performance.now();
  const counts: Counts[] = [];
  const solvers = Array.from({ length: options.processes }, () => options.launch());
  let best: Best | null = null;
  let ending = false;
  const stopAll = (): void => {
    ending = true;
    solvers.forEach((solver) => stopSolver(solver, jobId));
  };
  let stopped = false;
  const progress = (): RunProgress => ({
    ...total(counts),
    seconds: (performance.now() - startedAt) / 1000,
    best,
  });

  const onReport = (lane: number, { step, evaluations, bound, ...report }: Report): void => {
    counts[lane] = { step, evaluations, bound };
    if (report.best && (best === null || report.best.objective < best.objective)) best = report.best;
    // One is done before its time only when its plan is proven best: the others need not go on.
    if (report.kind === 'done') stopAll();
    else options.onProgress(progress());
  };
  const runs = solvers.map((solver, lane) =>
    runSolver(
      solver,
      { kind: 'start', jobId, problem, queues, seed: options.seed + lane, budgetMs: seconds * 1000 },
      (report) => onReport(lane, report),
      // A process that was told to stop and had to be ended has not failed.
    ).then((failure) => (ending ? null : failure)),
  );
  return {
    end: Promise.all(runs).then((failures) => {
      const failed = failures.every((failure) => failure !== null);
      const phase = stopped ? 'stopped' : failed ? 'failed' : 'finished';
      return { ...progress(), phase, failure: failures.find((failure) => failure !== null) ?? null };
    }),
    stop() {
      stopped = true;
      stopAll();
    },
  };
}

const runSolver = (
  solver: Solver,
  start: Extract<ToSolver, { kind: 'start' }>,
  onReport: (report: Report) => void,
): Promise<string | null> =>
  untilDone(solver, start, (answer) => {
    if (answer.kind !== 'progress' && answer.kind !== 'done') return false;
    onReport(answer);
    return answer.kind === 'done';
  });

const total = (counts: readonly Counts[]): Counts => ({
  step: counts.reduce((sum, { step }) => sum + step, 0),
  evaluations: counts.reduce((sum, { evaluations }) => sum + evaluations, 0),
  bound: counts.reduce<number | null>(
    (high, { bound }) => (bound === null ? high : Math.max(high ?? bound, bound)),
    null,
  ),
});
