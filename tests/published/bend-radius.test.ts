import { expect, it } from 'vitest';
import { leastRadiusMm } from '../../core/part/min-radius.ts';
import type { Temper } from '../../core/material/material.ts';
import { inchesToMm } from '../../core/units/length.ts';

/**
 * Least inside radius of a 90° cold bend as a multiple of thickness, at 1/64, 1/32, 1/16 and 1/8 in.
 * Source: Aluminum Design Manual, January 2005, table 3-1; the row of 6061-T6 from a designer's bend table.
 */
const TABLE: readonly (readonly [Temper, readonly (number | null)[]])[] = [
  ['3003-H14', [0, 0, 0, 1]],
  ['3003-H16', [1 / 2, 1, 1, 3 / 2]],
  ['3003-H18', [1, 3 / 2, 2, 5 / 2]],
  ['3105-H25', [1 / 2, 1 / 2, 1 / 2, null]],
  ['5052-H32', [0, 0, 1, 3 / 2]],
  ['5052-H34', [0, 1, 3 / 2, 2]],
  ['6061-T6', [1, 1, 3 / 2, 5 / 2]],
];
const THICKNESS = [1 / 64, 1 / 32, 1 / 16, 1 / 8].map(inchesToMm);

it.each(TABLE)('%s is bent no tighter than the printed multiples of its thickness', (temper, printed) => {
  printed.forEach((times, column) => {
    const thickness = THICKNESS[column] ?? NaN;
    if (times !== null)
      expect(leastRadiusMm({ metal: 'aluminium', temper }, thickness) / thickness).toBeCloseTo(times, 9);
  });
});

it('between two columns the thicker one counts, beyond the last the last', () => {
  const of = (thicknessMm: number) =>
    leastRadiusMm({ metal: 'aluminium', temper: '5052-H34' }, thicknessMm) / thicknessMm;
  expect(of(1.0)).toBeCloseTo(1.5, 9);
  expect(of(6)).toBeCloseTo(2, 9);
});

it('an air bend in steel turns sharp below 0.63 T (trade press, air-forming article)', () => {
  for (const metal of ['steel', 'galvanized', 'stainless'] as const)
    expect(leastRadiusMm({ metal, temper: null }, 2)).toBeCloseTo(1.26, 9);
});
