import { expect, it } from 'vitest';
import { leastRadiusMm } from '../../core/part/min-radius.ts';
import type { Temper } from '../../core/material/material.ts';
import { inchesToMm } from '../../core/units/length.ts';

/**
 * Least inside radius of a 90° cold bend as a multiple of thickness, at 1/64, 1/32, 1/16, 1/8 and 1/4 in; null where we
 * have no printed figure.
 * Published: Aluminum Design Manual, January 2005, table 3-1; the row of 6061-T6 from a designer's bend table.
 */
const TABLE: readonly (readonly [Temper, readonly (number | null)[]])[] = [
  ['3003-H14', [0, 0, 0, 1, null]],
  ['3003-H16', [1 / 2, 1, 1, 3 / 2, null]],
  ['3003-H18', [1, 3 / 2, 2, 5 / 2, null]],
  ['3105-H25', [1 / 2, 1 / 2, 1 / 2, null, null]],
  ['5052-H32', [0, 0, 1, 3 / 2, null]],
  ['5052-H34', [0, 1, 3 / 2, 2, 5 / 2]],
  ['6061-T6', [1, 1, 3 / 2, 5 / 2, 7 / 2]],
];
const THICKNESS = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4].map(inchesToMm);

it.each(TABLE)('%s is bent no tighter than the printed multiples of its thickness', (temper, printed) => {
  printed.forEach((times, column) => {
    const thickness = THICKNESS[column] ?? NaN;
    if (times !== null)
      expect(
        leastRadiusMm({ metal: 'aluminium', temper, tensileMpa: 200 }, thickness) / thickness,
      ).toBeCloseTo(times, 9);
  });
});

it('between two columns the thicker one counts; where none is printed, and beyond the last, the last', () => {
  const of = (temper: Temper, thicknessMm: number) =>
    leastRadiusMm({ metal: 'aluminium', temper, tensileMpa: 200 }, thicknessMm) / thicknessMm;
  expect(of('5052-H34', 1)).toBeCloseTo(1.5, 9);
  expect(of('5052-H34', 4)).toBeCloseTo(2.5, 9);
  expect(of('5052-H34', 8)).toBeCloseTo(2.5, 9);
  expect(of('3003-H14', 6)).toBeCloseTo(1, 9);
});

it('an air bend in steel turns sharp below 0.63 T (published: trade press, air-forming article)', () => {
  for (const metal of ['steel', 'galvanized', 'stainless'] as const)
    expect(leastRadiusMm({ metal, temper: null, tensileMpa: 500 }, 2)).toBeCloseTo(1.26, 9);
});

it('full-hard steel of 82 ksi takes 2 T (common practice, no source)', () => {
  expect(leastRadiusMm({ metal: 'galvanized', temper: null, tensileMpa: 565 }, 2)).toBe(4);
});
