import { describe, expect, it } from 'vitest';
import { METAL_DEFAULTS, weightFromThickness } from '../../../core/material/defaults.ts';
import { publishedGauges, thicknessOf, weightPerArea } from '../../../core/material/gauges.ts';
import { gauge, material, metal } from '../../../core/material/material.ts';

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
    expect(new Set(metal.options.map((of) => JSON.stringify(thicknessOf(of, '24')))).size).toBe(4);
  });

  it.each(['6', '31', '.040', '', '24.0', '2e1'])('has no gauge "%s" and says what it has', (label) => {
    const found = thicknessOf('steel', label);
    expect(found).toMatchObject({ ok: false, issues: [{ field: 'gauge' }] });
    expect(!found.ok && found.issues[0]?.message).toContain('it runs from 7 to 30');
    expect(weightPerArea('steel', label).ok).toBe(false);
  });
});

it.each(metal.options)('the default strength and K-factor of %s make a valid material', (of) => {
  const { tensileMpa, kFactor } = METAL_DEFAULTS[of];
  const own = { temper: null, deductions: [], revision: 0 };
  const row = { id: of, name: of, metal: of, tensileMpa, kFactor, gauges: publishedGauges(of), ...own };
  expect(material.parse(row)).toEqual(row);
});

it('a millimetre of steel weighs 7.85 kg a square metre', () => {
  expect(weightFromThickness('steel', 1)).toBe(7.85);
  expect(weightFromThickness('aluminium', 2)).toBe(5.46);
});
