import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { intersect, subtract, total, union, type Interval } from '../../../core/time/interval.ts';

const span = (start: number, end: number): Interval => ({ start, end });
const stretches = fc.array(
  fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -2, max: 10 })).map(([a, n]) => span(a, a + n)),
  { maxLength: 8 },
);
/** The slow truth: each second by itself. */
const covers = (list: readonly Interval[], at: number): boolean =>
  list.some((s) => s.start <= at && at < s.end);
const seconds = Array.from({ length: 60 }, (_, i) => i);

describe('stretches of time', () => {
  it('that touch are joined, that lie apart stay apart', () => {
    expect(union([span(5, 8), span(1, 3), span(3, 4)])).toEqual([span(1, 4), span(5, 8)]);
  });

  it('that only touch do not overlap', () => {
    expect(intersect([span(0, 5)], [span(5, 9)])).toEqual([]);
  });

  it('lose a hole in their middle', () => {
    expect(subtract([span(0, 10), span(20, 30)], [span(4, 6), span(9, 22)])).toEqual([
      span(0, 4),
      span(6, 9),
      span(22, 30),
    ]);
  });

  it('that end before they begin count for nothing', () => {
    expect(union([span(7, 7), span(9, 3)])).toEqual([]);
    expect(total([span(9, 3)])).toBe(0);
  });

  it('agree with counting each second, however they are combined', () => {
    fc.assert(
      fc.property(stretches, stretches, (x, y) => {
        const a = union(x);
        const b = union(y);
        for (const at of seconds) {
          expect(covers(a, at)).toBe(covers(x, at));
          expect(covers(intersect(a, b), at)).toBe(covers(x, at) && covers(y, at));
          expect(covers(subtract(a, b), at)).toBe(covers(x, at) && !covers(y, at));
        }
      }),
    );
  });

  it('are ascending and never touch after union, and what is taken and what is left add up', () => {
    fc.assert(
      fc.property(stretches, stretches, (x, y) => {
        const a = union(x);
        const b = union(y);
        a.slice(1).forEach((s, i) => expect(s.start).toBeGreaterThan(a[i]?.end ?? NaN));
        expect(total(intersect(a, b)) + total(subtract(a, b))).toBe(total(a));
      }),
    );
  });
});
