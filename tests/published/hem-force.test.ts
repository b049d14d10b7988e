import { describe, expect, it } from 'vitest';
import { hemForce } from '../../core/part/hem-force.ts';
import { KN_PER_TONNE, KN_PER_US_TON } from '../../core/part/tonnage.ts';
import { MILD_STEEL_MPA } from '../../core/part/radius.ts';
import { inchesToMm } from '../../core/units/length.ts';

const inMildSteel = { lengthMm: 1000, tensileMpa: MILD_STEEL_MPA };
/** Metric tonnes to make a hem a metre long in mild steel. */
const tonnesPerM = (kind: 'open' | 'closed', thicknessMm: number): number =>
  hemForce(kind, { ...inMildSteel, thicknessMm }).kn / KN_PER_TONNE;

/**
 * Tonnes a metre, cold-rolled and stainless steel.
 * Published: Steve D. Benson, Press Brake Technology, SME 1997, p. 138, as quoted by encyclopedia pages on hemming.
 */
const PRINTED: readonly (readonly [thicknessMm: number, open: number, closed: number])[] = [
  [0.6, 9, 23],
  [0.8, 12, 32],
  [1.0, 15, 40],
  [1.2, 17, 50],
  [1.6, 24, 63],
  [2.0, 30, 80],
  [2.6, 55, 90],
  [3.2, 70, 100],
  [4.5, 105, 200],
];

it.each(PRINTED)(
  'a hem in %d mm takes %d tonnes a metre open and %d closed, as printed',
  (t, open, closed) => {
    expect(tonnesPerM('open', t)).toBeCloseTo(open, 9);
    expect(tonnesPerM('closed', t)).toBeCloseTo(closed, 9);
  },
);

it('closing a hem in trim gauges takes 2.5 to 2.9 of an open one (a published note on hems: 2.5 times)', () => {
  for (const t of [0.6, 0.8, 1, 1.2, 1.6, 2]) {
    const times = tonnesPerM('closed', t) / tonnesPerM('open', t);
    expect(times).toBeGreaterThan(2.5);
    expect(times).toBeLessThan(2.95);
  }
});

it('T10: a 10 ft hem in 24 ga galvanized takes about 91 US tons closed and 35 open', () => {
  // Worked by hand: 330 T and 128 T tons a foot are what the table comes to at T .0276 in; 9.1 and 3.5 a foot.
  const tons = (kind: 'open' | 'closed'): number =>
    hemForce(kind, { ...inMildSteel, thicknessMm: inchesToMm(0.0276), lengthMm: inchesToMm(120) }).kn /
    KN_PER_US_TON;
  expect(Math.abs(tons('closed') - 91)).toBeLessThan(2);
  expect(Math.abs(tons('open') - 35)).toBeLessThan(1);
});

it('a curl is closed with 300 T tons a foot by a die maker’s rule of thumb: up to 2 mm the table asks a little more', () => {
  for (const inches of [0.0276, 0.0336, 0.0516, 0.0785]) {
    const foot = { ...inMildSteel, thicknessMm: inchesToMm(inches), lengthMm: inchesToMm(12) };
    const tonsPerFoot = hemForce('closed', foot).kn / KN_PER_US_TON;
    expect(tonsPerFoot / (300 * inches)).toBeGreaterThan(1);
    expect(tonsPerFoot / (300 * inches)).toBeLessThan(1.2);
  }
});

it('a teardrop, which is not pressed flat, takes what an open hem takes (common practice, no source)', () => {
  const inMillimetre = { ...inMildSteel, thicknessMm: 1 };
  expect(hemForce('teardrop', inMillimetre)).toEqual(hemForce('open', inMillimetre));
});

describe('between and beyond the printed rows', () => {
  it('lies on the straight line between two', () => {
    expect(tonnesPerM('closed', 0.7)).toBeCloseTo((23 + 32) / 2, 9);
    expect(tonnesPerM('open', 3.85)).toBeCloseTo((70 + 105) / 2, 9);
  });

  it('grows with the thickness from the nearest row, and says that it is not printed', () => {
    expect(tonnesPerM('closed', 0.3)).toBeCloseTo(11.5, 9);
    expect(tonnesPerM('open', 6)).toBeCloseTo(140, 9);
    const beyond = (thicknessMm: number) => hemForce('open', { ...inMildSteel, thicknessMm }).beyondTable;
    expect([0.59, 0.6, 4.5, 4.51].map(beyond)).toEqual([true, false, false, true]);
  });

  it('grows with tensile strength and length (common practice, no source)', () => {
    const kn = (changes: object) => hemForce('closed', { ...inMildSteel, thicknessMm: 1, ...changes }).kn;
    expect(kn({ tensileMpa: 1.5 * MILD_STEEL_MPA }) / kn({})).toBeCloseTo(1.5, 9);
    expect(kn({ lengthMm: 3000 }) / kn({})).toBeCloseTo(3, 9);
  });
});
