import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  readingsOf,
  readNumber,
  readWhole,
  writeNumber,
  type NumberStyle,
} from '../../../core/units/number.ts';
import { sentence, type Result } from '../../../core/result.ts';

const point: NumberStyle = { decimals: 'point' };
const comma: NumberStyle = { decimals: 'comma' };
const unknown: NumberStyle = { decimals: null };

const said = (read: Result<number>): number | string => (read.ok ? read.value : sentence(read.issues));
const values = (text: string): number[] => [...new Set(readingsOf(text).map(({ value }) => value))];

describe('a text has one reading', () => {
  it.each([
    ['0', 0],
    ['007', 7],
    ['0,6', 0.6],
    ['0.6', 0.6],
    ['0,75', 0.75],
    ['2,5', 2.5],
    ['12,34', 12.34],
    ['0,123', 0.123],
    ['1,2345', 1.2345],
    ['1234,567', 1234.567],
    ['1.234,5', 1234.5],
    ['1,234.5', 1234.5],
    ["1'234.5", 1234.5],
    ['1’234,5', 1234.5],
    ['1 234,5', 1234.5],
    ['1 234', 1234],
    ['1\u00a0234', 1234],
    ['1\u202f234,567', 1234.567],
    ['1,234,567', 1234567],
    ['1.234.567', 1234567],
    ['1.234.567,8', 1234567.8],
    ['-3.5', -3.5],
    ['−3,5', -3.5],
    ['+4', 4],
    ['.5', 0.5],
    ['5.', 5],
  ])('%s', (text, value) => expect(values(text)).toEqual([value]));
});

it('nothing is no number', () => {
  expect(said(readNumber(' ', comma))).toBe('A number is needed here. Write it like 2,5.');
});

it('a text of one to three digits, one mark and three digits has two', () => {
  expect(readingsOf('1,234')).toEqual([
    { value: 1234, mark: 'point', grouped: true, places: 0 },
    { value: 1.234, mark: 'comma', grouped: false, places: 3 },
  ]);
  expect(readingsOf('1.234')).toEqual([
    { value: 1234, mark: 'comma', grouped: true, places: 0 },
    { value: 1.234, mark: 'point', grouped: false, places: 3 },
  ]);
});

it.each([
  '-',
  '.',
  ',',
  '1e3',
  '1,2,3',
  '12,34,567',
  '0x10',
  '1..2',
  '1.234,567.8',
  '1,234 567',
  '1  234',
  '1234 567',
  '0,123,456',
  '１２',
  '٣',
  '1/2',
  '12 mm',
  'NaN',
  'Infinity',
  '1_000',
  '--1',
  '1-',
  '9'.repeat(400),
])('%s is no number', (text) => {
  expect(readingsOf(text)).toEqual([]);
  expect(said(readNumber(text, point, 'importance'))).toBe(
    `“${text.trim()}” is not a number. Write the importance like 2.5.`,
  );
});

describe('a number is read', () => {
  it('as the app writes it, in the shop’s own mark', () => {
    expect(said(readNumber('2.500', point))).toBe(2.5);
    expect(said(readNumber('2,500', comma))).toBe(2.5);
  });

  it('whichever mark is used, where it can be one number only', () => {
    expect(said(readNumber('0,6', point))).toBe(0.6);
    expect(said(readNumber('0.6', comma))).toBe(0.6);
    expect(said(readNumber('1.234,50', point))).toBe(1234.5);
  });

  it('and refused with both readings where it can be two', () => {
    expect(said(readNumber('1,234', point))).toBe('“1,234” can be 1234 or 1.234. Write 1234 or 1.234.');
    expect(said(readNumber('1.234', comma))).toBe('“1.234” can be 1234 or 1,234. Write 1234 or 1,234.');
    const asked = readNumber('1,234', unknown);
    expect(asked).toMatchObject({
      issues: [
        {
          meanings: [
            { when: 'point', means: '1234' },
            { when: 'comma', means: '1.234' },
          ],
        },
      ],
    });
    expect(readNumber('1.234', unknown).ok).toBe(false);
  });

  it('in a file’s column whose mark is settled, by that mark', () => {
    expect(said(readNumber('1,234', { decimals: 'point', settled: true }))).toBe(1234);
    expect(said(readNumber('1,234', { decimals: 'comma', settled: true }))).toBe(1.234);
    expect(said(readNumber('1.234', { decimals: 'comma', settled: true }))).toBe(1234);
  });

  it('within its limits, which are named in the shop’s own mark', () => {
    const limits = { min: 0.1, max: 10 };
    expect(said(readNumber('0,05', comma, 'importance', limits))).toBe(
      'The importance must be at least 0,1, not 0,05.',
    );
    expect(said(readNumber('11', point, 'importance', limits))).toBe(
      'The importance must be at most 10, not 11.',
    );
  });
});

