import { describe, expect, it } from 'vitest';
import type { ObjectiveWeights } from '../../../core/schedule/problem.ts';
import { insertionGain } from '../../../core/schedule/search/one-machine/block-insertion.ts';
import { Sequence } from '../../../core/schedule/search/one-machine/sequence.ts';
import { swapGain } from '../../../core/schedule/search/one-machine/swap.ts';
import { Tangents } from '../../../core/schedule/search/one-machine/tangents.ts';
import { MakespanInsertion } from '../../../core/schedule/search/insertion-makespan.ts';
import {
  apply,
  estimatedMakespan,
  orderAfter,
  valid,
} from '../../../core/schedule/search/job-shop/block-move.ts';
import { JobShopGraph } from '../../../core/schedule/search/job-shop/graph.ts';
import { LayeredEvaluator } from '../../../core/schedule/search/layered-evaluator.ts';
import { LiveQueues } from '../../../core/schedule/search/live-queues.ts';
import { gain } from '../../../core/schedule/search/moves/move.ts';
import { SuffixBound } from '../../../core/schedule/search/suffix-bound.ts';
import { aJob, aMachine, aProblem } from './hand-shop.ts';

/** The examples that the docstrings of the search work out by hand. */

const MAKESPAN: ObjectiveWeights = {
  weightedTardiness: 0,
  changeover: 0,
  makespan: 1,
  flowTime: 0,
  stability: 0,
};
const oneShear = (...jobs: readonly [id: string, seconds: number, due: number][]) =>
  aProblem({
    machines: [aMachine('S1')],
    jobs: jobs.map(([id, seconds, due]) => aJob(id, [seconds, null], due)),
  });

describe('what a move gains, worked out by hand', () => {
  it('a line 40 s late brought to the front of its queue: the gain is 40', () => {
    const evaluator = new LayeredEvaluator(oneShear(['A', 30, 100], ['B', 20, 100], ['C', 10, 20]), [
      [0, 1, 2],
    ]);
    expect(evaluator.objective).toBe(40);
    evaluator.live.shift(0, 2, 1, 0, 0);
    expect(gain(evaluator, -Infinity)).toBe(40);
  });

  it('a line sheared sooner is bent sooner: its brake is timed again, and the gain is the 3 s it was late', () => {
    const jobs = [aJob('A', [4, null]), aJob('B', [2, 5], 8), aJob('C', [3, null])];
    const evaluator = new LayeredEvaluator(aProblem({ jobs }), [[0, 1, 3], [2]]);
    evaluator.live.shift(0, 1, 1, 0, 0);
    expect(gain(evaluator, -Infinity)).toBe(3);
    evaluator.commit();
    expect([...evaluator.end]).toEqual([6, 2, 7, 9]);
  });

  it('what a queue behind a change loses and gains lies within the bounds of its slopes', () => {
    const problem = oneShear(['X', 10, 8], ['Y', 4, 20], ['Z', 2, 15]);
    const bound = new SuffixBound(problem, new LiveQueues(problem, [[0, 1, 2]]));
    bound.slope.set([1, 0, 3]);
    bound.tight.set([1, 1, 0]);
    bound.renew(0, 0, false);
    expect(bound.leastLoss(0, 0, 5)).toBe(5);
    expect(bound.mostGain(0, 0, 5)).toBe(20);
  });
});

describe('what a move on one machine gains, worked out by hand', () => {
  it('a stretch of two lines behind the late one: the gain is its 6 s', () => {
    const sequence = new Sequence(oneShear(['A', 3, 10], ['B', 4, 20], ['C', 2, 3]), [0, 1, 2]);
    expect(insertionGain(sequence, 0, 2, 3, -Infinity)).toBe(6);
  });

  it('the late line in exchange with the first: the gain is its 6 s', () => {
    const sequence = new Sequence(oneShear(['A', 3, 10], ['M', 4, 20], ['B', 2, 3]), [0, 1, 2]);
    expect(swapGain(sequence, 0, 2, -Infinity)).toBe(6);
  });

  it('a line due at 10 that ends at 8, 3 s later: the tangents give the 2 it costs', () => {
    const tangents = new Tangents(Float64Array.of(2), Float64Array.of(10), 0, 4);
    tangents.build(Int32Array.of(0), Float64Array.of(8), 0);
    expect(tangents.least(0, 1, 3)).toBe(2);
  });
});

describe('what a move gains in makespan, worked out by hand', () => {
  it('two lines of a critical block exchanged: 12 s become 8, as estimated', () => {
    const jobs = [aJob('u', [4, null]), aJob('v', [3, 5])];
    const graph = new JobShopGraph(aProblem({ jobs, objective: MAKESPAN }), [[0, 1], [2]]);
    expect(graph.makespan).toBe(12);
    const move = { first: 0, last: 1, forward: true };
    expect(valid(graph, move)).toBe(true);
    expect(estimatedMakespan(graph, move, orderAfter(graph, move))).toBe(8);
    apply(graph, move);
    graph.time();
    expect(graph.makespan).toBe(8);
  });

  it('a line inserted between two others: 10 s; at the front 11', () => {
    const jobs = [aJob('A', [3, 2]), aJob('B', [1, 4]), aJob('C', [2, 1])];
    const insertion = new MakespanInsertion(aProblem({ jobs, objective: MAKESPAN, sameOrder: true }));
    expect(insertion.best([0, 1], 2, 0).next().value).toMatchObject({ value: 10 });
    expect(
      [
        [0, 2, 1],
        [0, 1, 2],
        [2, 0, 1],
      ].map((order) => insertion.value(order)),
    ).toEqual([10, 10, 11]);
  });
});
