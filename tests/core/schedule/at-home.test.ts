import fc from 'fast-check';
import { expect, it } from 'vitest';
import { atHome } from '../../../core/schedule/search/at-home.ts';
import { Rng } from '../../../core/rng.ts';
import { constructions } from '../../../core/schedule/search/constructions.ts';
import { decode, nameQueues } from '../../../core/schedule/decode.ts';
import { built } from './exact.ts';
import { aJob, aMachine, aProblem, must, seeds } from './hand-shop.ts';
import { randomShop, withHolds } from './random-shop.ts';

const holding = { brake: { holds: ['H'] } };

it('a thing stays at the machine that works longest with it in the plan at hand; what holds nothing goes where it may', () => {
  const problem = aProblem({
    machines: [aMachine('B1'), aMachine('B2')],
    jobs: [
      aJob('A', [null, 300], null, holding),
      aJob('B', [null, 200], null, holding),
      aJob('C', [null, 200], null, holding),
      aJob('D', [null, 900]),
    ],
  });
  // B1 works 300 s with H, B2 400 s.
  const home = atHome(problem, [Int32Array.of(0, 3), Int32Array.of(1, 2)]);
  expect(home.eligible.map((able) => [...able])).toEqual([[1], [1], [1], [0, 1]]);
  expect(home.held).toBeNull();
});

it('what is fixed elsewhere stays there', () => {
  const problem = aProblem({
    machines: [aMachine('B1'), aMachine('B2')],
    jobs: [aJob('A', [null, 100], null, holding), aJob('B', [null, 200], null, holding)],
    frozen: { B1: ['A:brake'] },
  });
  const home = atHome(problem, [Int32Array.of(0), Int32Array.of(1)]);
  expect(home.eligible.map((able) => [...able])).toEqual([[0, 1], [1]]);
});

it('where every brake can do all bends, and none needs two things, plans with each thing at home wait for none', () => {
  let shops = 0;
  fc.assert(
    fc.property(seeds, (seed) => {
      const drawn = withHolds(new Rng(seed), { ...randomShop(seed), frozen: {}, pins: [], crew: null });
      const jobs = drawn.jobs.map((job) => ({
        ...job,
        operations: job.operations.map(({ id, stage, seconds, attributes, holds = [] }) => ({
          id,
          stage,
          seconds,
          ...(attributes && { attributes }),
          holds: stage === 'brake' ? holds.slice(0, 1) : [],
        })),
      }));
      const problem = built({ ...drawn, jobs });
      let plan = null;
      for (const queues of constructions(problem)) plan = queues;
      fc.pre(problem.held !== null && plan !== null);
      const home = atHome(problem, plan!);
      for (const queues of constructions(home)) {
        if (queues === null) continue;
        const named = nameQueues(home, queues);
        expect(must(decode(problem, named)).operations).toEqual(must(decode(home, named)).operations);
        shops += 1;
      }
    }),
    { numRuns: 200 },
  );
  expect(shops).toBeGreaterThan(50);
});
