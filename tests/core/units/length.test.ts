import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength, inchesToMm, mmToInches, parseLength } from '../../../core/units/length.ts';

const read = (text: string, units: 'in' | 'mm' = 'in'): number | string => {
  const length = parseLength(text, units);
  return length.ok ? length.value : (length.problems[0]?.message ?? '');
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
    ['0', 0],
  ])('%s', (text, millimetres) => {
    expect(read(text)).toBeCloseTo(millimetres, 9);
  });

  it('in the shop’s units when none is written', () => {
    expect(read('240', 'mm')).toBe(240);
    expect(read('10 in', 'mm')).toBe(254);
    expect(read('1,200', 'mm')).toBe(1200);
  });

  it.each(['', 'long', '-5', '9,5', '1/0', '10 ft 6 mm', '9 1/2 1/2', '1e5', '9 yd'])(
    'and refused: "%s"',
    (text) => {
      expect(read(text)).toBe(`"${text}" is not a length.`);
    },
  );
});

describe('a length is written', () => {
  it('as the simplest fraction where it is one', () => {
    expect(formatLength(inchesToMm(9.5), 'in')).toBe('9 1/2 in');
    expect(formatLength(inchesToMm(0.1875), 'in')).toBe('3/16 in');
    expect(formatLength(3048, 'in')).toBe('120 in');
    expect(formatLength(0, 'in')).toBe('0 in');
    expect(formatLength(inchesToMm(-0.5), 'in')).toBe('-1/2 in');
  });

  it('as a decimal where no sixteenth is near enough, finer where asked', () => {
    expect(formatLength(inchesToMm(6.927), 'in')).toBe('6.927 in');
    expect(formatLength(inchesToMm(2 + 3 / 32), 'in')).toBe('2.094 in');
    expect(formatLength(inchesToMm(2 + 3 / 32), 'in', { fraction: 32 })).toBe('2 3/32 in');
    expect(formatLength(inchesToMm(5 / 64), 'in', { fraction: 64 })).toBe('5/64 in');
  });

  it('in millimetres to a tenth', () => {
    expect(formatLength(240, 'mm')).toBe('240 mm');
    expect(formatLength(240.46, 'mm')).toBe('240.5 mm');
  });

  it('and reads back as itself, within the rounding it is written to', () => {
    const lengths = fc.double({ min: 0, max: 50_000, noNaN: true });
    fc.assert(
      fc.property(lengths, fc.constantFrom<16 | 32 | 64>(16, 32, 64), (length, fraction) => {
        expect(Math.abs(Number(read(formatLength(length, 'in', { fraction }))) - length)).toBeLessThanOrEqual(
          0.1271,
        );
        expect(Math.abs(Number(read(formatLength(length, 'mm'))) - length)).toBeLessThanOrEqual(0.0501);
      }),
    );
  });

  it('and a whole fraction reads back exactly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 30_000 }),
        fc.constantFrom<16 | 32 | 64>(16, 32, 64),
        (parts, fraction) => {
          const length = inchesToMm(parts / fraction);
          expect(Number(read(formatLength(length, 'in', { fraction })))).toBeCloseTo(length, 9);
        },
      ),
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
