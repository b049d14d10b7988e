import type { Problem } from '../problem.ts';
import type { SetupTable } from '../setup.ts';
import type { Urgency } from './dispatch.ts';
import { fastestSeconds, remainingSeconds } from './remaining.ts';

/** Look-ahead factors: K1 for slack, K2 for changeovers (Infinity: changeovers do not count). */
interface LookAhead {
  readonly k1: number;
  readonly k2: number;
  /** Mean work and mean changeover, seconds. */
  readonly meanSeconds: number;
  readonly meanChangeover: number;
}

/**
 * Apparent tardiness cost with setups: weight over work, discounted by slack and by the changeover it needs.
 * Source: Y. H. Lee, K. Bhaskaran and M. Pinedo, IIE Transactions 29, 1997, pp. 45-52; factors as in M. L. Pinedo,
 * Scheduling, section 14.2 (both from memory). Slack leaves room for the job's later steps.
 * @param scale multiplies K1 and K2, to build several plans (default 1 each)
 * @param ahead the factors, worked out once for several plans
 */
export function atcsRule(
  problem: Problem,
  scale: { readonly k1: number; readonly k2: number } = { k1: 1, k2: 1 },
  ahead: LookAhead = lookAhead(problem),
): Urgency {
  const remaining = remainingSeconds(problem);
  const { k1, k2, meanSeconds, meanChangeover } = ahead;
  // The logarithm of the index: the same order, and it cannot underflow.
  const worth = Float64Array.from(problem.seconds, (seconds, k) => {
    const job = problem.jobOf[Math.floor(k / problem.machines)]!;
    return Math.log(Math.max(problem.weight[job]!, 1e-9) / Math.max(1, seconds));
  });
  return (o, machine, changeover, at) => {
    const slack = Math.max(0, problem.due[problem.jobOf[o]!]! - remaining[o]! - at);
    const patience = slack === Infinity ? 1e9 : slack / (scale.k1 * k1 * meanSeconds);
    const setup = changeover === 0 ? 0 : changeover / (scale.k2 * k2 * meanChangeover);
    return worth[o * problem.machines + machine]! - patience - setup;
  };
}

/**
 * K1 and K2 from how tight and spread the due dates are and how heavy changeovers are (Pinedo, section 14.2). Where
 * machines are parallel, the span is the work over their number. Guards: no work, no changeovers, loose dates.
 */
export function lookAhead(problem: Problem): LookAhead {
  const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
  const meanSeconds = Math.max(
    1,
    mean(Array.from({ length: problem.operations }, (_, o) => fastestSeconds(problem, o))),
  );
  const meanChangeover = meanSetup(problem);
  const dues = [...problem.due].filter(Number.isFinite);
  const span = Math.max(
    1,
    (problem.operations / Math.max(1, problem.machines)) * (meanSeconds + meanChangeover),
  );
  const { now } = problem.input;
  const tightness = dues.length === 0 ? 0 : 1 - (mean(dues) - now) / span;
  const range = dues.length === 0 ? 0 : (Math.max(...dues) - Math.min(...dues)) / span;
  const severity = meanChangeover / meanSeconds;
  const k1 = Math.max(1, range <= 0.5 ? 4.5 + range : 6 - 2 * range);
  const k2 = severity === 0 ? Infinity : Math.max(0.1, tightness / (2 * Math.sqrt(severity)));
  return { k1, k2, meanSeconds, meanChangeover };
}

/** Mean changeover over every pair of operations a machine may see one after the other, and its first one. */
function meanSetup(problem: Problem): number {
  let total = 0;
  let count = 0;
  const pairs = new Map<SetupTable, number>();
  for (let m = 0; m < problem.machines; m++) {
    const table = problem.setups[m]!;
    const classes = table.classOf.filter((k) => k >= 0);
    const initial = table.row(problem.initialState[m]!);
    for (const to of classes) total += initial[to]!;
    if (!pairs.has(table)) pairs.set(table, sumOfPairs(table, classes));
    total += pairs.get(table)!;
    count += classes.length * classes.length;
  }
  return count === 0 ? 0 : total / count;
}

/** Changeover seconds over every ordered pair of two operations, given by their classes. */
function sumOfPairs(table: SetupTable, classes: Int32Array): number {
  const sizes = new Map<number, number>();
  for (const k of classes) sizes.set(k, (sizes.get(k) ?? 0) + 1);
  const kinds = Int32Array.from(sizes.keys());
  const counts = Int32Array.from(sizes.values());
  let total = 0;
  for (let a = 0; a < kinds.length; a++) {
    const row = table.row(kinds[a]!);
    let fromHere = -row[kinds[a]!]!;
    for (let b = 0; b < kinds.length; b++) fromHere += row[kinds[b]!]! * counts[b]!;
    total += fromHere * counts[a]!;
  }
  return total;
}
