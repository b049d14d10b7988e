import { describe, expect, it } from 'vitest';
import { demoShop } from './demo-shop.ts';

const shop = demoShop();
const MM_PER_INCH = 25.4;
/** kg/m² of one lb/ft²: 0.45359237 / 0.09290304, both exact by definition. */
const KG_PER_M2 = 0.45359237 / 0.09290304;

/** Common practice, no source: girth over the outside in inches, bends, hems. */
const usual: Readonly<
  Record<string, readonly [girth: [number, number], bends: [number, number], hems: [number, number]]>
> = {
  'drip-edge': [
    [4, 8],
    [2, 3],
    [0, 1],
  ],
  'fascia-6': [
    [6, 14],
    [1, 3],
    [1, 1],
  ],
  'fascia-8': [
    [6, 14],
    [1, 3],
    [1, 1],
  ],
  'fascia-10': [
    [6, 14],
    [1, 3],
    [1, 1],
  ],
  'ridge-cap': [
    [10, 20],
    [1, 5],
    [2, 2],
  ],
  'ridge-cap-wide': [
    [10, 20],
    [1, 5],
    [2, 2],
  ],
  'hip-cap': [
    [10, 20],
    [1, 5],
    [2, 2],
  ],
  'gable-trim': [
    [7, 14],
    [2, 5],
    [1, 2],
  ],
  'gable-trim-stepped': [
    [7, 14],
    [2, 5],
    [1, 2],
  ],
  'valley-plain': [
    [16, 24],
    [1, 1],
    [2, 2],
  ],
  'valley-w': [
    [16, 24],
    [3, 5],
    [2, 2],
  ],
  'coping-8': [
    [12, 36],
    [2, 6],
    [2, 2],
  ],
  'coping-12': [
    [12, 36],
    [2, 6],
    [2, 2],
  ],
  sill: [
    [4, 12],
    [2, 4],
    [0, 1],
  ],
  head: [
    [4, 12],
    [2, 4],
    [0, 1],
  ],
  'inside-corner': [
    [4, 12],
    [1, 5],
    [0, 2],
  ],
  'outside-corner': [
    [4, 12],
    [1, 5],
    [0, 2],
  ],
  'j-channel': [
    [3, 8],
    [2, 4],
    [0, 1],
  ],
  'z-bar': [
    [3, 8],
    [2, 4],
    [0, 1],
  ],
  'base-trim': [
    [3, 8],
    [2, 4],
    [0, 1],
  ],
  counterflashing: [
    [4, 14],
    [1, 3],
    [1, 1],
  ],
  apron: [
    [4, 14],
    [1, 3],
    [1, 1],
  ],
};

describe('the demo shop against figures from outside', () => {
  it.each(Object.entries(usual))(
    'draws its %s within what is common for the piece',
    (id, [girth, bends, hems]) => {
      const { profile } = shop.part.find((p) => p.id === id)!;
      const ends = [profile.startHem, profile.endHem].filter((hem) => hem !== null);
      const lips = ends.reduce((sum, hem) => sum + hem.lengthMm, 0);
      const inches = (profile.flangesMm.reduce((sum, flange) => sum + flange, 0) + lips) / MM_PER_INCH;
      expect(inches).toBeGreaterThanOrEqual(girth[0] - 1e-9);
      expect(inches).toBeLessThanOrEqual(girth[1] + 1e-9);
      expect(profile.bends.length).toBeGreaterThanOrEqual(bends[0]);
      expect(profile.bends.length).toBeLessThanOrEqual(bends[1]);
      expect(ends.length).toBeGreaterThanOrEqual(hems[0]);
      expect(ends.length).toBeLessThanOrEqual(hems[1]);
    },
  );

  /** Published gauge table of galvanized sheet (Manufacturers' Standard weights plus 2.5 oz/ft² of zinc). */
  it.each([
    ['22', 0.0336, 1.406],
    ['24', 0.0276, 1.156],
    ['26', 0.0217, 0.906],
  ])('keeps %s ga galvanized at the published thickness and weight', (label, inches, poundsPerFt2) => {
    const gauge = shop.material.find((m) => m.id === 'galv')?.gauges.find((g) => g.label === label);
    expect(gauge?.thicknessMm).toBeCloseTo(inches * MM_PER_INCH, 2);
    expect(gauge?.kgPerM2).toBeCloseTo(poundsPerFt2 * KG_PER_M2, 2);
  });

  /** Density of alloy 3003, 2.73 g/cm³ (handbook value, from memory). */
  it('keeps .032 aluminium at its own decimal and the handbook density', () => {
    const gauge = shop.material.find((m) => m.id === 'alum')?.gauges[0];
    expect(gauge?.thicknessMm).toBeCloseTo(0.032 * MM_PER_INCH, 2);
    expect(gauge?.kgPerM2).toBeCloseTo(0.032 * MM_PER_INCH * 2.73, 2);
  });

  /** 4 × 8 ft and 4 × 10 ft are the usual sheets (common practice, no source). */
  it('stocks sheets of 48 × 96 and 48 × 120 in', () => {
    const sheets = shop.sheet.filter((s) => s.form === 'sheet');
    const sizes = sheets.map(
      (s) => `${(s.widthMm / MM_PER_INCH).toFixed(3)} × ${(s.lengthMm / MM_PER_INCH).toFixed(3)}`,
    );
    expect([...new Set(sizes)].sort()).toEqual(['48.000 × 120.000', '48.000 × 96.000']);
  });
});
