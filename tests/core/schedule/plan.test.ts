import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { improve, type Found } from '../../../core/schedule/improve.ts';
import type { Problem, ProblemInput, Queues } from '../../../core/schedule/problem.ts';
import { atcsRule } from '../../../core/schedule/rules/atcs.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../../core/schedule/rules/edd.ts';
import { familyRule } from '../../../core/schedule/rules/family.ts';
import { sentence, type Result } from '../../../core/result.ts';
import { randomQueues, randomShop } from './random-shop.ts';

const valueOf = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};
const built = (input: ProblemInput): Problem => valueOf(buildProblem(input));
const seeds = fc.integer({ min: 0, max: 1_000_000_000 });

/** What the search yields in so many steps, and before its first. */
function search(problem: Problem, seed: number, steps: number, start?: Queues): Found[] {
  const found: Found[] = [];
  for (const each of improve(problem, { seed, start })) {
    found.push(each);
    if (each.step >= steps) break;
  }
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

  it('no plan of the search breaks a rule, leaves its pins, or is worse than one before it', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = built(randomShop(seed));
        const found = search(problem, seed, 3);
        for (const [k, each] of found.entries()) {
          expect(each.objective).toBeLessThanOrEqual(found[k - 1]?.objective ?? Infinity);
          expect(check(problem, each.schedule)).toEqual([]);
          expect(each.objective).toBeGreaterThanOrEqual((each.bound ?? 0) - 1e-9);
          expect(valueOf(decode(problem, each.queues))).toEqual(each.schedule);
        }
        expect(found.length).toBeGreaterThan(0);
      }),
      { numRuns: 1000 },
    );
  });

  it('the search begins no worse than due-date order, family runs, ATCS and the plan as it is', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const input = { ...randomShop(seed), frozen: {}, pins: [] };
        const problem = built(input);
        const start = randomQueues(seed, input);
        const first = search(problem, seed, 1, start).findLast((found) => found.step === 0)!;
        for (const queues of [
          start,
          dispatch(problem, dueDateRule(problem)),
          dispatch(problem, familyRule(problem)),
          dispatch(problem, atcsRule(problem)),
        ]) {
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
        expect(search(problem, seed, 5)).toEqual(search(problem, seed, 5));
      }),
      { numRuns: 40 },
    );
  });
});
