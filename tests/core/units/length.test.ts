import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sentence } from '../../../core/result.ts';
import { foreignTo } from '../../support/foreign-units.ts';
import type { DecimalMark } from '../../../core/units/number.ts';
import {
  formatCutLength,
  formatCutSize,
  formatLength,
  formatSum,
  inchesToMm,
  mmToInches,
  parseLength,
  unitNamed,
  type LengthUnit,
} from '../../../core/units/length.ts';
import { inches, metric } from '../../support/writing.ts';

const read = (text: string, units: LengthUnit = 'in', decimals: DecimalMark = 'point'): number | string => {
  const length = parseLength(text, { units, decimals });
  return length.ok ? length.value : (length.issues[0]?.message ?? '');
};

describe('a length is read', () => {
  it.each([
    ['9 1/2', 241.3],
    ['9-1/2"', 241.3],
    ['9½', 241.3],
    ['9.5 in', 241.3],
    ['.5', 12.7],
    ['1/2', 12.7],
    ['10 ft', 3048],
    ['10 1/2 ft', 3200.4],
    [`10'`, 3048],
    [`10' 6"`, 3200.4],
    [`10'-6 1/2"`, 3213.1],
    ['10 ft 6 in', 3200.4],
    [`10' 6`, 3200.4],
    ['10’ 6”', 3200.4],
    ['240 mm', 240],
    ['24 cm', 240],
    ['3 m', 3000],
    ['1,234.5 mm', 1234.5],
    ['1234,5 mm', 1234.5],
    ['1.234,5 mm', 1234.5],
    ['9,5', 241.3],
    ["1'234 mm", 1234],
    ["10'6", 3200.4],
    ['0,6 mm', 0.6],
    ['24 Zoll', 609.6],
    ['10 pi 6 po', 3200.4],
    ['⅔ in', 16.933333333],
    ['0', 0],
  ])('%s', (text, millimetres) => {
    expect(read(text)).toBeCloseTo(millimetres, 9);
  });

  it('in the shop’s units when none is written', () => {
    expect(read('240', 'mm')).toBe(240);
    expect(read('10 in', 'mm')).toBe(254);
    expect(read('3,5', 'm')).toBe(3500);
    expect(read('10', 'ft')).toBe(3048);
  });

  it('and refused with both readings where its number can be two', () => {
    expect(read('1,200', 'mm')).toBe('“1,200” can be 1200 mm or 1.2 mm.');
    expect(read('2.500', 'mm', 'comma')).toBe('“2.500” can be 2500 mm or 2,5 mm.');
    expect(read('2.500 m', 'mm', 'comma')).toBe('“2.500 m” can be 2500 m or 2,5 m.');
    // As the app writes it in a shop with that mark.
    expect(read('6.927')).toBeCloseTo(175.9458, 9);
    expect(read('6,927', 'in', 'comma')).toBeCloseTo(175.9458, 9);
  });

  it.each([
    '',
    'long',
    '-5',
    '1/0',
    '10 ft 6 mm',
    "10' 14",
    '9 1/2 1/2',
    '1e5',
    '9 yd',
    '1,2,3',
    `${'1'.repeat(61)}`,
  ])('and refused: "%s"', (text) => {
    expect(read(text)).toBe(`“${text}” is not a length.`);
  });
});

it('what to write instead is said in the shop’s own units', () => {
  for (const units of ['in', 'mm'] as const) {
    const refused = parseLength('long', { units, decimals: 'point' });
    expect(refused.ok ? '' : sentence(refused.issues)).not.toMatch(foreignTo[units]);
  }
});

it('a heading’s unit is known by its usual words', () => {
  expect(['mm', 'Zoll', 'ft.', 'M', '"', 'kg', ''].map(unitNamed)).toEqual([
    'mm',
    'in',
    'ft',
    'm',
    'in',
    null,
    null,
  ]);
});

describe('a length is written', () => {
  it('as the simplest fraction where it is one', () => {
    expect(formatLength(inchesToMm(9.5), inches)).toBe('9 1/2 in');
    expect(formatLength(inchesToMm(0.1875), inches)).toBe('3/16 in');
    expect(formatLength(3048, inches)).toBe('120 in');
    expect(formatLength(0, inches)).toBe('0 in');
    expect(formatLength(inchesToMm(-0.5), inches)).toBe('-1/2 in');
  });

  it('as a decimal where no sixteenth is near enough, finer where asked', () => {
    expect(formatLength(inchesToMm(6.927), inches)).toBe('6.927 in');
    // A deduction of 0.058 in is no sixteenth.
    expect(formatLength(inchesToMm(0.058), inches)).toBe('0.058 in');
    expect(formatLength(inchesToMm(2 + 3 / 32), inches)).toBe('2.094 in');
    expect(formatLength(inchesToMm(2 + 3 / 32), inches, { fraction: 32 })).toBe('2 3/32 in');
    expect(formatLength(inchesToMm(5 / 64), inches, { fraction: 64 })).toBe('5/64 in');
  });

  it('in millimetres to a tenth', () => {
    expect(formatLength(240, metric)).toBe('240 mm');
    expect(formatLength(240.46, metric)).toBe('240.5 mm');
  });

  it('and reads back as itself, within the rounding it is written to', () => {
    const lengths = fc.double({ min: 0, max: 50_000, noNaN: true });
    fc.assert(
      fc.property(lengths, fc.constantFrom<16 | 32 | 64>(16, 32, 64), (length, fraction) => {
        expect(
          Math.abs(Number(read(formatLength(length, inches, { fraction }))) - length),
        ).toBeLessThanOrEqual(0.0128);
        expect(Math.abs(Number(read(formatLength(length, metric))) - length)).toBeLessThanOrEqual(0.0501);
      }),
    );
  });

  it('as it is typed and reads back so, in both marks', () => {
    expect(formatLength(inchesToMm(6.927), { units: 'in', decimals: 'comma' })).toBe('6,927 in');
    const lengths = fc.double({ min: 0, max: 50_000, noNaN: true });
    const marks = fc.constantFrom('point' as const, 'comma' as const);
    fc.assert(
      fc.property(lengths, fc.constantFrom('in' as const, 'mm' as const), marks, (length, units, mark) => {
        const typed = Number(read(formatLength(length, { units, decimals: mark }), units, mark));
        expect(Math.abs(typed - length)).toBeLessThanOrEqual(units === 'in' ? 0.0128 : 0.0501);
        // Once typed it stands still. (A length just beside 9/16 is "0.562 in"; that typed is "9/16 in" from then on.)
        const shown = formatLength(typed, { units, decimals: mark });
        const again = Number(read(shown, units, mark));
        expect(formatLength(again, { units, decimals: mark })).toBe(shown);
      }),
      { numRuns: 3000 },
    );
  });

  it('and a whole fraction reads back exactly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 30_000 }),
        fc.constantFrom<16 | 32 | 64>(16, 32, 64),
        (parts, fraction) => {
          const length = inchesToMm(parts / fraction);
          expect(Number(read(formatLength(length, inches, { fraction })))).toBeCloseTo(length, 9);
        },
      ),
    );
  });
});

