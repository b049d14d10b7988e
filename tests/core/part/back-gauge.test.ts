import { describe, expect, it } from 'vitest';
import { gaugedAt } from '../../../core/part/back-gauge.ts';
import { givenOrder } from '../../../core/part/bend-order.ts';
import type { Forming } from '../../../core/part/forming.ts';
import { aProfile, square } from './profiles.ts';

/** 1 mm sheet, radius 1 mm, K 0.5: a square bend takes π/2 × 1.5 = 2.356 mm of the strip. */
const forming: Forming = {
  thicknessMm: 1,
  kFactor: 0.5,
  radiusMm: 1,
  units: { units: 'mm', decimals: 'point' },
};
const HALF = (Math.PI / 2) * 0.75;
const channel = aProfile({ flangesMm: [40, 60, 40], bends: [square(), square()] });

describe('how far the back gauge stands behind the bend line', () => {
  it('is the flat metal to the edge at first, and to the outside of a leg that stands', () => {
    const order = givenOrder(channel, 8, ['bend 1', 'bend 2']);
    const [first, second] = gaugedAt(order, channel, forming);
    const flat = 38;
    const web = 56;
    const reach = { start: HALF + flat, end: HALF + web + 2 * HALF + flat };
    expect(first!.mm).toBeCloseTo(reach[order.steps[0]!.back], 6);
    // By the other leg's outside: the web less its two setbacks, half a fold, and radius and thickness of the standing one.
    const standing = { start: HALF + web + 2, end: HALF + flat };
    expect(second!.mm).toBeCloseTo(standing[order.steps[1]!.back], 6);
  });

  it('has no figure where the flange at the stops slants', () => {
    const profile = aProfile({
      flangesMm: [40, 60, 40],
      bends: [square('up', 45), square()],
    });
    const order = givenOrder(profile, 8, ['bend 1', 'bend 2']);
    const slanted = { ...order, steps: order.steps.map((step) => ({ ...step, back: 'start' as const })) };
    expect(gaugedAt(slanted, profile, forming).map(({ mm }) => mm)).toEqual([expect.any(Number), null]);
  });
});
