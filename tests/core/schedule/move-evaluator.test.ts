import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { readQueues } from '../../../core/schedule/decode.ts';
import type { Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { objectiveAt } from '../../../core/schedule/numbered-queues.ts';
import { FullEvaluator } from '../../../core/schedule/search/full-evaluator.ts';
import { LayeredEvaluator } from '../../../core/schedule/search/layered-evaluator.ts';
import { advanceJob } from '../../../core/schedule/search/moves/advance-job.ts';
import { searchContext } from '../../../core/schedule/search/moves/search-context.ts';
import { joinNeighbours } from '../../../core/schedule/search/moves/join-neighbours.ts';
import { shiftOperation } from '../../../core/schedule/search/moves/shift-operation.ts';
import { shiftRun } from '../../../core/schedule/search/moves/shift-run.ts';
import { swapOperations } from '../../../core/schedule/search/moves/swap-operations.ts';
import { Rng } from '../../../core/rng.ts';
import { firstQueues } from './first-queues.ts';
import { randomShop, uncontended } from './random-shop.ts';

const moves = { shiftOperation, swapOperations, joinNeighbours, shiftRun, advanceJob };
const seeds = fc.integer({ min: 0, max: 1_000_000_000 });

/** The machines of a shop, all open as they are, always, or when the first one that closes is open. */
const hoursOf = {
  'hours of their own': ({ machines }: ProblemInput) => machines,
  'always open': ({ machines }: ProblemInput) => machines.map((machine) => ({ ...machine, open: null })),
  'one calendar': ({ machines }: ProblemInput) => {
    const open = machines.find((machine) => machine.open !== null)?.open ?? null;
    return machines.map((machine) => ({ ...machine, open }));
  },
};

function problemOf(input: ProblemInput): Problem {
  const built = buildProblem(input);
  if (!built.ok) throw new Error(built.issues[0]!.message);
  return built.value;
}

describe('evaluating a move in the queues', () => {
  for (const [name, move] of Object.entries(moves))
    it(`${name}: what is committed adds up to the objective of the whole plan timed again, and a rollback restores it`, () => {
      fc.assert(
        fc.property(seeds, (seed) => {
          const problem = problemOf(uncontended(randomShop(seed, 9)));
          const first = firstQueues(problem);
          fc.pre(problem.machineOrder !== null && first !== null);
          const evaluator = new LayeredEvaluator(problem, first!);
          const rng = new Rng(seed);
          const context = searchContext(problem, evaluator, rng);
          fc.pre(context.movable.length > 0);
          for (let k = 0; k < 20; k++) {
            const before = evaluator.live.copy();
            if (!move(context)) continue;
            const delta = evaluator.evaluate(Infinity);
            const tried = objectiveAt(problem, evaluator.live.copy());
            expect(evaluator.objective + delta).toBeCloseTo(tried, 5);
            if (rng.next() < 0.5) {
              evaluator.rollback();
              expect(evaluator.live.copy()).toEqual(before);
            } else evaluator.commit();
            expect(evaluator.objective).toBeCloseTo(objectiveAt(problem, evaluator.live.copy()), 5);
          }
        }),
        { numRuns: 400 },
      );
    });

  for (const [hours, machinesOf] of Object.entries(hoursOf))
    it(`a move rejected early really costs more than the limit (${hours})`, () => {
      let rejected = 0;
      fc.assert(
        fc.property(seeds, fc.integer({ min: 0, max: 60 }), (seed, limit) => {
          const shop = randomShop(seed, 12);
          const problem = problemOf(uncontended({ ...shop, machines: machinesOf(shop) }));
          const first = firstQueues(problem);
          fc.pre(problem.machineOrder !== null && first !== null);
          const evaluator = new LayeredEvaluator(problem, first!);
          const rng = new Rng(seed);
          const context = searchContext(problem, evaluator, rng);
          fc.pre(context.movable.length > 0);
          for (let k = 0; k < 20; k++) {
            if (!Object.values(moves)[rng.below(5)]!(context)) continue;
            const delta = evaluator.evaluate(limit);
            const real = objectiveAt(problem, evaluator.live.copy()) - evaluator.objective;
            if (delta === Infinity) expect(real).toBeGreaterThan(limit);
            else expect(delta).toBeCloseTo(real, 5);
            if (delta === Infinity) rejected += 1;
            if (delta <= limit) evaluator.commit();
            else evaluator.rollback();
          }
        }),
        { numRuns: 1000 },
      );
      expect(rejected).toBeGreaterThan(1000);
    });

  it('timing everything again gives the same figures', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = problemOf(uncontended(randomShop(seed, 9)));
        const first = firstQueues(problem);
        fc.pre(problem.machineOrder !== null && first !== null);
        expect(new FullEvaluator(problem, first!).objective).toBeCloseTo(
          new LayeredEvaluator(problem, first!).objective,
          5,
        );
      }),
      { numRuns: 300 },
    );
  });

  it('queues that are incomplete are rejected with the operation named', () => {
    const problem = problemOf(randomShop(4));
    const read = readQueues(problem, {});
    expect(read.ok).toBe(problem.operations === 0);
    if (!read.ok) expect(read.issues[0]!.message).toContain(problem.operationIds[0]);
  });
});
