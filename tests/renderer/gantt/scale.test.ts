import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  endOf,
  FARTHEST_S,
  fitted,
  instantAt,
  kept,
  NEAREST_S,
  panned,
  revealing,
  spanOf,
  xOf,
  zoomed,
  type Scale,
} from '../../../renderer/gantt/scale.ts';

const scale: Scale = { from: 1_000_000, perPixel: 60, width: 1000 };
const anyScale = fc.record({
  from: fc.integer({ min: 0, max: 2_000_000_000 }),
  perPixel: fc.double({ min: 4, max: 2000, noNaN: true }),
  width: fc.integer({ min: 200, max: 3000 }),
});

describe('the window on time', () => {
  it('turns pixels into instants and back', () => {
    expect(instantAt(scale, 10)).toBe(1_000_600);
    expect(xOf(scale, 1_000_600)).toBe(10);
    expect(endOf(scale)).toBe(1_060_000);
  });

  it('keeps the instant under the pointer in its place while looking closer or farther', () => {
    fc.assert(
      fc.property(
        anyScale,
        fc.double({ min: 0.2, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (any, factor, share) => {
          const x = share * any.width;
          const after = zoomed(any, factor, x);
          expect(instantAt(after, x)).toBeCloseTo(instantAt(any, x), 3);
        },
      ),
    );
  });

  it('shows no less than an hour and no more than four weeks', () => {
    expect(spanOf(zoomed(scale, 1e9, 500))).toBeCloseTo(NEAREST_S);
    expect(spanOf(zoomed(scale, 1e-9, 500))).toBeCloseTo(FARTHEST_S);
    expect(spanOf(fitted(0, 60, 800))).toBeCloseTo(NEAREST_S);
  });

  it('fits a stretch exactly into its width', () => {
    const fit = fitted(5000, 5000 + 7200, 720);
    expect(xOf(fit, 5000)).toBe(0);
    expect(xOf(fit, 12_200)).toBeCloseTo(720);
  });

  it('slides by whole pixels without changing how close it looks', () => {
    expect(panned(scale, 50)).toEqual({ ...scale, from: 1_003_000 });
  });

  it('stays where it is for an operation in sight and slides for one that is not', () => {
    expect(revealing(scale, 1_010_000, 1_020_000)).toBe(scale);
    const later = revealing(scale, 1_070_000, 1_073_600);
    expect(xOf(later, 1_073_600)).toBeLessThan(later.width);
    expect(xOf(later, 1_070_000)).toBeGreaterThan(0);
    const earlier = revealing(scale, 900_000, 903_600);
    expect(xOf(earlier, 900_000)).toBeGreaterThan(0);
  });

  it('does not leave the board: the window is pushed back inside its ends', () => {
    expect(kept(scale, 1_020_000, 2_000_000).from).toBe(1_020_000);
    expect(endOf(kept({ ...scale, from: 5_000_000 }, 0, 2_000_000))).toBe(2_000_000);
    expect(kept(scale, 1_005_000, 1_010_000).from).toBe(1_005_000);
  });
});