const cutSizes = fc.double({ min: 0, max: 50_000, noNaN: true });
const hundredth = (mm: number): number => Math.round(mm * 100) / 100;

describe('a length that is cut', () => {
  it('is a fraction of 1/16 in where that is the same to 0.001 in, else a decimal; to 0.1 mm', () => {
    expect(formatCutLength(inchesToMm(9.5009), inches)).toBe('9 1/2 in');
    expect(formatCutLength(inchesToMm(9.503), inches)).toBe('9.503 in');
    // 9 1/16 in is 230.1875 mm; the shear is set to the hundredth, 230.19 mm.
    expect(formatCutLength(230.19, inches)).toBe('9 1/16 in');
    expect(formatCutLength(220.28, metric)).toBe('220.3 mm');
    expect(formatCutSize(241.3, 3048, inches)).toBe('9 1/2 in × 120 in');
  });

  it('is never off by more than 0.0013 in, well within 1/128 in, or 0.055 mm', () => {
    fc.assert(
      fc.property(cutSizes, (length) => {
        const off = Math.abs(Number(read(formatCutLength(length, inches))) - length) / 25.4;
        expect(off).toBeLessThanOrEqual(0.0013);
        expect(Math.abs(Number(read(formatCutLength(length, metric))) - length)).toBeLessThanOrEqual(
          0.055 + 1e-6,
        );
      }),
      { numRuns: 2000 },
    );
  });

  it('is a decimal only where no fraction is that near', () => {
    fc.assert(
      fc.property(cutSizes, (length) => {
        if (!formatCutLength(length, inches).includes('.')) return;
        const sixteenths = (length / 25.4) * 16;
        expect(Math.abs(sixteenths - Math.round(sixteenths)) / 16).toBeGreaterThan(0.0007);
      }),
      { numRuns: 2000 },
    );
  });

  it('is shown so that the strips of a sheet and what is left of it add up to the sheet', () => {
    const strips = fc.record({
      girth: fc.integer({ min: 2000, max: 40_000 }).map((hundredths) => hundredths / 100),
      count: fc.integer({ min: 1, max: 12 }),
    });
    fc.assert(
      fc.property(strips, ({ girth, count }) => {
        const sheet = 1219.2;
        const left = sheet - count * girth;
        fc.pre(left > 2);
        const shown = (mm: number): number => Number(read(formatCutLength(mm, inches))) / 25.4;
        expect(Math.abs(count * shown(girth) + shown(left) - shown(sheet))).toBeLessThan(
          0.0013 * (count + 1),
        );
      }),
    );
  });

  it('has one figure before and after it is rounded to what the shear is set to', () => {
    fc.assert(
      fc.property(cutSizes, fc.constantFrom(inches, metric), (length, units) => {
        expect(formatCutLength(hundredth(length), units)).toBe(formatCutLength(length, units));
      }),
      { numRuns: 2000 },
    );
  });
});

describe('lengths added up', () => {
  it('are shown so that the figures add up', () => {
    expect(formatSum([4, 2 / 3, -0.05].map(inchesToMm), inches)).toEqual({
      parts: ['4.0000 in', '0.6667 in', '−0.0500 in'],
      sum: '4.6167 in',
    });
  });

  it('whatever they are, each within a last place of its own', () => {
    const parts = fc.array(fc.double({ min: -50, max: 5000, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(parts, fc.constantFrom(inches, metric), (lengths, units) => {
        const shown = formatSum(lengths, units);
        const figure = (text: string): number => Number(text.replace('−', '-').split(' ')[0]);
        const [places, per] = units === inches ? [4, 25.4] : [2, 1];
        const added = shown.parts.reduce((sum, text) => sum + figure(text), 0);
        expect(added.toFixed(places)).toBe(figure(shown.sum).toFixed(places));
        const sum = lengths.reduce((all, length) => all + length, 0) / per;
        expect(Math.abs(figure(shown.sum) - sum)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-9);
        shown.parts.forEach((text, i) =>
          expect(Math.abs(figure(text) - lengths[i]! / per)).toBeLessThanOrEqual(10 ** -places + 1e-9),
        );
      }),
    );
  });
});

it('inches to millimetres and back is the same length', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 2000, noNaN: true }), (inches) => {
      expect(mmToInches(inchesToMm(inches))).toBeCloseTo(inches, 9);
    }),
  );
});
