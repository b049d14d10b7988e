import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costOf, type Cover, type Use } from '../../../core/cutting/cover.ts';
import { dive } from '../../../core/cutting/dive.ts';
import { fillByValue } from '../../../core/cutting/fill.ts';
import { createPool, relax, wholeOf } from '../../../core/cutting/relaxation.ts';
import { blankSizes } from '../../../core/cutting/run.ts';
import { piecesOf, type SheetLayout } from '../../../core/cutting/layout.ts';
import { coverOfRun } from '../../../core/cutting/sheet-patterns.ts';
import { randomRun } from './random-run.ts';

/** Random runs whose blanks can be cut, with a first answer and what it is in parts. */
const filledRuns = fc.sample(randomRun, { numRuns: 300, seed: 7 }).flatMap((run) => {
  const cover = coverOfRun(run, blankSizes(run));
  const uses = fillByValue(cover, wholeOf(cover), cover.sizes);
  return uses && cover.parts ? [{ cover, uses, parts: cover.parts }] : [];
});

const yielded = (cover: Cover, uses: readonly Use<SheetLayout>[]): number[] => {
  const pieces = cover.demand.map(() => 0);
  for (const { column, count } of uses)
    for (const [item, each] of piecesOf(column.layout))
      pieces[item] = (pieces[item] as number) + each * count;
  return pieces;
};

/** The last value of a search. */
function ended<T>(search: Generator<unknown, T>): T {
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

describe('a run in parts, panels filled and sheets crosscut on their own', () => {
  it('takes many random runs', () => expect(filledRuns.length).toBeGreaterThan(150));

  it('put together again yields the same pieces from the same stock', () => {
    for (const { cover, uses, parts } of filledRuns) {
      const again = parts.join(parts.split(uses));
      expect(costOf(again)).toBeCloseTo(costOf(uses), 6);
      expect(yielded(cover, again)).toEqual(yielded(cover, uses));
    }
  });

  it('relaxes to no more than an answer that is among its columns costs', () => {
    for (const { uses, parts } of filledRuns.slice(0, 100)) {
      const pool = createPool(parts.split(uses).map(({ column }) => column));
      const effort = { rounds: 5, closeEnough: 0, exact: false };
      expect(ended(relax(parts.cover, wholeOf(parts.cover), pool, effort)).cost).toBeLessThanOrEqual(
        costOf(uses) * (1 + 1e-4),
      );
    }
  });

  it('dives only to answers that cover every blank, within the stock there is', () => {
    let answers = 0;
    for (const { cover, uses, parts } of filledRuns.slice(0, 100)) {
      const pool = createPool(parts.split(uses).map(({ column }) => column));
      const effort = { rounds: 30, closeEnough: 0, exact: false };
      const relaxed = ended(relax(parts.cover, wholeOf(parts.cover), pool, effort));
      const accept = (found: readonly Use[]): void => {
        answers++;
        const sheets = parts.join(found);
        yielded(cover, sheets).forEach((pieces, item) =>
          expect(pieces).toBeGreaterThanOrEqual(cover.demand[item] as number),
        );
        cover.stock.forEach(({ available }, stock) => {
          const taken = sheets.reduce(
            (sum, { column }) => sum + (column.stock === stock ? column.use : 0),
            0,
          );
          expect(taken).toBeLessThanOrEqual(available ?? Infinity);
        });
      };
      ended(dive(parts.cover, pool, relaxed, -1, { cost: () => Infinity, accept }));
    }
    expect(answers).toBeGreaterThan(50);
  });
});
