import highsLoader from 'highs';
import { checkCut } from '../../core/cutting/check-cut.ts';
import { readCutProblem, type CutProblem } from '../../core/cutting/cut-problem.ts';
import type { SolveMip } from '../../core/cutting/mip.ts';
import { solveOneDimension, type CutProgress } from '../../core/cutting/one-dimension.ts';
import { sentence } from '../../core/shop/result.ts';
import { gapOf, type Benched, type BenchOptions } from './line.ts';

type Highs = Awaited<ReturnType<typeof highsLoader>>;

/** HiGHS as the function that core/cutting takes; `secondsLeft` keeps one call inside the whole budget. */
export function mipWith(highs: Highs, secondsLeft: () => number): SolveMip {
  return (lp, { seconds }) => {
    const solved = highs.solve(lp, {
      time_limit: Math.max(0.05, Math.min(seconds, secondsLeft())),
      output_flag: false,
    });
    if (solved.Status === 'Infeasible') return { status: 'infeasible', columns: null };
    const optimal = solved.Status === 'Optimal';
    // Stopped by the time limit it may still hold a solution; without one the objective is not a finite number.
    if (!optimal && !Number.isFinite(solved.ObjectiveValue)) return { status: 'stopped', columns: null };
    const columns = Object.entries(solved.Columns).map(
      ([name, column]) => [name, 'Primal' in column ? column.Primal : 0] as const,
    );
    return { status: optimal ? 'optimal' : 'stopped', columns: Object.fromEntries(columns) };
  };
}

let loaded: Promise<Highs> | undefined;
/** HiGHS, loaded once a process. */
export const loadHighs = (): Promise<Highs> => (loaded ??= highsLoader());

/**
 * Solves one `cut-problem/1` within `seconds`, stopping sooner when the optimum is proven. The method draws no lots,
 * so the seed changes nothing.
 * @throws Error with a sentence when the problem cannot be read
 */
export async function benchCut(problem: unknown, options: BenchOptions): Promise<Benched> {
  const read = readCutProblem(problem);
  if (!read.ok) throw new Error(sentence(read.problems));
  const highs = await loadHighs();
  const startedAt = performance.now();
  const secondsLeft = (): number => options.seconds - (performance.now() - startedAt) / 1000;
  const last = solveWithin(read.value, mipWith(highs, secondsLeft), secondsLeft);
  const seconds = options.seconds - secondsLeft();
  const { name, bestKnown } = read.value;
  const objective = last.result?.objective ?? null;
  const line = {
    name,
    objective,
    bestKnown,
    gap: gapOf(objective, bestKnown),
    lowerBound: last.lowerBound,
    seconds: Math.round(seconds * 1000) / 1000,
    evaluations: last.steps,
    valid: last.result !== null && checkCut(read.value, last.result).length === 0,
  };
  return { line, result: last.result };
}

function solveWithin(given: CutProblem, solveMip: SolveMip, secondsLeft: () => number): CutProgress {
  const solving = solveOneDimension(given, { solveMip });
  let step = solving.next();
  while (!step.done && secondsLeft() > 0) step = solving.next();
  return step.value;
}
