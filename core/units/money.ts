import { err, ok, issue, type Result } from '../result.ts';
import { cents, type Cents } from './brand.ts';

/** Cents as an amount with grouped thousands, "1,234.50"; the shop knows its own currency. */
export function formatMoney(amount: number): string {
  const size = Math.abs(Math.round(amount));
  const whole = String(Math.floor(size / 100)).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${amount < 0 ? '−' : ''}${whole}.${String(size % 100).padStart(2, '0')}`;
}

/** Reads "1,234.50", "1234.5" or "80" as an amount, at most two decimals; or a problem that repeats the text. */
export function parseMoney(text: string): Result<Cents> {
  const [, whole, part = ''] = /^(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d{1,2}))?$/.exec(text.trim()) ?? [];
  const amount = Number(whole?.replaceAll(',', '')) * 100 + Number(part.padEnd(2, '0'));
  if (Number.isSafeInteger(amount)) return ok(cents(amount));
  return err(issue('amount', 'amount', `"${text}" is not an amount.`, 'Write it like 1,234.50.'));
}
