import { describe, expect, it } from 'vitest';
import { METAL_DEFAULTS } from '../../../core/material/defaults.ts';
import { publishedGauges } from '../../../core/material/gauges.ts';
import { gauge, material, metal, type Metal } from '../../../core/material/material.ts';

describe('a published gauge table', () => {
  it.each(metal.options)(
    'of %s runs from 7 to 30, ever thinner and lighter, and each row is a valid gauge',
    (of) => {
      const rows = publishedGauges(of);
      expect(rows.map((row) => row.label)).toEqual(Array.from({ length: 24 }, (_, i) => String(i + 7)));
      rows.forEach((row) => expect(gauge.parse(row)).toEqual(row));
      rows.slice(1).forEach((row, i) => {
        expect(row.thicknessMm).toBeLessThan(rows[i]?.thicknessMm ?? NaN);
        expect(row.kgPerM2).toBeLessThan(rows[i]?.kgPerM2 ?? NaN);
      });
    },
  );

  it('gives another thickness for the same number in each metal', () => {
    const thickness24 = (of: Metal) => publishedGauges(of).find(({ label }) => label === '24')?.thicknessMm;
    expect(new Set(metal.options.map(thickness24)).size).toBe(4);
  });
});

it.each(metal.options)('the default strength and K-factor of %s make a valid material', (of) => {
  const { tensileMpa, kFactor } = METAL_DEFAULTS[of];
  const own = { temper: null, deductions: [], revision: 0 };
  const row = { id: of, name: of, metal: of, tensileMpa, kFactor, gauges: publishedGauges(of), ...own };
  expect(material.parse(row)).toEqual(row);
});
