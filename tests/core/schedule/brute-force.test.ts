import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decode } from '../../../core/schedule/decode.ts';
import { improve } from '../../../core/schedule/improve.ts';
import { ShopBySecond } from './by-the-second.ts';
import { leastOf } from './every-plan.ts';
import { annealed, built, searched } from './exact.ts';
import { must, seeds } from './hand-shop.ts';
import { randomQueues, randomShop } from './random-shop.ts';
import { SMALL_SHOPS, smallShop } from './small-shops.ts';

// `node tests/bench/exact.ts` tries 500 shops of the same shapes; these are others.
const SEEDS = [1001, 1002, 1003];
const REPORTS = 120;

it('a shop worked off second by second has the figures of the decoder, whatever the queues', () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const input = { ...randomShop(seed), frozen: {}, pins: [] };
      const problem = built(input);
      const queues = randomQueues(seed, input);
      const numbers = input.machines.map(({ id }) => queues[id]!.map((o) => problem.operationAt.get(o)!));
      expect(new ShopBySecond(input).objective(numbers)).toBeCloseTo(
        must(decode(problem, queues)).objective,
        6,
      );
    }),
    { numRuns: 1000 },
  );
});

describe('against every possible plan', () => {
  for (const shape of Object.keys(SMALL_SHOPS))
    it(`${shape}: the search finds the best plan, and so does annealing alone`, () => {
      for (const seed of SEEDS) {
        const input = smallShop(shape, seed);
        const problem = built(input);
        const { objective } = leastOf(new ShopBySecond(input));
        expect(searched(problem, objective, REPORTS), input.name).toBeCloseTo(objective, 6);
        if (!input.sameOrder)
          expect(annealed(problem, objective, REPORTS), input.name).toBeCloseTo(objective, 6);
      }
    });

  it('a plan of few operations is proven best: the search ends by itself and says so', () => {
    const problem = built(smallShop('short of people', 1));
    const statuses = [...improve(problem, { seed: 1 })].map((found) => found.status);
    expect(statuses.at(-1)).toBe('optimal');
  });
});
