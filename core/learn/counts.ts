import type { Machine } from '../shop/machine.ts';
import type { Estimate } from '../estimate/estimate.ts';
import { standard, standardsOf, type Standard, type Timed } from '../estimate/standards.ts';

/** How often each time standard is met in an operation; a weight in kilograms where the standard is per kilogram. */
export type Counts = Readonly<Record<string, number>>;

/** Long enough that an estimate's rounding to whole seconds leaves a count true to a millionth. */
const PROBE_S = 1_000_000;

/** The standards of a machine that take time; the others are the allowance, counts and the lifting weight. */
export const timeStandards = (machine: Pick<Machine, 'stage' | 'timesEdition'>): Standard[] =>
  standardsOf(machine).filter((s) => s.unit === 's' || s.unit === 's/kg');

/**
 * The machine as if only one element of its work took time, and that very long. Estimates are sums of count × standard,
 * so what an estimate made on it says is that element's count; the rules of counting stand in the estimates alone.
 */
export function probe<M extends Timed>(machine: M, key: string): M {
  const none = Object.fromEntries(timeStandards(machine).map((s) => [s.key, 0]));
  return { ...machine, standards: { ...machine.standards, ...none, allowance: 0, [key]: PROBE_S } };
}

/** How often the one element of a probed machine was met in an estimate made on it. */
export const countIn = (estimate: Pick<Estimate, 'seconds'>): number => estimate.seconds / PROBE_S;

/** Seconds of an operation by its counts: Σ count × standard, with the allowance; not rounded. */
export const secondsOf = (machine: Timed, counts: Counts): number =>
  (1 + standard(machine, 'allowance')) *
  Object.entries(counts).reduce((sum, [key, count]) => sum + count * standard(machine, key), 0);
