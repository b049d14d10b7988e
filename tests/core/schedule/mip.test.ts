import highsLoader from 'highs';
import { expect, it } from 'vitest';
import { built, searched } from './exact.ts';
import { solveShop } from './mip.ts';
import { TEN_JOBS, tenJobs } from './ten-jobs.ts';

// HiGHS, a general-purpose solver from npm, is the outside check. `node tests/bench/mip.ts` tries 100 shops.
const SEEDS: Readonly<Record<string, readonly number[]>> = {
  'one machine with changeovers': [2],
  'a shear, then a brake': [1, 2, 3, 4],
  'two brakes side by side': [1, 4],
  'a job shop': [1, 2, 3, 4, 6],
};

for (const kind of Object.keys(TEN_JOBS))
  it(`ten lines, ${kind}: no plan that a MIP solver finds is better`, async () => {
    const highs = await highsLoader();
    for (const seed of SEEDS[kind]!) {
      const input = tenJobs(kind, seed);
      const found = searched(built(input), 0, 120);
      const { objective, status } = solveShop(highs, input, found, 20);
      // Out of time it has proven nothing, but must not have found a better plan either.
      if (status === 'optimal') expect(objective, input.name).toBeCloseTo(found, 4);
      else expect([status, objective > found - 1e-6], input.name).toEqual(['stopped', true]);
    }
  });

it('the programme’s optimum is that of trying every order by hand: two lines, the urgent one second', async () => {
  // Moss is set up: A (5 s, moss), then B (3 s, bone, 2 s of changeover) ends at 5 and 10; due 10 and 4 cost 6 + 2.
  // B first: changed over by 2, done at 5 (1 late), A after another changeover at 12 (2 late): 3 + 4.
  const base = tenJobs('one machine with changeovers', 1);
  const line = (id: string, seconds: number, due: number, colour: string) => ({
    ...{ id, release: 0, due, weight: 1 },
    operations: [{ id: `${id}:0`, stage: 'M', seconds, attributes: { colour } }],
  });
  const input = {
    ...base,
    machines: [{ ...base.machines[0]!, changeover: { combine: 'sum' as const, attributes: { colour: 2 } } }],
    jobs: [line('A', 5, 10, 'moss'), line('B', 3, 4, 'bone')],
  };
  expect(solveShop(await highsLoader(), input, 100, 10)).toMatchObject({ objective: 7, status: 'optimal' });
});
