import { buildProblem } from '../../core/schedule/build.ts';
import { check } from '../../core/schedule/check.ts';
import { improve } from '../../core/schedule/improve.ts';
import { readShopProblem, writeShopResult } from '../../core/schedule/shop-problem.ts';
import { sentence } from '../../core/shop/result.ts';
import { gapOf, type Benched, type BenchOptions } from './line.ts';

/** Searches one shop-problem/1 for its seconds, and checks what was found. @throws Error with a sentence on a bad problem */
export async function benchShop(raw: unknown, { seconds, seed }: BenchOptions): Promise<Benched> {
  const read = readShopProblem(raw);
  if (!read.ok) throw new Error(sentence(read.problems));
  const { input, bestKnown } = read.value;
  const startedAt = performance.now();
  const elapsed = () => (performance.now() - startedAt) / 1000;
  const built = buildProblem(input);
  if (!built.ok) throw new Error(sentence(built.problems));
  let last;
  for (const found of improve(built.value, { seed })) {
    last = found;
    if (elapsed() >= seconds) break;
  }
  if (last === undefined) throw new Error(`No plan for ${input.name} was found.`);
  const line = {
    name: input.name,
    objective: last.objective,
    bestKnown,
    gap: gapOf(last.objective, bestKnown),
    lowerBound: last.bound,
    seconds: Math.round(elapsed() * 1000) / 1000,
    evaluations: last.evaluations,
    valid: check(built.value, last.schedule).length === 0,
  };
  return { line, result: writeShopResult(input.name, last.schedule) };
}
