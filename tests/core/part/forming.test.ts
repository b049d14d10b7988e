import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProfile } from '../../../core/part/drawing.ts';
import { formingOf, blankBasisOf } from '../../../core/part/forming.ts';
import { girth } from '../../../core/part/girth.ts';
import type { MeasuredDeduction } from '../../../core/material/material.ts';
import { aBrake, aMaterial, aShear, someSettings } from '../../support/builders.ts';
import { aProfile, anyProfile, arcLength, closedHem, square } from './profiles.ts';
import { inches, metric } from '../../support/writing.ts';

const gauge = { label: '24', thicknessMm: 0.7 };
const measured = (own: Partial<MeasuredDeduction> = {}): MeasuredDeduction => ({
  gauge: '24',
  angle: 90,
  dieOpeningMm: null,
  deductionMm: 1.5,
  ...own,
});
const widthOf = (
  profile = aProfile(),
  deductions: MeasuredDeduction[] = [measured()],
  v: number | null = 8,
) => {
  const width = girth(profile, {
    ...formingOf(aMaterial({ deductions }), gauge, {
      girthRule: 'computed',
      dieOpeningMm: v,
      tools: [],
      units: metric,
    }),
    rule: 'computed',
  });
  if (!width.ok) throw new Error(width.issues.map((p) => p.message).join());
  return width.value;
};

describe('a deduction that the shop measured', () => {
  it('is taken off the outside lengths just as it was measured, and says so', () => {
    const { girthMm, steps } = widthOf();
    expect(girthMm).toBeCloseTo(100 - 1.5, 9);
    expect(steps.find(({ label }) => label.startsWith('bend 1'))?.reason).toMatch(/^measured in your shop/);
  });

  it('leaves other angles, other gauges and drawn radii to the formula', () => {
    const formula = widthOf(aProfile(), []).girthMm;
    expect(widthOf(aProfile(), [measured({ angle: 45 })]).girthMm).toBe(formula);
    expect(widthOf(aProfile(), [measured({ gauge: '26' })]).girthMm).toBe(formula);
    const drawn = aProfile({ bends: [{ ...square(), radiusMm: 0.7 }] });
    expect(widthOf(drawn).girthMm).toBe(formula);
    expect(widthOf(drawn).steps.find(({ label }) => label.startsWith('bend 1'))?.reason).toMatch(
      /^formula, K/,
    );
  });

  it('of the V at hand stands before one of any V; one of another V does not count', () => {
    const rows = [measured({ deductionMm: 1 }), measured({ dieOpeningMm: 12, deductionMm: 2 })];
    expect(widthOf(aProfile(), rows, 12).girthMm).toBeCloseTo(98, 9);
    expect(widthOf(aProfile(), rows, 8).girthMm).toBeCloseTo(99, 9);
    expect(widthOf(aProfile(), rows, null).girthMm).toBeCloseTo(99, 9);
  });

  it('of 180° is that of a closed hem, not of an open one', () => {
    const hemmed = (kind: 'closed' | 'open') => aProfile({ startHem: { ...closedHem(12), kind } });
    const rows = [measured({ angle: 180, deductionMm: 0.5 })];
    const flat = widthOf(hemmed('closed'), rows).girthMm - widthOf(aProfile(), rows).girthMm;
    expect(flat).toBeCloseTo(12 - 0.5, 9);
    expect(widthOf(hemmed('open'), rows).girthMm).toBe(widthOf(hemmed('open'), []).girthMm);
  });

  it('moves the drawing’s neutral line with it: its length stays the girth', () => {
    const rows = [measured({ angle: 90, deductionMm: 1.1 }), measured({ angle: 180, deductionMm: 0.2 })];
    const forming = formingOf(aMaterial({ deductions: rows }), gauge, {
      girthRule: 'computed',
      dieOpeningMm: 8,
      tools: [],
      units: metric,
    });
    fc.assert(
      fc.property(anyProfile, (any) => {
        const profile = { ...any, bends: any.bends.map((b) => ({ ...b, angle: 90, radiusMm: null })) };
        const width = girth(profile, { ...forming, rule: 'computed' });
        const drawing = drawProfile(profile, forming);
        if (!width.ok || !drawing.ok) throw new Error('refused');
        const length = drawing.value.strokes.reduce((sum, s) => {
          const chord = Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y);
          return sum + (s.kind === 'line' ? chord : arcLength(s.radiusMm, chord, s.angle > 180));
        }, 0);
        expect(Math.abs(length - width.value.girthMm)).toBeLessThan(0.01);
      }),
    );
  });

  it('that leaves a bend no metal is refused with both figures', () => {
    const wild = girth(aProfile(), {
      ...formingOf(aMaterial({ deductions: [measured({ deductionMm: 40 })] }), gauge, {
        girthRule: 'computed',
        dieOpeningMm: 8,
        tools: [],
        units: metric,
      }),
      rule: 'computed',
    });
    expect(wild).toMatchObject({ ok: false, issues: [{ field: 'deduction' }] });
    expect(!wild.ok && wild.issues[0]?.message).toMatch(
      /^Bend 1 would take no metal: your measured deduction of 40 mm/,
    );
  });
});

it('blanks are cut for the V of the shop’s first brake; without a brake for none', () => {
  const settings = someSettings();
  expect(
    blankBasisOf({ settings, tool: [], machine: [aShear(), aBrake({ dieOpeningMm: 10 }), aBrake()] }),
  ).toEqual({
    girthRule: 'computed',
    dieOpeningMm: 10,
    tools: [],
    units: inches,
  });
  expect(blankBasisOf({ settings, tool: [], machine: [aShear()] }).dieOpeningMm).toBeNull();
});
