import { err, ok, issue, type Result } from '../result.ts';
import { cents, type Cents } from './brand.ts';
import {
  ambiguous,
  meanings,
  readingsOf,
  settle,
  writeNumber,
  type DecimalMark,
  type Decimals,
  type NumberStyle,
} from './number.ts';

/** ISO 4217 code, "USD"; null: the shop has not said which, and amounts stand without one. */
export type Currency = string | null;

/** How amounts are written. A shop's settings are one. */
export interface MoneyStyle extends Decimals {
  readonly currency: Currency;
}

/**
 * Cents as an amount with grouped thousands and its currency: "$1,234.50", in a shop that writes commas "$1.234,50";
 * "1,234.50" where no currency is set.
 */
export function formatMoney(amount: number, { currency, decimals }: MoneyStyle): string {
  const digits = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
  const style = currency === null ? {} : ({ style: 'currency', currency } as const);
  const size = Math.abs(Math.round(amount)) / 100;
  const text = new Intl.NumberFormat('en-US', { ...digits, ...style }).format(size);
  const own = decimals === 'point' ? text : text.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.'));
  return `${amount < 0 ? '−' : ''}${own}`;
}

/** An amount as it is typed, "1,234.50"; its currency stands beside the field. */
export const formatAmount = (amount: number, decimals: DecimalMark): string =>
  formatMoney(amount, { currency: null, decimals });

/**
 * Reads "1,234.50", "1234.5" or "80" as an amount, 0 or more, at most two decimals: so “1,234” is 1234, but for a shop
 * that writes “1,234” with decimals. Numbers by the rule of number.ts.
 * @returns whole cents; or an issue that repeats the text, with its `meanings` where it can mean two
 */
export function parseMoney(text: string, style: NumberStyle): Result<Cents> {
  const readings = /^[-−+]/.test(text.trim()) ? [] : readingsOf(text);
  const own = settle(readings, style);
  const fit = (own.length === 1 ? own : readings).filter(({ places }) => places <= 2);
  const left = settle(fit, style);
  const write = (value: number): string => writeNumber(value, style.decimals ?? 'point');
  if (left.length > 1) return ambiguous(text, 'amount', meanings(left, write), style);
  const amount = left.length === 1 ? Math.round(left[0]!.value * 100) : NaN;
  if (Number.isSafeInteger(amount)) return ok(cents(amount));
  const example = formatAmount(123_450, style.decimals ?? 'point');
  return err(issue('amount', 'amount', `“${text.trim()}” is not an amount.`, `Write it like ${example}.`));
}
