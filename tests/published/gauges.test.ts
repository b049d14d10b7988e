import { describe, expect, it } from 'vitest';
import { publishedGauges } from '../../core/material/gauges.ts';
import { metal, type Gauge, type Metal } from '../../core/material/material.ts';
import { mmToInches } from '../../core/units/length.ts';

/**
 * Thickness in inches and weight in lb/ft², gauges 7 to 30.
 * Steel: Manufacturers' Standard Gauge as printed in a roofing trade site's steel weight table (2024).
 * Galvanized: the same table plus 2.5 oz/ft²; a service-centre chart prints 1.156 lb/ft² for 24. Row 7 is the rule
 * carried on, since published tables begin at 8 or 9.
 * Stainless: US Standard Gauge decimals, weights at 42.0 lb/ft² an inch as weight charts print them (from memory).
 * Aluminium: Brown & Sharpe decimals as printed in an online sheet-metal gauge chart; weights at 14.2 (from memory).
 */
const TABLE: readonly (readonly [gauge: number, ...pairs: number[]])[] = [
  [7, 0.1793, 7.5, 0.1831, 7.656, 0.1875, 7.875, 0.1443, 2.049],
  [8, 0.1644, 6.875, 0.1681, 7.031, 0.1719, 7.22, 0.1285, 1.825],
  [9, 0.1495, 6.25, 0.1532, 6.406, 0.1563, 6.56, 0.1144, 1.625],
  [10, 0.1345, 5.625, 0.1382, 5.781, 0.1406, 5.905, 0.1019, 1.447],
  [11, 0.1196, 5.0, 0.1233, 5.156, 0.125, 5.25, 0.0907, 1.289],
  [12, 0.1046, 4.375, 0.1084, 4.531, 0.1094, 4.595, 0.0808, 1.147],
  [13, 0.0897, 3.75, 0.0934, 3.906, 0.0938, 3.94, 0.072, 1.022],
  [14, 0.0747, 3.125, 0.0785, 3.281, 0.0781, 3.28, 0.0641, 0.91],
  [15, 0.0673, 2.8125, 0.071, 2.969, 0.0703, 2.953, 0.0571, 0.81],
  [16, 0.0598, 2.5, 0.0635, 2.656, 0.0625, 2.625, 0.0508, 0.722],
  [17, 0.0538, 2.25, 0.0575, 2.406, 0.0563, 2.365, 0.0453, 0.643],
  [18, 0.0478, 2.0, 0.0516, 2.156, 0.05, 2.1, 0.0403, 0.572],
  [19, 0.0418, 1.75, 0.0456, 1.906, 0.0438, 1.835, 0.0359, 0.51],
  [20, 0.0359, 1.5, 0.0396, 1.656, 0.0375, 1.575, 0.032, 0.454],
  [21, 0.0329, 1.375, 0.0366, 1.531, 0.0344, 1.445, 0.0285, 0.404],
  [22, 0.0299, 1.25, 0.0336, 1.406, 0.0313, 1.31, 0.0253, 0.36],
  [23, 0.0269, 1.125, 0.0306, 1.281, 0.0281, 1.18, 0.0226, 0.321],
  [24, 0.0239, 1.0, 0.0276, 1.156, 0.025, 1.05, 0.0201, 0.285],
  [25, 0.0209, 0.875, 0.0247, 1.031, 0.0219, 0.92, 0.0179, 0.254],
  [26, 0.0179, 0.75, 0.0217, 0.906, 0.0188, 0.785, 0.0159, 0.226],
  [27, 0.0164, 0.6875, 0.0202, 0.844, 0.0172, 0.722, 0.0142, 0.202],
  [28, 0.0149, 0.625, 0.0187, 0.781, 0.0156, 0.655, 0.0126, 0.18],
  [29, 0.0135, 0.5625, 0.0172, 0.719, 0.0141, 0.592, 0.0113, 0.16],
  [30, 0.012, 0.5, 0.0157, 0.656, 0.0125, 0.525, 0.01, 0.142],
];
const METALS: readonly Metal[] = metal.options;

const KG_M2_PER_LB_FT2 = 0.45359237 / 0.3048 ** 2;
/** Weights of stainless and aluminium were printed from a thickness rounded to 0.0001 in: half of that times 42. */
const WEIGHT_ROUNDING = {
  steel: 0.0005,
  galvanized: 0.0005,
  stainless: 0.0005 + 0.0021,
  aluminium: 0.0005 + 0.0007,
};

const rowOf = (of: Metal, gauge: number): Gauge => {
  const row = publishedGauges(of).find((g) => g.label === String(gauge));
  if (!row) throw new Error(`no gauge ${gauge} of ${of}`);
  return row;
};

describe.each(METALS.map((of, column) => ({ of, column })))('published gauges of $of', ({ of, column }) => {
  it.each(TABLE)('gauge %d has the printed thickness and weight', (gauge, ...pairs) => {
    const [inches = NaN, pounds = NaN] = pairs.slice(column * 2);
    // Thickness is printed to 0.0001 in and so is ours: equal but for floating point.
    expect(mmToInches(rowOf(of, gauge).thicknessMm)).toBeCloseTo(inches, 9);
    const weight = rowOf(of, gauge).kgPerM2 / KG_M2_PER_LB_FT2;
    expect(Math.abs(weight - pounds)).toBeLessThanOrEqual(WEIGHT_ROUNDING[of] + 1e-9);
  });
});

describe('15 U.S.C. 206, standard gauge for sheet and plate', () => {
  // Columns "ounces avoirdupois a square foot" and "kilograms a square metre" of the statute, some rows.
  it.each([
    [7, 36.62],
    [10, 27.46],
    [14, 15.26],
    [16, 12.21],
    [18, 9.765],
    [20, 7.324],
    [22, 6.103],
    [23, 5.493],
  ])('gauge %d of steel weighs %d kg a square metre', (gauge, kgPerM2) => {
    expect(Math.abs(rowOf('steel', gauge).kgPerM2 - kgPerM2)).toBeLessThanOrEqual(0.005);
  });

  // Column "approximate thickness in decimal parts of an inch", which stainless still follows, rounded to 0.0001.
  it.each([
    [7, 0.1875],
    [9, 0.15625],
    [11, 0.125],
    [15, 0.0703125],
    [17, 0.05625],
    [21, 0.034375],
    [23, 0.028125],
    [26, 0.01875],
  ])('gauge %d of stainless is %d in thick', (gauge, inches) => {
    expect(Math.abs(mmToInches(rowOf('stainless', gauge).thicknessMm) - inches)).toBeLessThanOrEqual(
      0.00005 + 1e-9,
    );
  });
});

it('24 gauge lies inside a service-centre chart’s limits: 0.021–0.027 in cold rolled, 0.024–0.032 in coated', () => {
  const at = (of: Metal) => mmToInches(rowOf(of, 24).thicknessMm);
  expect(at('steel')).toBeGreaterThan(0.021);
  expect(at('steel')).toBeLessThan(0.027);
  expect(at('galvanized')).toBeGreaterThan(0.024);
  expect(at('galvanized')).toBeLessThan(0.032);
});
