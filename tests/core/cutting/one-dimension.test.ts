import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCut } from '../../../core/cutting/check-cut.ts';
import { readCutProblem, type CutProblem } from '../../../core/cutting/cut-problem.ts';
import { solveOneDimension, type CutProgress } from '../../../core/cutting/one-dimension.ts';
import { loadHighs, mipWith } from '../../../electron/solver/highs.ts';

const problemOf = (stock: object[], items: object[], trim = 0): CutProblem => {
  const read = readCutProblem({ format: 'cut-problem/1', name: 'test', stock, items, trim });
  if (!read.ok) throw new Error(read.issues.map((p) => p.message).join(' '));
  return read.value;
};
function last(given: CutProblem, options: Parameters<typeof solveOneDimension>[1] = {}): CutProgress {
  const solving = solveOneDimension(given, options);
  let step = solving.next();
  while (!step.done) step = solving.next();
  return step.value;
}

/** Least cost by trying every stock piece and every subset, remembered by what is left: for a handful of pieces. */
function leastCost(given: CutProblem): number {
  const pieces = given.items.flatMap((item) => new Array<number>(item.quantity).fill(item.length));
  const known = new Map<string, number>();
  const solve = (left: number, used: readonly number[]): number => {
    if (left === 0) return 0;
    const key = `${left}/${used.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const first = left & -left;
    let best = Infinity;
    for (let subset = left; subset > 0; subset = (subset - 1) & left) {
      if ((subset & first) === 0) continue;
      const length = pieces.reduce((sum, piece, at) => sum + ((subset >> at) & 1) * piece, given.trim);
      given.stock.forEach((stock, at) => {
        const taken = used[at] as number;
        if (length > stock.length || (stock.available !== null && taken >= stock.available)) return;
        const then = used.map((count, k) => (k === at ? count + 1 : count));
        best = Math.min(best, stock.cost + solve(left & ~subset, then));
      });
    }
    known.set(key, best);
    return best;
  };
  return solve(
    (1 << pieces.length) - 1,
    given.stock.map(() => 0),
  );
}

const small = fc
  .record({
    stock: fc.array(
      fc.record({
        length: fc.integer({ min: 20, max: 60 }),
        cost: fc.integer({ min: 1, max: 9 }),
        available: fc.constantFrom(null, null, 1, 2),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    items: fc.array(
      fc.record({ length: fc.integer({ min: 4, max: 20 }), quantity: fc.integer({ min: 1, max: 2 }) }),
      { minLength: 1, maxLength: 4 },
    ),
    trim: fc.constantFrom(0, 0, 1),
  })
  .map(({ stock, items, trim }) => ({
    stock: [
      ...stock.map((one, at) => ({ id: `S${at}`, ...one })),
      { id: 'plenty', length: 45, cost: 8, available: null },
    ],
    items: items.map((one, at) => ({ id: `I${at}`, ...one })),
    trim,
  }));

describe('cutting stock lengths', () => {
  it('costs as little as trying everything does, on small problems', async () => {
    const solveMip = mipWith(await loadHighs(), () => 5);
    fc.assert(
      fc.property(small, ({ stock, items, trim }) => {
        const given = problemOf(stock, items, trim);
        const found = last(given, { solveMip });
        expect(found.result && checkCut(given, found.result)).toEqual([]);
        const least = leastCost(given);
        expect(found.result?.objective).toBe(least);
        expect(found.lowerBound).toBeLessThanOrEqual(least + 1e-6);
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it('never claims a bound above the least cost while it is still searching', () => {
    fc.assert(
      fc.property(small, ({ stock, items, trim }) => {
        const given = problemOf(stock, items, trim);
        const least = leastCost(given);
        for (const step of solveOneDimension(given, {})) {
          expect(step.lowerBound).toBeLessThanOrEqual(least + 1e-6);
          if (step.result) expect(step.result.objective).toBeGreaterThanOrEqual(least - 1e-6);
        }
      }),
      { numRuns: 200, seed: 4 },
    );
  });

  it('says so when the stock does not suffice', () => {
    const given = problemOf(
      [{ id: 'S', length: 10, available: 2, cost: 1 }],
      [{ id: 'I', length: 6, quantity: 3 }],
    );
    expect(last(given)).toMatchObject({ result: null, status: 'infeasible' });
  });

  it('finds the answer that uses the stock up to the last piece where filling greedily runs out', async () => {
    // Twenty lengths of 1000, each divided into three parts at random: only an exact packing fits the twenty there are.
    // Made like the triplets of E. Falkenauer, Journal of Heuristics 2 (1996) 5-30.
    const solveMip = mipWith(await loadHighs(), () => 5);
    const triplet = fc
      .tuple(fc.integer({ min: 380, max: 490 }), fc.double({ min: 0, max: 1, noNaN: true }))
      .map(([a, share]) => [a, 250 + Math.floor(share * ((1000 - a) / 2 - 250))])
      .map(([a = 0, b = 0]) => [a, b, 1000 - a - b]);
    let greedyFailed = 0;
    fc.assert(
      fc.property(fc.array(triplet, { minLength: 20, maxLength: 20 }), (parts) => {
        const items = parts
          .flat()
          .sort((a, b) => b - a)
          .map((length, at) => ({ id: `I${at}`, length, quantity: 1 }));
        const given = problemOf([{ id: 'S', length: 1000, available: 20, cost: 3 }], items);
        const first = solveOneDimension(given, {}).next().value;
        if (first.result === null) greedyFailed++;
        const found = last(given, { solveMip });
        expect(found).toMatchObject({ status: 'optimal', result: { objective: 60 } });
        expect(found.result && checkCut(given, found.result)).toEqual([]);
      }),
      { numRuns: 10, seed: 5 },
    );
    expect(greedyFailed).toBeGreaterThan(0);
  });

  it('leaves nothing to do for no pieces', () => {
    expect(last(problemOf([{ id: 'S', length: 10 }], []))).toMatchObject({
      result: { objective: 0, patterns: [] },
      status: 'optimal',
    });
  });

  it('refuses a file with a piece longer than any stock, and one with an id twice', () => {
    const read = (items: object[]) =>
      readCutProblem({ format: 'cut-problem/1', name: 'x', stock: [{ id: 'S', length: 10 }], items });
    expect(read([{ id: 'I', length: 11, quantity: 1 }])).toMatchObject({
      ok: false,
      issues: [{ subject: 'item I', field: 'length' }],
    });
    const twice = { id: 'I', length: 1, quantity: 1 };
    expect(read([twice, twice])).toMatchObject({ ok: false, issues: [{ field: 'id' }] });
    expect(readCutProblem('nonsense')).toMatchObject({ ok: false });
  });
});