describe('a whole number', () => {
  it('is the one reading that is whole', () => {
    expect(said(readWhole('2,500', point))).toBe(2500);
    expect(said(readWhole('2,500', unknown))).toBe(2500);
    expect(said(readWhole('2.500', unknown))).toBe(2500);
    expect(said(readWhole('40', point))).toBe(40);
    expect(said(readWhole('40,0', point))).toBe(40);
  });

  it('is refused where it is not whole, also in the mark that the shop writes', () => {
    expect(said(readWhole('2,5', point, 'quantity'))).toBe(
      'The quantity must be a whole number, not 2,5. Write the quantity like 40.',
    );
    expect(said(readWhole('2.500', point, 'quantity'))).toBe(
      'The quantity must be a whole number, not 2.500. Write the quantity like 40.',
    );
    expect(readWhole('2,500', { decimals: 'comma', settled: true }).ok).toBe(false);
  });

  it('is refused where two readings are whole', () => {
    expect(said(readWhole('2,000', point))).toBe('“2,000” can be 2000 or 2. Write 2000 or 2.');
    expect(readWhole('2.000', unknown).ok).toBe(false);
    expect(said(readWhole('2,000', { decimals: 'point', settled: true }))).toBe(2000);
  });
});

const decimals = fc.constantFrom('point' as const, 'comma' as const);

it('what the app writes it reads back, in both marks', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1e12, max: 1e12 }),
      fc.integer({ min: 0, max: 6 }),
      decimals,
      (n, places, mark) => {
        const value = n / 10 ** places;
        expect(readNumber(writeNumber(value, mark), { decimals: mark })).toEqual({
          ok: true,
          value: value + 0,
        });
      },
    ),
    { numRuns: 5000 },
  );
});

const locales = ['en-US', 'en-GB', 'de-DE', 'de-CH', 'fr-FR', 'fr-CA'];

it('what is written in any of six countries is read as meant there, or refused with both readings', () => {
  const number = fc.tuple(fc.integer({ min: 0, max: 50_000_000 }), fc.integer({ min: 0, max: 4 }));
  fc.assert(
    fc.property(number, fc.constantFrom(...locales), fc.boolean(), ([n, places], locale, useGrouping) => {
      const meant = n / 10 ** places;
      const text = new Intl.NumberFormat(locale, { useGrouping, maximumFractionDigits: places }).format(
        meant,
      );
      const mark = new Intl.NumberFormat(locale).format(0.5).includes(',') ? 'comma' : 'point';
      for (const read of [readNumber(text, { decimals: mark }), readNumber(text, unknown)])
        if (read.ok) expect(read.value).toBe(meant);
        else expect(read.issues[0]?.meanings?.length).toBe(2);
      expect(readNumber(text, { decimals: mark, settled: true })).toEqual({ ok: true, value: meant });
    }),
    { numRuns: 5000 },
  );
});

it('any text at all is read or refused in a sentence', () => {
  const texts = fc.oneof(fc.string(), fc.stringMatching(/^[-−+\d., '’]{0,12}$/));
  fc.assert(
    fc.property(texts, fc.constantFrom(point, comma, unknown), (text, style) => {
      for (const read of [readNumber(text, style), readWhole(text, style)])
        if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
        else expect(read.issues[0]?.message).toMatch(/\.$/);
    }),
    { numRuns: 5000 },
  );
});
