import { expect, it } from 'vitest';
import { blankOf } from '../../../core/part/blank.ts';
import { defaultRadiusMm } from '../../../core/part/radius.ts';
import { aProfile, square } from './profiles.ts';
import { metric } from '../../support/writing.ts';

const gauge = { label: '24', thicknessMm: 0.7, kgPerM2: 5.6 };
const material = { metal: 'galvanized', tensileMpa: 414, kFactor: 0.446, deductions: [] } as const;
const line = { id: '1042/2', lengthMm: 3000 };

it('a blank is girth by length, with the weight of its own gauge record', () => {
  const part = { id: 'L1', profile: aProfile() };
  const sum = blankOf(line, part, material, gauge, {
    girthRule: 'outsideSum',
    dieOpeningMm: null,
    tools: [],
    units: metric,
  });
  expect(sum).toEqual({
    ok: true,
    value: { girthMm: 100, lengthMm: 3000, thicknessMm: 0.7, areaM2: 0.3, weightKg: 0.3 * 5.6 },
  });
});

it('a bend that names no radius takes one thickness', () => {
  expect(defaultRadiusMm(0.7)).toBe(0.7);
  const named = { ...square(), radiusMm: 0.7 };
  const settings = { girthRule: 'computed', dieOpeningMm: null, tools: [], units: metric } as const;
  expect(blankOf(line, { id: 'L1', profile: aProfile() }, material, gauge, settings)).toEqual(
    blankOf(line, { id: 'L1', profile: aProfile({ bends: [named] }) }, material, gauge, settings),
  );
});

it('trouble with a profile names the line and the part', () => {
  const part = { id: 'L1', profile: aProfile({ flangesMm: [1, 40] }) };
  expect(
    blankOf(line, part, material, gauge, {
      girthRule: 'computed',
      dieOpeningMm: null,
      tools: [],
      units: metric,
    }),
  ).toMatchObject({
    ok: false,
    issues: [{ subject: 'line 1042/2, part L1', field: 'flangesMm' }],
  });
});

it('a radius left to the die is what the V makes, where the shop works blanks out so: 24 ga on a V of 8 mm', () => {
  const basis = { dieOpeningMm: 8, tools: [], units: metric } as const;
  const widthBy = (girthRule: 'computed' | 'computedByV', radiusMm: number | null) => {
    const profile = aProfile({ bends: [{ ...square(), radiusMm }] });
    const blank = blankOf(line, { id: 'L1', profile }, material, gauge, { ...basis, girthRule });
    return blank.ok ? blank.value.girthMm : NaN;
  };
  // 16 % of 8 mm are 1.28 mm instead of one thickness, 0.70: a quarter of a millimetre for each square bend.
  expect(widthBy('computedByV', null)).toBeCloseTo(widthBy('computed', 1.281), 3);
  expect(widthBy('computed', null) - widthBy('computedByV', null)).toBeCloseTo(0.25, 2);
  // A radius that is typed stays as typed.
  expect(widthBy('computedByV', 2)).toBe(widthBy('computed', 2));
});
