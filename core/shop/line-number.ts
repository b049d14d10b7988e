import { lineOfOperation } from './order.ts';
import type { Shop } from './state.ts';

/** The highest number that a line can bear. */
export const LAST_LINE_NUMBER = 9999;

/**
 * The line number after all that an order has used: those of its lines, and those of lines that are gone but whose work is
 * on record, so that new work never inherits old records. Above `LAST_LINE_NUMBER` none is left.
 * @param also numbers that are claimed besides
 */
export function nextLineNumber(
  shop: Pick<Shop, 'line' | 'record'>,
  orderId: string,
  also: Iterable<number> = [],
): number {
  const start = `${orderId}/`;
  const numberOf = (lineId: string): number =>
    lineId.startsWith(start) ? Number(lineId.slice(start.length)) : 0;
  let highest = 0;
  for (const number of also) highest = Math.max(highest, number);
  for (const { id } of shop.line) highest = Math.max(highest, numberOf(id));
  for (const { id } of shop.record) highest = Math.max(highest, numberOf(lineOfOperation(id)));
  return highest + 1;
}
