import { describe, expect, it } from 'vitest';
import type { Answers } from '../../../core/import/answers.ts';
import { aShop, someSettings } from '../../support/builders.ts';
import { checkedOf, readOrders } from './order-table.ts';

const metric = aShop({ settings: someSettings({ units: 'mm' }) });
const file = (heading: string, ...lengths: string[]) => [
  ['order', 'customer', 'part', 'quantity', 'gauge', 'colour', heading, 'due'],
  ...lengths.map((length, k) => [`${3000 + k}`, 'Sheds', 'corner', '4', '24', 'moss', length, '2026-12-20']),
];
const lengthsOf = (rows: string[][], answers: Answers = {}) =>
  checkedOf(readOrders(rows, metric, answers)).lines.map(({ lengthMm }) => Math.round(lengthMm * 10) / 10);

describe('a column of lengths without a unit', () => {
  it('is read in the shop’s own, and that is said', () => {
    const { reading } = readOrders(file('length', '2440'), metric);
    expect(lengthsOf(file('length', '2440'))).toEqual([2440]);
    expect(reading.notes).toContain('“length” names no unit: bare figures are read in mm, the shop’s own.');
  });

  it('is asked about where fractions stand in it and the shop thinks in millimetres', () => {
    const rows = file('length', '120', '96 1/2', '10 ft', '2440 mm');
    expect(readOrders(rows, metric).reading.questions).toMatchObject([
      { is: 'units', field: 'length', row: 3, text: '96 1/2', meanings: [{ when: 'mm' }, { when: 'in' }] },
    ]);
    // What names its unit itself need not wait.
    expect(lengthsOf(rows)).toEqual([3048, 2440]);
    expect(lengthsOf(rows, { units: { length: 'in' } })).toEqual([3048, 2451.1, 3048, 2440]);
  });

  it('is not asked about where the heading names the unit', () => {
    expect(lengthsOf(file('length (in)', '96 1/2'))).toEqual([2451.1]);
  });
});
