import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProfile, type Drawing } from '../../../core/part/drawing.ts';
import { girth } from '../../../core/part/girth.ts';
import type { Forming } from '../../../core/part/forming.ts';
import type { Profile } from '../../../core/part/profile.ts';
import { aProfile, anyProfile, anyForming, closedHem, light, square } from './profiles.ts';

function drawn(profile: Profile, forming: Forming = light): Drawing {
  const drawing = drawProfile(profile, forming);
  if (!drawing.ok) throw new Error(drawing.issues.map((p) => p.message).join());
  return drawing.value;
}

/** Length along an SVG path of M, L and A (circular, never the large arc), computed from its numbers alone. */
function pathLength(path: string): number {
  let [x, y, length] = [0, 0, 0];
  for (const [, command, rest] of path.matchAll(/([MLA]) ([^MLA]*)/g)) {
    const numbers = (rest ?? '').trim().split(/\s+/).map(Number);
    const [toX = NaN, toY = NaN] = numbers.slice(-2);
    const chord = Math.hypot(toX - x, toY - y);
    const radius = numbers[0] ?? NaN;
    if (command === 'L') length += chord;
    if (command === 'A') length += 2 * radius * Math.asin(Math.min(1, chord / (2 * radius)));
    [x, y] = [toX, toY];
  }
  return length;
}

describe('the drawing of a profile', () => {
  it('is as long as the girth, by its own lines and arcs', () => {
    fc.assert(
      fc.property(anyProfile, anyForming, (profile, forming) => {
        const width = girth(profile, { ...forming, rule: 'computed' });
        fc.pre(width.ok);
        const length = drawn(profile, forming).strokes.reduce((sum, s) => {
          if (s.kind === 'line') return sum + Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
          expect(Math.hypot(s.to.x - s.centre.x, s.to.y - s.centre.y)).toBeCloseTo(s.radiusMm, 6);
          expect(Math.hypot(s.from.x - s.centre.x, s.from.y - s.centre.y)).toBeCloseTo(s.radiusMm, 6);
          const chord = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
          return sum + 2 * s.radiusMm * Math.asin(Math.min(1, chord / (2 * s.radiusMm)));
        }, 0);
        expect(Math.abs(length - (width.ok ? width.value.girthMm : NaN))).toBeLessThan(0.01);
      }),
    );
  });

  it('runs without gaps or kinks, and its box holds every stroke', () => {
    fc.assert(
      fc.property(anyProfile, anyForming, (profile, forming) => {
        fc.pre(drawProfile(profile, forming).ok);
        const { strokes, box } = drawn(profile, forming);
        strokes.slice(1).forEach((s, i) => expect(s.from).toEqual(strokes[i]?.to));
        for (const { from, to } of strokes) {
          for (const { x, y } of [from, to]) {
            expect(x).toBeGreaterThanOrEqual(box.left);
            expect(x).toBeLessThanOrEqual(box.left + box.width + 1e-9);
            expect(y).toBeGreaterThanOrEqual(box.top);
            expect(y).toBeLessThanOrEqual(box.top + box.height + 1e-9);
          }
        }
      }),
    );
  });

  it('as an SVG path is as long as the girth, to its rounding', () => {
    const channel = aProfile({
      flangesMm: [40, 90, 40],
      bends: [square(), square()],
      startHem: closedHem(12),
    });
    const width = girth(channel, { ...light, rule: 'computed' });
    expect(pathLength(drawn(channel).path)).toBeCloseTo(width.ok ? width.value.girthMm : NaN, 2);
  });

  it('lays the longest flange level and bends up towards the top of the screen', () => {
    const { strokes, box } = drawn(aProfile({ flangesMm: [40, 90], bends: [square('up')] }));
    const [first, , level] = strokes;
    expect(level?.from.y).toBeCloseTo(level?.to.y ?? NaN, 9);
    // Read from its first edge the short flange comes down into the corner.
    expect(first?.from.y).toBeLessThan(first?.to.y ?? NaN);
    expect(box.height).toBeGreaterThan(38);
  });

  it('folds an up hem above its flange, a down hem below', () => {
    const flat = aProfile({ flangesMm: [100], bends: [] });
    for (const edge of ['startHem', 'endHem'] as const) {
      const lipY = (direction: 'up' | 'down') =>
        drawn({ ...flat, [edge]: closedHem(12, direction) }).strokes.find((s) => s.of === 'lip')?.from.y ??
        NaN;
      const flangeY = (direction: 'up' | 'down') =>
        drawn({ ...flat, [edge]: closedHem(12, direction) }).strokes.find((s) => s.of === 'flange')?.from.y ??
        NaN;
      expect(lipY('up')).toBeLessThan(flangeY('up'));
      expect(lipY('down')).toBeGreaterThan(flangeY('down'));
      // A closed hem's two layers lie one thickness apart.
      expect(flangeY('up') - lipY('up')).toBeCloseTo(light.thicknessMm, 9);
    }
  });

  it('takes in the belly of a large arc', () => {
    const half: Profile = aProfile({
      flangesMm: [600, 600],
      bends: [{ angle: 179, direction: 'up', radiusMm: 100 }],
    });
    const { box, strokes } = drawn(half);
    const arc = strokes.find((s) => s.kind === 'arc');
    expect(box.left + box.width).toBeCloseTo(arc?.kind === 'arc' ? arc.centre.x + arc.radiusMm : NaN, 6);
  });

  it('marks the painted side of the longest flange', () => {
    expect(drawn(aProfile()).paint.towards).toEqual({ x: 0, y: -1 });
    expect(drawn(aProfile({ paintedSide: 'down' })).paint.towards).toEqual({ x: 0, y: 1 });
  });

  it('is refused as the girth is', () => {
    expect(drawProfile(aProfile({ flangesMm: [1, 40] }), light).ok).toBe(false);
  });
});
