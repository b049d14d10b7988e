import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formatAmount, formatMoney, parseMoney } from '../../../core/units/money.ts';

it('an amount is written with grouped thousands and two decimals', () => {
  expect([0, 5, 123_450, 100_000_000, -250].map((amount) => formatMoney(amount, null))).toEqual([
    '0.00',
    '0.05',
    '1,234.50',
    '1,000,000.00',
    '−2.50',
  ]);
});

it('an amount has the currency that the shop set, as it is written in English', () => {
  expect(formatMoney(123_450, 'USD')).toBe('$1,234.50');
  expect(formatMoney(-250, 'EUR')).toBe('−€2.50');
  expect(formatMoney(5, 'CAD')).toBe('CA$0.05');
});

it('an amount that is not one is refused', () => {
  expect(['', '12,34', '1.234', '-3', 'ten'].map((text) => parseMoney(text).ok)).toEqual([
    false,
    false,
    false,
    false,
    false,
  ]);
});

it('an amount reads back as itself', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1_000_000_000 }), (amount) => {
      expect(parseMoney(formatAmount(amount))).toEqual({ ok: true, value: amount });
    }),
  );
  expect(parseMoney('80')).toEqual({ ok: true, value: 8000 });
});
