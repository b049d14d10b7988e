import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { improve, type Found } from '../../../core/schedule/improve.ts';
import type { Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { objectiveAt } from '../../../core/schedule/numbered-queues.ts';
import { insertionGain } from '../../../core/schedule/search/one-machine/block-insertion.ts';
import { Sequence } from '../../../core/schedule/search/one-machine/sequence.ts';
import { swapGain } from '../../../core/schedule/search/one-machine/swap.ts';
import { Rng } from '../../../core/rng.ts';

const seeds = fc.integer({ min: 0, max: 1_000_000_000 });

/** Lines on one shear with a changeover from each to each, and every term of the objective but stability. */
function oneShear(seed: number, lines: number): ProblemInput {
  const rng = new Rng(seed);
  const values = Array.from({ length: lines }, (_, k) => `c${k}`);
  const matrix = () => values.map(() => values.map(() => rng.below(40)));
  return {
    name: 'one shear',
    now: 1_790_000_000,
    machines: [
      {
        id: 'S1',
        stage: 'shear',
        initial: { coil: values[0]! },
        changeover: {
          combine: 'sum',
          attributes: {},
          pairs: {
            attribute: 'coil',
            values,
            seconds: rng.next() < 0.3 ? values.map(() => values.map(() => 0)) : matrix(),
          },
        },
        open: null,
        availableFrom: 1_790_000_000 + rng.below(100),
      },
    ],
    jobs: values.map((coil, k) => ({
      id: `L${k}`,
      release: 1_790_000_000 - rng.below(50),
      due: rng.next() < 0.2 ? null : 1_790_000_000 + rng.below(50 * lines),
      weight: rng.below(5),
      operations: [{ id: `L${k}`, stage: 'shear', seconds: rng.below(60), attributes: { coil } }],
    })),
    objective: {
      weightedTardiness: 1 + rng.below(3),
      changeover: rng.below(2),
      makespan: rng.below(2),
      flowTime: rng.below(3) / 10,
      stability: 0,
    },
  };
}

function problemOf(input: ProblemInput): Problem {
  const built = buildProblem(input);
  if (!built.ok) throw new Error(built.issues[0]!.message);
  return built.value;
}

function lastOf(problem: Problem, seed: number, steps: number): Found {
  let last: Found | undefined;
  for (const found of improve(problem, { seed })) {
    last = found;
    if (found.step >= steps) break;
  }
  return last!;
}

describe('the order of lines on one machine', () => {
  it('the gain of a move is what the whole plan timed again costs less', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 3, max: 30 }), (seed, lines) => {
        const problem = problemOf(oneShear(seed, lines));
        const rng = new Rng(seed);
        const sequence = new Sequence(
          problem,
          Array.from({ length: lines }, (_, k) => k),
        );
        for (let k = 0; k < 30; k++) {
          const [from, middle, until] = [0, 1, 2]
            .map((position) => position + rng.below(lines - 1))
            .sort((a, b) => a - b) as [number, number, number];
          const swap = rng.next() < 0.5;
          if (from === middle || middle === until) continue;
          const before = sequence.objective;
          const last = Math.min(until, lines - 1);
          if (swap && last - from < 2) continue;
          const gainOf = (atLeast: number) =>
            swap
              ? swapGain(sequence, from, last, atLeast)
              : insertionGain(sequence, from, middle, until, atLeast);
          const gain = gainOf(-Infinity);
          expect(gainOf(gain + 1)).toBeLessThan(gain + 1);
          if (swap) sequence.swap(from, last);
          else sequence.exchange(from, middle, until);
          const again = objectiveAt(problem, [sequence.order]);
          expect(sequence.objective).toBeCloseTo(again, 3);
          expect(before - gain).toBeCloseTo(again, 3);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('the search keeps every rule of the shop, gives the same plan for the same seed and never a worse one later', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 9, max: 25 }), (seed, lines) => {
        const problem = problemOf(oneShear(seed, lines));
        const early = lastOf(problem, seed, 3);
        const late = lastOf(problem, seed, 30);
        expect(check(problem, late.schedule)).toEqual([]);
        expect(late.objective).toBeLessThanOrEqual(early.objective);
        expect(lastOf(problem, seed, 30).queues).toEqual(late.queues);
      }),
      { numRuns: 15 },
    );
  });

  it('eight lines with changeovers: no order is better', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = problemOf(oneShear(seed, 8));
        const found = lastOf(problem, 1, 60);
        let least = Infinity;
        const order: number[] = [];
        const extend = () => {
          if (order.length === 8) least = Math.min(least, objectiveAt(problem, [order]));
          for (let j = 0; j < 8; j++) {
            if (order.includes(j)) continue;
            order.push(j);
            extend();
            order.pop();
          }
        };
        extend();
        expect(found.objective).toBeCloseTo(least, 3);
      }),
      { numRuns: 4 },
    );
  });
});
