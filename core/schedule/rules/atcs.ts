import type { Problem, Queues } from '../problem.ts';
import { dispatch } from './dispatch.ts';
import { fastestSeconds, remainingSeconds } from './remaining.ts';

/** Look-ahead factors: K1 for slack, K2 for changeovers (Infinity: changeovers do not count). */
export interface LookAhead {
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
 */
export function atcsQueues(
  problem: Problem,
  scale: { readonly k1: number; readonly k2: number } = { k1: 1, k2: 1 },
): Queues {
  const remaining = remainingSeconds(problem);
  const { k1, k2, meanSeconds, meanChangeover } = lookAhead(problem);
  return dispatch(problem, ({ operation, machine, at, changeover }) => {
    const job = problem.jobOf[operation]!;
    const work = Math.max(1, problem.seconds[operation * problem.machines + machine]!);
    const slack = Math.max(0, problem.due[job]! - remaining[operation]! - at);
    const patience = slack === Infinity ? 1e9 : slack / (scale.k1 * k1 * meanSeconds);
    const setup = changeover === 0 ? 0 : changeover / (scale.k2 * k2 * meanChangeover);
    // The logarithm of the index: the same order, and it cannot underflow.
    return Math.log(Math.max(problem.weight[job]!, 1e-9) / work) - patience - setup;
  });
}

/**
 * K1 and K2 from how tight and spread the due dates are and how heavy changeovers are (Pinedo, section 14.2). Where
 * machines stand side by side, the span is the work over their number. Guards: no work, no changeovers, loose dates.
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
  for (let m = 0; m < problem.machines; m++) {
    const table = problem.setups[m]!;
    const classes = [...table.classOf].filter((k) => k >= 0);
    const sizes = new Map<number, number>();
    for (const k of classes) sizes.set(k, (sizes.get(k) ?? 0) + 1);
    const initial = table.row(problem.initialState[m]!);
    for (const [to, many] of sizes) total += initial[to]! * many;
    for (const [from, many] of sizes) {
      const row = table.row(from);
      for (const [to, others] of sizes) total += row[to]! * many * (from === to ? many - 1 : others);
    }
    count += classes.length * classes.length;
  }
  return count === 0 ? 0 : total / count;
}
