import type { RunCut } from '../../../core/planning/cut-run.ts';

/** How an order's blanks are drawn: a ground and a pattern of lines, so that colour is never alone. */
export interface OrderLook {
  readonly ground: number;
  readonly pattern: number;
}

const GROUNDS = 4;
export const PATTERNS = 4;

/** A look for each work order of a run, in the order of its lines; all differ up to sixteen. */
export function orderLooks({ run }: RunCut): Map<string, OrderLook> {
  const orders = [...new Set(run.operations.map((o) => o.order.id))];
  return new Map(
    orders.map((id, n) => [id, { ground: n % GROUNDS, pattern: (n + Math.floor(n / GROUNDS)) % PATTERNS }]),
  );
}

export const orderOfLine = (line: string): string => line.slice(0, line.lastIndexOf('/'));
