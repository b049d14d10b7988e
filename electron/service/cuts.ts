import { randomUUID } from 'node:crypto';
import type { CutAnswers, CutState } from '../../core/contract/cuts.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import type { Log } from '../log.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { Pushes } from './pushes.ts';
import { untilDone } from './solver-run.ts';

const PUSH_MS = 100;
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
export const cutsService = (deps: Deps) => {
  const known = rememberedAnswers();
  let state: CutState | null = null;
  let end: () => void = () => undefined;
  const tell = (next: CutState): void => {
    state = next;
    deps.pushes.send({ kind: 'cut', state });
  };

  return {
    /** @param again also where the answer was worked on to its end before */
    solve(input: RunInput, seconds: number, again: boolean): { jobId: string } {
      const key = runKey(input);
      if (state?.key === key && state.phase === 'running') return { jobId: state.jobId };
      end();
      const plan = known.get(key);
      if (plan && known.isSettled(key) && !again) {
        const own = stateOf(key, 'finished', seconds, plan);
        tell(own);
        return { jobId: own.jobId };
      }
      const own = stateOf(key, 'running', seconds, plan);
      state = own;
      end = work(own, input, known, deps, (next) => {
        if (next.jobId === state?.jobId) tell(next);
      });
      return { jobId: own.jobId };
    },

    /** The best so far is kept. A run that is over already is left alone. */
    stop(jobId: string): void {
      if (state?.jobId === jobId) end();
    },

    read: (): CutAnswers => ({ state, answers: known.all() }),
  };
};

const stateOf = (
  key: string,
  phase: CutState['phase'],
  budgetSeconds: number,
  plan: CutState['plan'],
): CutState => ({ jobId: randomUUID(), key, phase, seconds: 0, budgetSeconds, plan, message: null });

type Answers = ReturnType<typeof rememberedAnswers>;

/** Starts the process and tells of each better answer. @returns what ends it at once, with its best so far */
function work(
  first: CutState,
  input: RunInput,
  known: Answers,
  { launch, log }: Deps,
  tell: (state: CutState) => void,
): () => void {
  const solver = launch();
  let own = first;
  let toldAt = -Infinity;
  const now = (news: Partial<CutState>): void => {
    own = { ...own, ...news };
    if (own.phase === 'running' && performance.now() - toldAt < PUSH_MS) return;
    toldAt = performance.now();
    tell(own);
  };
  now({});
  const job = { kind: 'cut', jobId: own.jobId, input, budgetMs: own.budgetSeconds * 1000 } as const;
  void untilDone(solver, job, (answer) => {
    if (answer.kind !== 'cutting' && answer.kind !== 'cut') return false;
    if (own.phase !== 'running') return true;
    const { seconds } = answer;
    now(answer.plan ? { seconds, plan: known.put(own.key, answer.plan) } : { seconds });
    return answer.kind === 'cut';
  }).then((failure) => {
    if (own.phase !== 'running') return;
    if (failure) log.error(`cutting ${own.jobId} had trouble`, failure);
    else known.settle(own.key);
    now(failure ? { phase: 'failed', message: STOPPED_WORKING } : { phase: 'finished' });
  });
  return () => {
    if (own.phase !== 'running') return;
    now({ phase: 'stopped' });
    // An integer solver at work hears nothing: its process is ended, what it found is here already.
    solver.kill();
  };
}

const STOPPED_WORKING =
  'The cutting computation stopped working. The sheets shown are the best found so far; work on them again.';

function rememberedAnswers() {
  const plans = new Map<string, Plan>();
  const settled = new Set<string>();
  return {
    get: (key: string): Plan | null => plans.get(key) ?? null,
    /** @returns the better of it and what was known */
    put(key: string, plan: CutPlan): Plan {
      const known = plans.get(key);
      const best = known ? betterOf(known, plan) : plan;
      plans.delete(key);
      plans.set(key, best);
      const [oldest] = plans.keys();
      if (plans.size > REMEMBERED && oldest !== undefined) {
        plans.delete(oldest);
        settled.delete(oldest);
      }
      return best;
    },
    /** Worked on to the end: no need to begin again by itself. */
    settle: (key: string): void => void settled.add(key),
    isSettled: (key: string): boolean => settled.has(key),
    all: (): CutAnswers['answers'] => [...plans].map(([key, plan]) => ({ key, plan })),
  };
}

type Plan = NonNullable<CutState['plan']>;
