import { checkCut } from '../../core/cutting/check-cut.ts';
import { readCutProblem, type CutProblem } from '../../core/cutting/cut-problem.ts';
import type { SolveMip } from '../../core/cutting/mip.ts';
import { solveOneDimension, type CutProgress } from '../../core/cutting/one-dimension.ts';
import { sentence } from '../../core/result.ts';
import { loadHighs, mipWith } from '../../electron/solver/highs.ts';
import { gapOf, type Benched, type BenchOptions } from './line.ts';

/**
 * Solves one `cut-problem/1` within `seconds`, stopping sooner when the optimum is proven. The method draws no lots,
 * so the seed changes nothing.
 * @throws Error with a sentence when the problem cannot be read
 */
export async function benchCut(problem: unknown, options: BenchOptions): Promise<Benched> {
  const read = readCutProblem(problem);
  if (!read.ok) throw new Error(sentence(read.issues));
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
