import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { earliestEnds, lowerBound } from '../../../core/schedule/bounds.ts';
import { changeoverBound } from '../../../core/schedule/bounds/changeover.ts';
import { makespanBound } from '../../../core/schedule/bounds/makespan.ts';
import { tardinessBound } from '../../../core/schedule/bounds/tardiness.ts';
import type { ObjectiveWeights, Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { ShopBySecond } from './by-the-second.ts';
import { leastOf } from './every-plan.ts';
import { built } from './exact.ts';
import { aJob, aMachine, aProblem, seeds } from './hand-shop.ts';
import { randomShop } from './random-shop.ts';
import { SMALL_SHOPS, smallShop } from './small-shops.ts';

const none: ObjectiveWeights = {
  weightedTardiness: 0,
  changeover: 0,
  makespan: 0,
  flowTime: 0,
  stability: 0,
};
const terms: Readonly<Record<string, Partial<ObjectiveWeights>>> = {
  'weighted tardiness': { weightedTardiness: 1 },
  changeovers: { changeover: 1 },
  makespan: { makespan: 1 },
  'flow time': { flowTime: 1 },
  'all terms together': { weightedTardiness: 2, changeover: 3, makespan: 1, flowTime: 1, stability: 1 },
};
const weighed = (input: ProblemInput, objective: Partial<ObjectiveWeights>): ProblemInput => ({
  ...input,
  objective: { ...none, ...objective },
});
const least = (input: ProblemInput) => leastOf(new ShopBySecond(input)).objective;

describe('no plan of all that there are is below the bound', () => {
  for (const [name, objective] of Object.entries(terms))
    it(`${name}: in random shops with everything a shop can have`, () => {
      fc.assert(
        fc.property(seeds, (seed) => {
          const input = weighed(randomShop(seed, 3), objective);
          expect(lowerBound(built(input)).value).toBeLessThanOrEqual(least(input) + 1e-6);
        }),
        { numRuns: 150 },
      );
    });

  for (const shape of Object.keys(SMALL_SHOPS).filter((each) => each !== 'a job shop'))
    it(`${shape}: whatever is weighed`, () => {
      for (const objective of Object.values(terms)) {
        const input = weighed(smallShop(shape, 2001), objective);
        expect(lowerBound(built(input)).value).toBeLessThanOrEqual(least(input) + 1e-6);
      }
    });

  it('a machine made ready by what runs there already costs nothing, also when that belongs to another stage', () => {
    const rules = { combine: 'sum', attributes: { colour: 60 } } as const;
    const own = { initial: { colour: 'bone' }, changeover: rules };
    const running = {
      started: { machine: 'B1', at: -5 },
      machines: [{ id: 'S1' }, { id: 'B1' }],
      attributes: { colour: 'moss' },
    };
    const problem = aProblem({
      machines: [aMachine('S1', own), aMachine('B1', own)],
      jobs: [
        aJob('A', [30, null], null, { shear: running }),
        aJob('B', [null, 30], null, { attributes: { colour: 'moss' } }),
      ],
    });
    expect(changeoverBound(problem)).toBe(0);
  });
});

describe('where theory knows the optimum, the bound meets it', () => {
  const one = (
    jobs: readonly (readonly [number, number, number])[],
    more: Partial<ProblemInput> = {},
  ): Problem =>
    aProblem({
      machines: [aMachine('B1')],
      jobs: jobs.map(([release, seconds, due], j) => aJob(`J${j}`, [null, seconds], due, { release })),
      ...more,
    });

  // Worked by hand after J. Carlier, European Journal of Operational Research 11, 1982, pp. 42-47 (from memory): always the
  // ready line with the longest tail. The tails are machines that no other line uses.
  it('one machine with heads and tails: the preemptive schedule of Jackson’s rule, worked by hand', () => {
    // J0 runs to 10, J1 to 15, J2 to 19, J0 again to 21: with their tails 24, 35 and 28. Waiting for J1 reaches 35 too.
    const jobs = [
      [0, 12, 3],
      [10, 5, 20],
      [10, 4, 9],
    ] as const;
    const tails = jobs.map((_, j) => aMachine(`T${j}`, { stage: `tail ${j}` }));
    const problem = aProblem({
      machines: [aMachine('B1'), ...tails],
      jobs: jobs.map(([release, work, tail], j) => ({
        ...aJob(`J${j}`, [null, work], null, { release }),
        operations: [
          { id: `J${j}:brake`, stage: 'brake', seconds: work },
          { id: `J${j}:tail`, stage: `tail ${j}`, seconds: tail },
        ],
      })),
    });
    expect(makespanBound(problem, earliestEnds(problem))).toBe(35);
    expect(least(weighed(problem.input, { makespan: 1 }))).toBe(35);
  });

  // J. R. Jackson 1955; E. L. Lawler: equal due dates make shortest-first optimal (textbooks, e.g. M. L. Pinedo, ch. 3).
  it('lines of one due date and weight: shortest first, 20 + 50 + 90 seconds less the date each', () => {
    const problem = one([
      [0, 30, 10],
      [0, 20, 10],
      [0, 40, 10],
    ]);
    expect(tardinessBound(problem, earliestEnds(problem))).toBe(10 + 40 + 80);
    expect(least(problem.input)).toBe(10 + 40 + 80);
  });

  it('lines all late from the start, each alone in the shop: what they are late by', () => {
    const problem = one([[100, 30, 110]]);
    expect(lowerBound(problem).value).toBe(20);
  });

  it('colour runs: every colour that is not set up costs one changeover, an exception where one is cheaper', () => {
    const changeover = {
      combine: 'sum' as const,
      attributes: { colour: 60 },
      exceptions: [{ attribute: 'colour', from: 'bone', to: 'sky', seconds: 20 }],
    };
    const colours = ['bone', 'moss', 'sky', 'bone', 'moss'];
    const input = {
      machines: [aMachine('B1', { initial: { colour: 'moss' }, changeover })],
      jobs: colours.map((colour, j) => aJob(`J${j}`, [null, 30], null, { attributes: { colour } })),
      objective: { ...none, changeover: 1 },
    };
    const problem = aProblem(input);
    expect(lowerBound(problem).value).toBe(80);
    expect(least(problem.input)).toBe(80);
  });

  it('two brakes share the work of equal lines evenly', () => {
    const problem = aProblem({
      machines: [aMachine('B1'), aMachine('B2')],
      jobs: ['A', 'B', 'C', 'D'].map((id) => aJob(id, [null, 60], 0)),
    });
    expect(lowerBound(problem).value).toBeLessThanOrEqual(60 + 60 + 120 + 120);
    // The k-th end of k lines over two brakes counts as k × 30, but no line alone ends before 60.
    expect(lowerBound(problem).value).toBe(30 + 60 + 90 + 120);
  });
});
