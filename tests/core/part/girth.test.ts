import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { girth, hits, type GirthOptions } from '../../../core/part/girth.ts';
import type { Profile } from '../../../core/part/profile.ts';
import {
  aProfile,
  anyProfile,
  anyForming,
  closedHem,
  light,
  mirrored,
  reversed,
  square,
} from './profiles.ts';

const computed: GirthOptions = { ...light, rule: 'computed' };
function widthOf(profile: Profile, options: GirthOptions = computed): number {
  const width = girth(profile, options);
  if (!width.ok) throw new Error(width.issues.map((p) => p.message).join());
  return width.value.girthMm;
}

describe('the girth', () => {
  it('of a flat piece is its one flange', () => {
    expect(widthOf(aProfile({ flangesMm: [250], bends: [] }))).toBe(250);
  });

  it('of a square angle is its flanges less one deduction', () => {
    // 2 × (1 + 0.701) − π/2 × (1 + 0.446 × 0.701) = 1.3401
    expect(widthOf(aProfile())).toBeCloseTo(100 - 1.3401, 3);
  });

  it('is the same whether the flanges are measured outside, inside or to the apex, up to a square bend', () => {
    // Inside lengths of a 60 × 40 angle are one thickness shorter each.
    const inside = aProfile({ measured: 'inside', flangesMm: [60 - 0.701, 40 - 0.701] });
    expect(widthOf(inside)).toBeCloseTo(widthOf(aProfile()), 9);
    expect(widthOf(aProfile({ measured: 'apex' }))).toBeCloseTo(widthOf(aProfile()), 9);
  });

  it('differs beyond a square bend, where the apex runs away from the metal', () => {
    const sharp = aProfile({ bends: [square('up', 135)] });
    // Outside: 2 × 1.701 − BA; apex: 2 × 1.701 × tan 67.5° − BA.
    expect(widthOf(sharp) - widthOf({ ...sharp, measured: 'apex' })).toBeCloseTo(
      2 * 1.701 * (Math.tan((67.5 * Math.PI) / 180) - 1),
      9,
    );
  });

  it('by the outside sum takes nothing off, whichever way the flanges were measured', () => {
    const sum: GirthOptions = { ...light, rule: 'outsideSum' };
    const hemmed = aProfile({ startHem: closedHem(12.7) });
    expect(widthOf(hemmed, sum)).toBeCloseTo(112.7, 9);
    const inside = { ...hemmed, measured: 'inside' as const, flangesMm: [60 - 0.701, 40 - 0.701] };
    expect(widthOf(inside, sum)).toBeCloseTo(112.7, 9);
  });

  it('is refused where the bends leave nothing of a flange, which is named', () => {
    const width = girth(aProfile({ flangesMm: [60, 3, 60], bends: [square(), square('down')] }), computed);
    expect(width).toMatchObject({ ok: false, issues: [{ subject: 'profile', field: 'flangesMm' }] });
    expect(!width.ok && width.issues[0]?.message).toBe(
      'Flange 2 is 3 mm long, but its bends alone take 3.4 mm of it.',
    );
    const lip = girth(aProfile({ endHem: closedHem(0.5) }), computed);
    expect(!lip.ok && lip.issues[0]?.field).toBe('hem');
  });

  it('is the same measured inside or outside when hems close the edges, which are measured over their fold', () => {
    for (const kind of ['closed', 'open', 'teardrop'] as const) {
      const hems = {
        startHem: { ...closedHem(12), kind },
        endHem: { ...closedHem(15), kind: 'closed' as const },
      };
      const cap = aProfile({ flangesMm: [60, 120, 40], bends: [square(), square()], ...hems });
      // Only where a flange meets a bend is its inside one thickness shorter.
      const t = light.thicknessMm;
      const inside = { ...cap, measured: 'inside' as const, flangesMm: [60 - t, 120 - 2 * t, 40 - t] };
      expect(widthOf(inside)).toBeCloseTo(widthOf(cap), 9);
      expect(widthOf({ ...cap, measured: 'apex' })).toBeCloseTo(widthOf(cap), 9);
    }
  });

  it('of an open hem without a gap of its own is that of a gap of one thickness, as it was before gaps were drawn', () => {
    const open = aProfile({ endHem: { ...closedHem(12), kind: 'open' } });
    const one = aProfile({ endHem: { ...closedHem(12), kind: 'open', gapMm: light.thicknessMm } });
    // 60 + 40 + 12, less the bend's 1.3401 and 2(T/2 + T) − π(T/2 + K·T).
    const fold = 3 * 0.701 - Math.PI * (0.701 / 2 + 0.446 * 0.701);
    expect(widthOf(open)).toBeCloseTo(112 - 1.3401 - fold, 3);
    expect(widthOf(one)).toBe(widthOf(open));
  });

  it('grows with the gap of an open hem by π/2 − 1 of what the gap grows', () => {
    const open = (gapMm: number) => widthOf(aProfile({ endHem: { ...closedHem(12), kind: 'open', gapMm } }));
    expect(open(5) - open(3)).toBeCloseTo(2 * (Math.PI / 2 - 1), 9);
  });

  it('of a teardrop is refused where its lip is too short to come back, or would miss its flange', () => {
    const drop = (lengthMm: number, flange: number) => {
      const endHem = { kind: 'teardrop', lengthMm, direction: 'up', gapMm: 4 } as const;
      const width = girth(aProfile({ flangesMm: [60, flange], endHem }), computed);
      return width.ok ? [] : width.issues.map(({ field, message }) => `${field}: ${message}`);
    };
    expect(drop(12, 40)).toEqual([]);
    expect(drop(4.6, 40)).toEqual([
      'hem: The hem on flange 2 is 4.6 mm long, but its bends alone take 4.7 mm of it.',
    ]);
    expect(drop(30, 30)).toEqual([
      'hem: The edge of the teardrop hem would miss flange 2: the lip is 27.3 mm long beyond its fold, the flange is straight for 25.6 mm.',
    ]);
  });

  it('is its steps added up', () => {
    fc.assert(
      fc.property(
        anyProfile,
        anyForming,
        fc.constantFrom('computed' as const, 'outsideSum' as const),
        (p, forming, rule) => {
          const width = girth(p, { ...forming, rule });
          if (!width.ok) return;
          const { girthMm, steps } = width.value;
          expect(steps.reduce((sum, s) => sum + s.addMm, 0)).toBeCloseTo(girthMm, 9);
        },
      ),
    );
  });

  it('and hits do not change when the piece is mirrored or read from its other edge', () => {
    fc.assert(
      fc.property(anyProfile, anyForming, (p, forming) => {
        const options: GirthOptions = { ...forming, rule: 'computed' };
        fc.pre(girth(p, options).ok);
        for (const same of [mirrored(p), reversed(p), reversed(mirrored(p))]) {
          expect(widthOf(same, options)).toBeCloseTo(widthOf(p, options), 9);
          expect(hits(same)).toBe(hits(p));
        }
      }),
    );
  });

  it('grows with every flange by just what the flange grows', () => {
    const grown = fc.tuple(anyProfile, fc.nat(), fc.double({ min: 0.1, max: 50, noNaN: true }));
    fc.assert(
      fc.property(grown, anyForming, ([p, pick, more], forming) => {
        const options: GirthOptions = { ...forming, rule: 'computed' };
        fc.pre(girth(p, options).ok);
        const at = pick % p.flangesMm.length;
        const longer = { ...p, flangesMm: p.flangesMm.map((f, i) => (i === at ? f + more : f)) };
        expect(widthOf(longer, options) - widthOf(p, options)).toBeCloseTo(more, 9);
      }),
    );
  });
});

describe('the brake strikes', () => {
  it('once a bend and twice a hem', () => {
    expect(hits(aProfile())).toBe(1);
    expect(hits(aProfile({ startHem: closedHem(12), endHem: closedHem(12) }))).toBe(5);
    expect(hits(aProfile({ flangesMm: [100], bends: [] }))).toBe(0);
  });
});
