import { buildProblem } from '../../core/schedule/build.ts';
import { check } from '../../core/schedule/check.ts';
import { decode } from '../../core/schedule/decode.ts';
import { readShopProblem, writeShopResult } from '../../core/schedule/shop-problem.ts';
import { sentence, type Result } from '../../core/result.ts';
import { searchJob } from '../../electron/service/search-job.ts';
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
  const log = { error: () => undefined };
  const search = searchJob({ problem: input, queues: {}, seconds, seed, launch, log });
  const { best, counts, failure } = await search.end;
  if (best === null) throw new Error(`No plan for ${input.name} was found${failure ? `: ${failure}` : '.'}`);
  const schedule = must(decode(problem, best.queues));
  const line = {
    name: input.name,
    objective: schedule.objective,
    bestKnown,
    gap: gapOf(schedule.objective, bestKnown),
    lowerBound: counts?.bound ?? null,
    seconds: Math.round(performance.now() - startedAt) / 1000,
    evaluations: counts?.evaluations ?? 0,
    valid: check(problem, schedule).length === 0,
  };
  return { line, result: writeShopResult(input.name, schedule) };
}
