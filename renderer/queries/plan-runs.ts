import type { CutAnswers } from '../../core/contract/cuts.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { Remembered } from '../../core/cutting/remember.ts';
import { runKey, type RunInput } from '../../core/cutting/run.ts';
import { cutRuns, planQuickly, type RunCut } from '../../core/planning/cut-run.ts';
import { sameMetal, shearRuns, type PlanRead } from '../../core/planning/runs.ts';
import { ok, type Result } from '../../core/result.ts';
import type { Shop } from '../../core/shop/state.ts';
import { offThread } from '../compute/off-thread.ts';

/** Quick plans by what was asked, so that an edit waits only for the runs that it changes. */
const quick = new Remembered<Result<CutPlan>>(400);

function remembered(key: string, plan: Result<CutPlan>): Result<CutPlan> {
  quick.put(key, plan);
  return plan;
}

/** A first answer here and at once, for the few runs that a panel asks about. */
export function planHere(input: RunInput): Result<CutPlan> {
  const key = runKey(input);
  return quick.get(key) ?? remembered(key, planQuickly(input));
}

/** A run that has to be planned before those behind it can be cut. */
class NotPlanned extends Error {
  readonly input: RunInput;
  constructor(input: RunInput) {
    super('not planned yet');
    this.input = input;
  }
}

export interface Asked {
  readonly shop: Shop;
  readonly view: PlanRead;
  /** What the host worked out; a quick plan is shown where it is better. */
  readonly answers: CutAnswers['answers'];
  /** A line of the run that is opened: the runs of its metal are planned and told first. */
  readonly opened: string | undefined;
  readonly signal: AbortSignal;
  /** What is planned so far. */
  readonly tell: (cuts: readonly RunCut[]) => void;
}

/**
 * All runs of a plan, each planned by a worker while the window goes on drawing. No two metals take from the same stock,
 * so they are planned side by side.
 * @param plan one run; the worker's answer
 */
export async function planAll(
  { shop, view, answers, opened, signal, tell }: Asked,
  plan: (input: RunInput) => Promise<Result<CutPlan>> = (input) => offThread('planQuickly', input),
): Promise<readonly RunCut[]> {
  const runs = shearRuns(shop, view);
  const order = new Map(runs.map(({ id }, position) => [id, position]));
  const better = new Map(answers.map((answer) => [answer.key, answer.plan]));
  // Kept beside what is remembered, which forgets the oldest: a run is asked once.
  const made = new Map<string, Result<CutPlan>>();
  const solve = (input: RunInput): Result<CutPlan> => {
    const key = runKey(input);
    const own = made.get(key) ?? quick.get(key);
    if (!own) throw new NotPlanned(input);
    made.set(key, own);
    const answer = better.get(key);
    return own.ok && answer ? ok(betterOf(own.value, answer)) : own;
  };
  const soFar = new Map<string, readonly RunCut[]>();
  const all = (): RunCut[] =>
    [...soFar.values()].flat().sort((a, b) => (order.get(a.run.id) ?? 0) - (order.get(b.run.id) ?? 0));
  let told = 0;
  const tellSome = () => {
    const cuts = all();
    // A list that grows is drawn by thirds: drawn each time, it costs the window more than the runs.
    if (cuts.length === runs.length || cuts.length - told < runs.length / 3) return;
    told = cuts.length;
    tell(cuts);
  };
  /** @param metal one of its runs */
  const cutMetal = async ({ id }: Runs[number], tellSoFar: () => void): Promise<void> => {
    for (;;) {
      // The screen draws between two metals, however much is planned already.
      await breathe();
      signal.throwIfAborted();
      const [cuts, next] = cutAsFar(cutRuns(shop, view, solve, id));
      soFar.set(id, cuts);
      tellSoFar();
      if (next === null) return;
      const key = runKey(next);
      made.set(key, remembered(key, await plan(next)));
    }
  };
  const first = metalOf(runs, opened);
  if (first) {
    await cutMetal(first, nobody);
    tell(all());
  }
  await Promise.all(metalsOf(runs).map((metal) => cutMetal(metal, first ? nobody : tellSome)));
  return all();
}

const nobody = (): void => undefined;
const breathe = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

type Runs = ReturnType<typeof shearRuns>;

/** The first run of each metal, in the order of the runs. */
const metalsOf = (runs: Runs): Runs =>
  runs.filter((run, position) => runs.findIndex((other) => sameMetal(other, run)) === position);

/** The first run of the metal that a line is cut from. */
function metalOf(runs: Runs, line: string | undefined): Runs[number] | undefined {
  const own = runs.find(({ operations }) => operations.some((operation) => operation.line.id === line));
  return own && runs.find((run) => sameMetal(run, own));
}

/** Runs up to the first that is not planned yet. Those before it are planned, so coming by again costs next to nothing. */
function cutAsFar(runs: Iterable<RunCut>): [cuts: readonly RunCut[], next: RunInput | null] {
  const cuts: RunCut[] = [];
  try {
    for (const cut of runs) cuts.push(cut);
    return [cuts, null];
  } catch (error) {
    if (error instanceof NotPlanned) return [cuts, error.input];
    throw error;
  }
}
