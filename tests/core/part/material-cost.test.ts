import { expect, it } from 'vitest';
import { materialCost } from '../../../core/part/material-cost.ts';
import { aSheet } from '../../support/builders.ts';

// A sheet of 1 × 2 m for 80.00: 40.00 a square metre.
const sheet = aSheet({ widthMm: 1000, lengthMm: 2000, costCents: 8000 });

it('a piece’s metal costs its own area at the stock’s price, cheapest to dearest', () => {
  expect(materialCost({ areaM2: 0.3 }, [sheet], 'galv', '24')).toEqual({ lowCents: 1200, highCents: 1200 });
  const dearer = aSheet({ id: 'dearer', widthMm: 1000, lengthMm: 2000, costCents: 10_000 });
  expect(materialCost({ areaM2: 0.3 }, [sheet, dearer], 'galv', '24')).toEqual({
    lowCents: 1200,
    highCents: 1500,
  });
});

it('remnants, other gauges and other metals do not count; without stock there is no cost', () => {
  const others = [aSheet({ form: 'remnant' }), aSheet({ gauge: '26' }), aSheet({ materialId: 'alum' })];
  expect(materialCost({ areaM2: 0.3 }, others, 'galv', '24')).toBeNull();
});
