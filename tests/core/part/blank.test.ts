import { expect, it } from 'vitest';
import { blankOf } from '../../../core/part/blank.ts';
import { defaultRadiusMm } from '../../../core/part/radius.ts';
import { aProfile, square } from './profiles.ts';

const gauge = { label: '24', thicknessMm: 0.7, kgPerM2: 5.6 };
const material = { kFactor: 0.446, deductions: [] };
const line = { id: '1042/2', lengthMm: 3000 };

it('a blank is girth by length, with the weight of its own gauge record', () => {
  const part = { id: 'L1', profile: aProfile() };
  const sum = blankOf(line, part, material, gauge, {
    girthRule: 'outsideSum',
    dieOpeningMm: null,
    tools: [],
    units: 'mm',
  });
  expect(sum).toEqual({
    ok: true,
    value: { girthMm: 100, lengthMm: 3000, areaM2: 0.3, weightKg: 0.3 * 5.6 },
  });
});

it('a bend that names no radius takes one thickness', () => {
  expect(defaultRadiusMm(0.7)).toBe(0.7);
  const named = { ...square(), radiusMm: 0.7 };
  const settings = { girthRule: 'computed', dieOpeningMm: null, tools: [], units: 'mm' } as const;
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
      units: 'mm',
    }),
  ).toMatchObject({
    ok: false,
    issues: [{ subject: 'line 1042/2, part L1', field: 'flangesMm' }],
  });
});
