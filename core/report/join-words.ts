import type { Join } from '../planning/join-runs.ts';
import { formatMoney, type MoneyStyle } from '../units/money.ts';
import { gainWords } from './search-words.ts';

const NOTHING = { lateLines: 0, lateSeconds: 0, changeoverSeconds: 0 };

/** What joining two runs saves in stock and costs in time, in two sentences. */
export function joinSentence(
  { savedCents, lateLines, latenessSeconds, changeoverSeconds, gain }: Omit<Join, 'other' | 'queues'>,
  style: MoneyStyle,
): string {
  const stock =
    savedCents === 0
      ? 'stock costs the same'
      : `stock costs ${formatMoney(Math.abs(savedCents), style)} ${savedCents > 0 ? 'less' : 'more'}`;
  const time =
    gainWords(NOTHING, { lateLines, lateSeconds: latenessSeconds, changeoverSeconds }) ||
    'as late as before, with as much changeover';
  return `Joined to this run: ${stock}, ${time}. By the shop’s priorities that is ${gain > 0 ? 'worth it' : 'not worth it'}.`;
}
