import { err, ok, issue, type Result } from '../result.ts';
import { cents, type Cents } from './brand.ts';

/** ISO 4217 code, "USD"; null: the shop has not said which, and amounts stand without one. */
export type Currency = string | null;

/** Cents as an amount with grouped thousands and its currency: "$1,234.50"; "1,234.50" where none is set. */
export function formatMoney(amount: number, currency: Currency): string {
  const digits = { minimumFractionDigits: 2, maximumFractionDigits: 2 };
  const style = currency === null ? {} : ({ style: 'currency', currency } as const);
  const size = Math.abs(Math.round(amount)) / 100;
  return `${amount < 0 ? '−' : ''}${new Intl.NumberFormat('en-US', { ...digits, ...style }).format(size)}`;
}

/** An amount as it is typed; its currency stands beside the field. */
export const formatAmount = (amount: number): string => formatMoney(amount, null);

/** Reads "1,234.50", "1234.5" or "80" as an amount, at most two decimals; or a problem that repeats the text. */
export function parseMoney(text: string): Result<Cents> {
  const [, whole, part = ''] = /^(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d{1,2}))?$/.exec(text.trim()) ?? [];
  const amount = Number(whole?.replaceAll(',', '')) * 100 + Number(part.padEnd(2, '0'));
  if (Number.isSafeInteger(amount)) return ok(cents(amount));
  return err(issue('amount', 'amount', `"${text}" is not an amount.`, 'Write it like 1,234.50.'));
}
