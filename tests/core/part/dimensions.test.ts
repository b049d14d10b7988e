import fc from 'fast-check';
import { expect, it } from 'vitest';
import { dimensioned } from '../../../core/part/dimensions.ts';
import { aProfile, anyForming, anyProfile, closedHem, light } from './profiles.ts';

it('every length on the drawing runs just as far as the drawing says, however it is measured', () => {
  fc.assert(
    fc.property(anyProfile, anyForming, (profile, forming) => {
      const drawn = dimensioned(profile, forming);
      fc.pre(drawn.ok);
      if (!drawn.ok) return;
      const { lengths, angles } = drawn.value;
      const hems = [profile.startHem, profile.endHem].filter((hem) => hem !== null);
      expect(lengths.filter((m) => m.of === 'flange').map((m) => m.lengthMm)).toEqual(profile.flangesMm);
      expect(lengths.filter((m) => m.of === 'lip').map((m) => m.lengthMm)).toEqual(
        hems.map((h) => h.lengthMm),
      );
      for (const { from, to, lengthMm } of lengths)
        expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(lengthMm, 6);
      expect(angles.map((m) => m.angle)).toEqual(profile.bends.map((b) => b.angle));
    }),
  );
});

it('each hem is marked beyond its own fold, on the outer side', () => {
  const hems = {
    startHem: closedHem(12, 'up'),
    endHem: { kind: 'teardrop', lengthMm: 15, direction: 'down', gapMm: 3 } as const,
  };
  const drawn = dimensioned(aProfile({ flangesMm: [100], bends: [], ...hems }), light);
  if (!drawn.ok) throw new Error('refused');
  const [start, end] = drawn.value.hems;
  expect([start?.edge, start?.hem, end?.edge, end?.hem]).toEqual([
    'start',
    hems.startHem,
    'end',
    hems.endHem,
  ]);
  const { box } = drawn.value.drawing;
  // The flange lies level: a full fold is outermost where it is halfway round, a teardrop turns a little farther.
  expect(start?.at.x).toBeCloseTo(box.left, 6);
  expect(start?.away.x).toBeCloseTo(-1, 6);
  expect(end?.at.x).toBeGreaterThan(box.left + box.width - 0.1);
  expect(end?.away.x).toBeGreaterThan(0.95);
});

it('a refused profile has no dimensions', () => {
  expect(dimensioned(aProfile({ endHem: closedHem(0.5) }), light).ok).toBe(false);
});
