import type { SearchContext } from './search-context.ts';

/** `count` operations from position `from` of machine m, to begin at `position` of machine n (counted without them). */
export interface Shift {
  readonly m: number;
  readonly from: number;
  readonly count: number;
  readonly n: number;
  readonly position: number;
}

/** May these operations leave their queue for machine n: none is fixed, and n can do them all? */
export function mayLeave(
  { problem, evaluator }: SearchContext,
  { m, from, count, n }: Omit<Shift, 'position'>,
): boolean {
  const queue = evaluator.live.queues[m]!;
  for (let k = from; k < from + count; k++)
    if (problem.fixed[queue[k]!] || problem.seconds[queue[k]! * problem.machines + n]! < 0) return false;
  return true;
}

/** Would the queues be others than they are? */
export const changesOrder = ({ m, from, n, position }: Shift): boolean => m !== n || position !== from;

export const applyShift = ({ evaluator }: SearchContext, { m, from, count, n, position }: Shift): void =>
  evaluator.live.shift(m, from, count, n, position);
