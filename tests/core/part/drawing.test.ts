import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProfile, type Drawing } from '../../../core/part/drawing.ts';
import { girth } from '../../../core/part/girth.ts';
import type { Forming } from '../../../core/part/forming.ts';
import type { Profile } from '../../../core/part/profile.ts';
import { aProfile, anyProfile, anyForming, arcLength, closedHem, light, square } from './profiles.ts';

function drawn(profile: Profile, forming: Forming = light): Drawing {
  const drawing = drawProfile(profile, forming);
  if (!drawing.ok) throw new Error(drawing.issues.map((p) => p.message).join());
  return drawing.value;
}

/** Length along an SVG path of M, L and A (circular), computed from its numbers alone. */
function pathLength(path: string): number {
  let [x, y, length] = [0, 0, 0];
  for (const [, command, rest] of path.matchAll(/([MLA]) ([^MLA]*)/g)) {
    const numbers = (rest ?? '').trim().split(/\s+/).map(Number);
    const [toX = NaN, toY = NaN] = numbers.slice(-2);
    const chord = Math.hypot(toX - x, toY - y);
    const radius = numbers[0] ?? NaN;
    if (command === 'L') length += chord;
    if (command === 'A') length += arcLength(radius, chord, numbers[3] === 1);
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
          return sum + arcLength(s.radiusMm, chord, s.angle > 180);
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

  it('as an SVG path is as long as the girth round a teardrop too', () => {
    const drop = aProfile({ endHem: { kind: 'teardrop', lengthMm: 14, direction: 'down', gapMm: 4 } });
    const width = girth(drop, { ...light, rule: 'computed' });
    expect(pathLength(drawn(drop).path)).toBeCloseTo(width.ok ? width.value.girthMm : NaN, 2);
  });

  it('brings the edge of a teardrop to the inside of its flange, and leaves the gap of an open hem open', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<'startHem' | 'endHem'>('startHem', 'endHem'),
        fc.constantFrom<'open' | 'teardrop'>('open', 'teardrop'),
        fc.constantFrom<'up' | 'down'>('up', 'down'),
        fc.double({ min: 0.3, max: 6, noNaN: true }),
        anyForming,
        (edge, kind, direction, gapMm, forming) => {
          const profile = aProfile({
            flangesMm: [100],
            bends: [],
            [edge]: { kind, direction, lengthMm: 20, gapMm },
          });
          const { strokes } = drawn(profile, forming);
          const lip = edge === 'startHem' ? strokes[0] : strokes.at(-1);
          if (lip?.kind !== 'line') throw new Error('no lip');
          const free = edge === 'startHem' ? lip.from : lip.to;
          const root = edge === 'startHem' ? lip.to : lip.from;
          const flange = strokes.find((s) => s.of === 'flange')!;
          const long = Math.hypot(free.x - root.x, free.y - root.y);
          // From the neutral line to the face on the flange's side: across the lip, towards the flange.
          const towards = Math.sign(flange.from.y - root.y);
          const inner = (free.y - flange.from.y) * -towards;
          const across = forming.kFactor * forming.thicknessMm;
          const corner = inner - (across * Math.abs(free.x - root.x)) / long - across;
          expect(corner).toBeCloseTo(kind === 'teardrop' ? 0 : gapMm, 6);
        },
      ),
    );
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
