import { randomUUID } from 'node:crypto';
import type { CutAnswers, CutState } from '../../core/contract/cuts.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { Remembered } from '../../core/cutting/remember.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import type { Log } from '../log.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { Pushes } from './pushes.ts';
import { SolverJob } from './solver-job.ts';

/** Answers remembered; the oldest is forgotten first. */
const REMEMBERED = 300;

interface Deps {
  readonly pushes: Pushes;
  readonly launch: LaunchSolver;
  readonly log: Log;
}

/**
 * Cuts runs in a process of their own, one at a time, and remembers the answers, so that every window and every page
 * printed shows the same sheets. Nothing is stored.
 */
export const cutsService = ({ pushes, launch, log }: Deps) => {
  const known = rememberedAnswers();
  let job: SolverJob<'cut'> | null = null;
  let state: CutState | null = null;
  const tell = (next: CutState): void => {
    state = next;
    pushes.send({ kind: 'cut', state });
  };
  const work = (key: string, input: RunInput, seconds: number): SolverJob<'cut'> =>
    new SolverJob({
      name: 'cutting',
      sorry:
        'The cutting computation stopped working. The sheets shown are the best found so far; work on them again.',
      tasks: [{ kind: 'cut', input }],
      budgetMs: seconds * 1000,
      // An integer solver at work hears nothing: its process is ended, what it found is here already.
      stopGraceMs: 0,
      launch,
      log,
      onChange(own) {
        if (own.best) known.put(key, own.best);
        if (own.state.phase === 'finished') known.settle(key);
        if (own === job) tell({ ...own.state, key, plan: known.get(key) });
      },
    });

  return {
    /** @param again also where the answer was worked on to its end before */
    solve(input: RunInput, seconds: number, again: boolean): { jobId: string } {
      const key = runKey(input);
      if (state?.key === key && state.phase === 'running') return { jobId: state.jobId };
      job?.stop();
      const plan = known.get(key);
      if (plan && known.isSettled(key) && !again) {
        const jobId = randomUUID();
        tell({ jobId, key, phase: 'finished', seconds: 0, budgetSeconds: seconds, plan, message: null });
        return { jobId };
      }
      job = work(key, input, seconds);
      tell({ ...job.state, key, plan });
      return { jobId: job.jobId };
    },

    /** The best so far is kept. A job that is over already is left alone. */
    stop(jobId: string): void {
      if (job?.jobId === jobId) job.stop();
    },

    read: (): CutAnswers => ({ state, answers: known.all() }),
  };
};

function rememberedAnswers() {
  const answers = new Remembered<{ readonly plan: CutPlan; readonly settled: boolean }>(REMEMBERED);
  return {
    get: (key: string): CutPlan | null => answers.get(key)?.plan ?? null,
    /** The better of it and what was known is kept. */
    put(key: string, plan: CutPlan): void {
      const known = answers.get(key);
      answers.put(key, {
        plan: known ? betterOf(known.plan, plan) : plan,
        settled: known?.settled ?? false,
      });
    },
    /** Worked on to the end: no need to begin again by itself. */
    settle(key: string): void {
      const known = answers.get(key);
      if (known) answers.put(key, { ...known, settled: true });
    },
    isSettled: (key: string): boolean => answers.get(key)?.settled ?? false,
    all: (): CutAnswers['answers'] => answers.entries().map(([key, { plan }]) => ({ key, plan })),
  };
}
