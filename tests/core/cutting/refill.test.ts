import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costOf, type Use } from '../../../core/cutting/cover.ts';
import { fillByValue } from '../../../core/cutting/fill.ts';
import type { SheetLayout } from '../../../core/cutting/layout.ts';
import { refill } from '../../../core/cutting/refill.ts';
import { wholeOf } from '../../../core/cutting/relaxation.ts';
import { blankSizes, type RunInput } from '../../../core/cutting/run.ts';
import { coverOfRun } from '../../../core/cutting/sheet-patterns.ts';
import { randomRun } from './random-run.ts';

type Uses = readonly Use<SheetLayout>[];

/** The answers that refilling hands over, from the first fill on. */
function answersOf(run: RunInput) {
  const cover = coverOfRun(run, blankSizes(run));
  const first = fillByValue(cover, wholeOf(cover), cover.sizes);
  const found: Uses[] = first ? [first] : [];
  if (first)
    for (const filling = refill(cover, first, 40, (uses) => found.push(uses)); !filling.next().done;);
  return { cover, found };
}

describe('an answer filled again in part', () => {
  it('covers every piece from the stock there is, for less each time, and the same way each time (150 runs)', () => {
    let improved = 0;
    for (const run of fc.sample(randomRun, { numRuns: 150, seed: 20261201 })) {
      const { cover, found } = answersOf(run);
      found.forEach((uses, at) => {
        cover.demand.forEach((asked, item) => {
          const made = uses.flatMap(({ column, count }) =>
            column.pieces.filter(([of]) => of === item).map(([, pieces]) => pieces * count),
          );
          expect(made.reduce((a, b) => a + b, 0)).toBeGreaterThanOrEqual(asked);
        });
        cover.stock.forEach(({ available }, stock) => {
          const used = uses.reduce(
            (sum, { column, count }) => sum + (column.stock === stock ? column.use * count : 0),
            0,
          );
          expect(used).toBeLessThanOrEqual(available ?? Infinity);
        });
        if (at > 0) expect(costOf(uses)).toBeLessThan(costOf(found[at - 1] as Uses));
      });
      expect(answersOf(run).found.map(costOf)).toEqual(found.map(costOf));
      if (found.length > 1) improved++;
    }
    expect(improved).toBeGreaterThan(10);
  });
});
