import { describe, expect, it } from 'vitest';
import { houseVMm, usualVMm } from '../../../core/part/house-v.ts';
import { aTool } from '../../support/tool-builders.ts';

const gauge = { thicknessMm: 0.7 };
const dies = (...openings: number[]) =>
  openings.map((openingMm) => aTool({ id: `V${openingMm}`, openingMm }));

describe('the V for a thickness', () => {
  // A metric selection guide for V openings: 6 T (0.5–2.6 mm), 8 T (3–8), 10 T (9–10), 12 T (above 12).
  it.each([
    [0.5, 3],
    [2.6, 15.6],
    [3, 24],
    [8, 64],
    [10, 100],
    [13, 156],
  ])('%s mm: about %s mm', (thicknessMm, v) => {
    expect(usualVMm(thicknessMm)).toBeCloseTo(v, 9);
  });
});

describe('the house V', () => {
  it('is what the shop says of the gauge, whatever dies there are', () => {
    expect(houseVMm({ ...gauge, vMm: 10 }, { tools: dies(4), dieOpeningMm: 12 })).toBe(10);
  });
  it('else is that of the die nearest to six thicknesses, the wider of two as near', () => {
    expect(houseVMm(gauge, { tools: dies(16, 6, 8), dieOpeningMm: 12 })).toBe(6);
    expect(houseVMm({ thicknessMm: 1 }, { tools: dies(5, 7), dieOpeningMm: 12 })).toBe(7);
  });
  it('without dies on record is the V of the first brake; without a brake none', () => {
    const punch = aTool({ id: 'P', kind: 'punch', openingMm: null });
    expect(houseVMm(gauge, { tools: [punch], dieOpeningMm: 12 })).toBe(12);
    expect(houseVMm(gauge, { tools: [], dieOpeningMm: null })).toBeNull();
  });
});
