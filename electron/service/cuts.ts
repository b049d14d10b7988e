import { randomUUID } from 'node:crypto';
import type { CutAnswers, CutState } from '../../core/contract/cuts.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import { storedAnswers } from './cut-answers.ts';
import { CutImprover, type ImproverDeps } from './cut-improver.ts';
import { SolverJob } from './solver-job.ts';

/**
 * Cuts runs in a process of their own, one at a time, and keeps the answers, so that every window and every page printed
 * shows the same sheets, after a restart too. Runs that nobody opened are worked on while the app is idle.
 */
export const cutsService = (deps: ImproverDeps) => {
  const { living, clock, pushes, launch, log } = deps;
  const known = storedAnswers(living.store, clock, log);
  const improver = new CutImprover(deps, known);
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
        const { phase } = own.state;
        if (own.best) known.better(key, own.best, phase === 'finished');
        if (phase !== 'running') known.keep([key]);
        if (own === job) tell({ ...own.state, key, plan: known.get(key)?.plan ?? null });
      },
    });

  return {
    /** @param again also where the answer was worked on to its end before */
    solve(input: RunInput, seconds: number, again: boolean): { jobId: string } {
      const key = runKey(input);
      if (state?.key === key && state.phase === 'running') return { jobId: state.jobId };
      job?.stop();
      const before = known.get(key);
      const plan = before?.plan ?? null;
      if (before?.settled && !again) {
        known.inUse([key]);
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

    improve: (on: boolean): void => improver.improve(on),

    read: (): CutAnswers => ({ state, improving: improver.state, answers: known.told() }),
  };
};
