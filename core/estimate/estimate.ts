import type { Machine } from '../shop/machine.ts';
import type { Blank } from '../part/blank.ts';
import { standard } from './standards.ts';

/** One element of an estimate: how often it happens, what each takes, and the product in whole seconds. */
export interface Reason {
  readonly label: string;
  readonly count: number;
  readonly each: number;
  readonly seconds: number;
}

/** Machine time of one operation, changeover left out, and how it came about. Labour is `seconds` × `people`. */
export interface Estimate {
  /** Whole seconds; the sum of the reasons' seconds. */
  readonly seconds: number;
  readonly people: number;
  readonly reasons: readonly Reason[];
}

/** An element of work; `count` may be a share or a weight where `each` is per share or per kilogram. */
export const reason = (label: string, count: number, each: number): Reason => ({
  label,
  count,
  each,
  seconds: Math.round(count * each),
});

/**
 * Adds the allowance and sums up. The allowance is a share of the work, work × (1 + a), not of the day, work / (1 − a).
 * @param work elements in the order in which they happen; those that never happen or take no time are left out
 */
export function estimateOf(
  machine: Pick<Machine, 'stage' | 'standards'>,
  people: number,
  work: readonly Reason[],
): Estimate {
  const done = work.filter((r) => r.count > 0 && r.each > 0);
  const sum = done.reduce((all, r) => all + r.seconds, 0);
  const share = standard(machine, 'allowance');
  const reasons = share > 0 && sum > 0 ? [...done, reason('allowance, share of the work', share, sum)] : done;
  return { seconds: reasons.reduce((all, r) => all + r.seconds, 0), people, reasons };
}

/** The machine's crew, or two where one lift is heavier than one person should take. */
export const peopleFor = (
  machine: Pick<Machine, 'stage' | 'standards' | 'crew'>,
  liftKg: Blank['weightKg'],
): number => Math.max(machine.crew, liftKg > standard(machine, 'twoPersonKg') ? 2 : 1);
