import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { improve, type Found } from '../../../core/schedule/improve.ts';
import type { Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { atcsQueues } from '../../../core/schedule/rules/atcs.ts';
import { dueDateQueues } from '../../../core/schedule/rules/edd.ts';
import { familyQueues } from '../../../core/schedule/rules/family.ts';
import { sentence, type Result } from '../../../core/shop/result.ts';
import { randomQueues, randomShop } from './random-shop.ts';

const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.problems));
  return result.value;
};
const built = (input: ProblemInput): Problem => valueOf(buildProblem(input));
const seeds = fc.integer({ min: 0, max: 1_000_000_000 });

/** The plans found in so many yields. */
function search(problem: Problem, seed: number, yields: number): Found[] {
  const found: Found[] = [];
  for (const each of improve(problem, { seed })) if (found.push(each) >= yields) break;
  return found;
}

describe('random shops', () => {
  it('no decoded schedule breaks a rule that the independent checker knows, whatever the queues', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const input = randomShop(seed);
        const loose = { ...input, frozen: {}, pins: [] };
        const problem = built(loose);
        expect(check(problem, valueOf(decode(problem, randomQueues(seed, loose))))).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  it('no plan of the search breaks a rule, leaves its pins, or is worse than its best construction', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = built(randomShop(seed));
        const found = search(problem, seed, 4);
        for (const each of found) {
          expect(check(problem, each.schedule)).toEqual([]);
          expect(each.objective).toBeLessThanOrEqual(found[0]!.objective);
          expect(each.objective).toBeGreaterThanOrEqual((each.bound ?? 0) - 1e-9);
          expect(valueOf(decode(problem, each.queues))).toEqual(each.schedule);
        }
        expect(found.length).toBeGreaterThan(0);
      }),
      { numRuns: 1000 },
    );
  });

  it('the search begins no worse than due-date order, family runs, ATCS and the plan as it stands', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const input = { ...randomShop(seed), frozen: {}, pins: [] };
        const problem = built(input);
        const start = randomQueues(seed, input);
        const first = improve(problem, { seed, start }).next().value as Found;
        for (const queues of [start, dueDateQueues(problem), familyQueues(problem), atcsQueues(problem)]) {
          const schedule = decode(problem, queues);
          if (schedule.ok) expect(first.objective).toBeLessThanOrEqual(schedule.value.objective);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('the same seed finds the same plans in the same order', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = built(randomShop(seed, 12));
        expect(search(problem, seed, 6)).toEqual(search(problem, seed, 6));
      }),
      { numRuns: 40 },
    );
  });
});
