import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitFactors } from '../../../core/learn/fit.ts';
import { proportionalGroups } from '../../../core/learn/groups.ts';
import { factor } from '../../../core/learn/linear.ts';
import { median } from '../../../core/learn/robust.ts';

describe('a factored system', () => {
  // Hilbert's matrix of order 3 and its inverse, in any table: diagonal 9, 192, 180.
  const hilbert = [
    [1, 1 / 2, 1 / 3],
    [1 / 2, 1 / 3, 1 / 4],
    [1 / 3, 1 / 4, 1 / 5],
  ];

  it('has the inverse that is published for Hilbert’s matrix of order 3', () => {
    factor(hilbert)
      .inverseDiagonal()
      .forEach((value, k) => expect(value).toBeCloseTo([9, 192, 180][k]!, 8));
    factor(hilbert)
      .solve([1, 0, 0])
      .forEach((value, k) => expect(value).toBeCloseTo([9, -36, 30][k]!, 8));
  });

  it('is refused when it is not positive definite', () => {
    expect(() =>
      factor([
        [1, 2],
        [2, 1],
      ]),
    ).toThrow(RangeError);
  });
});

describe('a fit', () => {
  /**
   * Copper in wholemeal flour, 24 determinations (µg/g), one of them 28.95: Analytical Methods Committee, Analyst 114,
   * 1989, p. 1693; values and Huber's estimate of 3.21 as in W. N. Venables and B. D. Ripley, Modern Applied Statistics
   * with S, 4th ed. 2002, section 5.5 (from memory, but for the mean and the median, which the first check holds).
   */
  const copper = [
    2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4, 2.2,
    3.5, 3.6, 3.7, 3.7,
  ];
  const open = { together: 100, apart: 100 };
  const fitOf = (logs: readonly number[]) =>
    fitFactors(
      logs.map((log) => ({ parts: [1], seconds: Math.exp(log) })),
      1,
      open,
    );

  it('of the logarithm of one factor agrees with the published robust mean of the copper determinations', () => {
    expect(copper.reduce((sum, c) => sum + c, 0) / 24).toBeCloseTo(4.28, 2);
    expect(median(copper)).toBeCloseTo(3.385, 6);
    // Tukey's loss lets go of 28.95 altogether, Huber's does not: a little lower, by well under a standard error (0.11).
    expect(Math.abs(fitOf(copper).logFactors[0]! - 3.21)).toBeLessThan(0.07);
  });

  it('does not care how wild a wild value is', () => {
    const wilder = copper.map((c) => (c === 28.95 ? 280 : c));
    expect(fitOf(wilder).logFactors[0]).toBeCloseTo(fitOf(copper).logFactors[0]!, 9);
  });

  it('of exact data finds the factors', () => {
    const rows = Array.from({ length: 40 }, (_, k) => {
      const parts = [10 + k, 300 - 5 * k, (k * k) % 17];
      return { parts, seconds: 0.5 * parts[0]! + 2 * parts[1]! + 3 * parts[2]! };
    });
    const { logFactors } = fitFactors(rows, 3, open);
    logFactors.forEach((log, k) => expect(Math.exp(log)).toBeCloseTo([0.5, 2, 3][k]!, 3));
  });

  it('without rows is the prior: no change, and as unsure as before', () => {
    const { logFactors, logErrors } = fitFactors([], 2, { together: 0.3, apart: 0.4 });
    expect(logFactors).toEqual([0, 0]);
    for (const error of logErrors) expect(error).toBeCloseTo(0.5, 9);
  });

  it('lies between the present figure and the records, nearer to them the more there are', () => {
    const after = (rows: number) =>
      fitFactors(new Array(rows).fill({ parts: [60], seconds: 120 }), 1, { together: 0.2, apart: 0.2 })
        .logFactors[0]!;
    const path = [1, 3, 10, 100].map(after);
    expect(path.toSorted((a, b) => a - b)).toEqual(path);
    expect(path[0]).toBeGreaterThan(0);
    expect(path[3]).toBeLessThan(Math.log(2));
    expect(path[3]).toBeGreaterThan(0.99 * Math.log(2));
  });
});

describe('columns that are met together', () => {
  it('are one group whatever their size, and empty columns none', () => {
    expect(
      proportionalGroups([
        [1, 2, 3],
        [0, 0, 0],
        [2, 4, 6.1],
        [10, 20, 30],
      ]),
    ).toEqual([[0, 3], [2]]);
  });

  it('are grouped the same when rows come in another order', () => {
    const columns = fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 3, maxLength: 3 }));
    fc.assert(
      fc.property(columns, (all) => {
        expect(proportionalGroups(all.map((column) => column.toReversed()))).toEqual(proportionalGroups(all));
      }),
    );
  });
});
