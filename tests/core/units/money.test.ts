import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formatAmount, formatMoney, parseMoney } from '../../../core/units/money.ts';
import { money, plainMoney } from '../../support/writing.ts';

it('an amount is written with grouped thousands and two decimals', () => {
  expect([0, 5, 123_450, 100_000_000, -250].map((amount) => formatMoney(amount, plainMoney))).toEqual([
    '0.00',
    '0.05',
    '1,234.50',
    '1,000,000.00',
    '−2.50',
  ]);
});

it('an amount has the currency that the shop set, as it is written in English', () => {
  expect(formatMoney(123_450, money('USD'))).toBe('$1,234.50');
  expect(formatMoney(-250, money('EUR'))).toBe('−€2.50');
  expect(formatMoney(5, money('CAD'))).toBe('CA$0.05');
});

it('an amount that is not one is refused', () => {
  for (const text of ['', '1.2345', '-3', 'ten', '1e3', '1,234', '9'.repeat(30)])
    expect(parseMoney(text, { decimals: 'comma' })).toMatchObject({
      issues: [{ message: `“${text}” is not an amount.`, advice: 'Write it like 1.234,50.' }],
    });
});

const marks = fc.constantFrom('point' as const, 'comma' as const);

it('an amount reads back as itself, in both marks', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1_000_000_000 }), marks, (amount, decimals) => {
      expect(parseMoney(formatAmount(amount, decimals), { decimals })).toEqual({ ok: true, value: amount });
    }),
  );
});

it.each([
  ['80', 8000],
  ['12,34', 1234],
  ['12.3', 1230],
  ['1,234', 123_400],
  ['1.234,50', 123_450],
  ['1,234.50', 123_450],
  ["1'234.50", 123_450],
])('“%s” is read as an amount, whichever mark is used', (text, amount) => {
  expect(parseMoney(text, { decimals: 'point' })).toEqual({ ok: true, value: amount });
});
