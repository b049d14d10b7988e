import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  allPatterns,
  bestPatterns,
  noRule,
  patternSearch,
  type AxisRule,
  type PieceKind,
} from '../../../core/cutting/knapsack.ts';

const kinds = fc.array(
  fc.record({
    size: fc.integer({ min: 3, max: 60 }),
    value: fc.integer({ min: 1, max: 40 }),
    copies: fc.integer({ min: 1, max: 3 }),
  }),
  { minLength: 1, maxLength: 5 },
);
const rules = fc.constantFrom<AxisRule>(
  noRule,
  { wideAbove: 30, narrowBelow: 0, thinBelow: 0 },
  { wideAbove: 40, narrowBelow: 12, thinBelow: 0 },
  { wideAbove: 40, narrowBelow: 12, thinBelow: 4 },
);

/** Every way of taking up to `copies` of each kind, by plain counting. */
function everyPattern(all: readonly PieceKind[]): number[][] {
  return all.reduce<number[][]>(
    (some, kind) =>
      some.flatMap((counts) => Array.from({ length: kind.copies + 1 }, (_, k) => [...counts, k])),
    [[]],
  );
}
const total = (all: readonly PieceKind[], counts: readonly number[], of: 'size' | 'value'): number =>
  counts.reduce((sum, count, at) => sum + count * (all[at] as PieceKind)[of], 0);
function allowed(
  all: readonly PieceKind[],
  counts: readonly number[],
  capacity: number,
  rule: AxisRule,
): boolean {
  const room = capacity - total(all, counts, 'size');
  const sizes = counts.flatMap((count, at) => new Array<number>(count).fill((all[at] as PieceKind).size));
  const held = room >= rule.narrowBelow || sizes.some((size) => size >= rule.narrowBelow);
  const thin = room > 0 && room < rule.thinBelow;
  return room >= 0 && !thin && sizes.filter((size) => size > rule.wideAbove).length <= 1 && held;
}

describe('the search for patterns', () => {
  it('finds the most valuable one that the shear allows, as plain counting does, even with a coarse bound table', () => {
    fc.assert(
      fc.property(
        kinds,
        fc.integer({ min: 5, max: 120 }),
        rules,
        fc.constantFrom(7, 2000),
        (all, capacity, rule, buckets) => {
          const values = everyPattern(all)
            .filter((counts) => allowed(all, counts, capacity, rule))
            .map((counts) => total(all, counts, 'value'));
          const best = Math.max(0, ...values);
          const found = bestPatterns(patternSearch(all, capacity, rule, buckets), 0, {
            keep: 1,
            nodes: 1e6,
            slack: 0,
          });
          expect(found.patterns[0]?.value ?? 0).toBe(best);
          expect(found.bound).toBeGreaterThanOrEqual(best);
          for (const { counts } of found.patterns) expect(allowed(all, counts, capacity, rule)).toBe(true);
        },
      ),
      { numRuns: 1500, seed: 7 },
    );
  });

  it('lists exactly the full patterns above a value', () => {
    fc.assert(
      fc.property(
        kinds,
        fc.integer({ min: 5, max: 120 }),
        fc.integer({ min: 0, max: 60 }),
        (all, capacity, least) => {
          const full = (counts: readonly number[]): boolean => {
            const room = capacity - total(all, counts, 'size');
            return (
              room >= 0 && all.every((kind, at) => kind.size > room || (counts[at] as number) === kind.copies)
            );
          };
          const expected = everyPattern(all).filter(
            (counts) => full(counts) && total(all, counts, 'value') > least,
          );
          const found = allPatterns(patternSearch(all, capacity, noRule), least, {
            full: true,
            limit: 1e6,
            nodes: 1e6,
          })?.map((pattern) => [...pattern.counts]);
          expect(found?.sort()).toEqual(expected.sort());
        },
      ),
      { numRuns: 1500, seed: 8 },
    );
  });

  it('says that it may have missed something when it had to stop early', () => {
    const many = Array.from({ length: 30 }, (_, at) => ({ size: 101 + at, value: 101 + at, copies: 1 }));
    const search = patternSearch(many, 1000, noRule, 20);
    const found = bestPatterns(search, 0, { keep: 1, nodes: 5, slack: 0 });
    expect(found.bound).toBeGreaterThanOrEqual(1000);
    expect(allPatterns(search, 500, { full: true, limit: 10, nodes: 1e6 })).toBeNull();
  });
});
