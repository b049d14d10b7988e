import { buildProblem } from '../../core/schedule/build.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { readShopProblem, writeShopResult } from '../../core/schedule/shop-problem.ts';
import { sentence, type Result } from '../../core/result.ts';
import { startRun } from '../../electron/service/search-run.ts';
import { searchProcesses } from '../../electron/service/search.ts';
import type { LaunchSolver } from '../../electron/solver/launch.ts';
import { gapOf, type Benched, type BenchOptions } from './line.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
}

/**
 * Searches one shop-problem/1 for its seconds as the app does, in as many processes side by side, and checks what was
 * found. @throws Error with a sentence on a bad problem
 */
export async function benchShop(
  raw: unknown,
  { seconds, seed }: BenchOptions,
  launch: LaunchSolver,
): Promise<Benched> {
  const { input, bestKnown } = must(readShopProblem(raw));
  const startedAt = performance.now();
  const problem = must(buildProblem(input));
  const run = startRun({
    jobId: input.name,
    problem: input,
    queues: {},
    seconds,
    seed,
    processes: searchProcesses(),
    launch,
    onProgress: () => undefined,
  });
  const { best, bound, evaluations, failure } = await run.end;
  if (best === null) throw new Error(`No plan for ${input.name} was found${failure ? `: ${failure}` : '.'}`);
  const schedule = must(decode(problem, best.queues));
  const line = {
    name: input.name,
    objective: schedule.objective,
    bestKnown,
    gap: gapOf(schedule.objective, bestKnown),
    lowerBound: bound,
    seconds: Math.round(performance.now() - startedAt) / 1000,
    evaluations,
    valid: check(problem, schedule).length === 0,
  };
  return { line, result: writeShopResult(input.name, schedule) };
}
