import { moveOf } from './move.ts';
import { lateOperation, positionAt, step, type SearchContext } from './search-context.ts';

interface Advance {
  /** The job's last operation, and the position it comes to on its machine. */
  readonly last: number;
  readonly position: number;
}

/**
 * Brings all operations of a job forward: its last operation some positions, each step before it by about as much time, so that the
 * last does not only wait there.
 *
 *     first machine    A B C D →   D A B C    D ends on the second at 80, A there at 20: D is to end 60 s sooner,
 *     second machine   A B C D →   D A B C    so its first step goes ahead of all that ends after its own end less 60 s
 */
export const advanceJob = moveOf<Advance>({ propose, valid, apply });

/** A job whose last operation is fixed has nothing to propose; no random number is drawn for it. */
function propose(context: SearchContext): Advance | null {
  const { problem, evaluator, rng, first } = context;
  const { machineOf, positionOf } = evaluator.live;
  const last = problem.firstOf[problem.jobOf[lateOperation(context)]! + 1]! - 1;
  if (problem.fixed[last]) return null;
  const most = positionOf[last]! - first[machineOf[last]!]!;
  return { last, position: positionOf[last]! - Math.abs(step(rng, most)) };
}

/** Started and frozen operations stay in front. */
function valid({ evaluator, first }: SearchContext, { last, position }: Advance): boolean {
  return position >= first[evaluator.live.machineOf[last]!]!;
}

function apply(context: SearchContext, { last, position }: Advance): void {
  const { problem, evaluator } = context;
  const { live, end } = evaluator;
  const { machineOf, positionOf, queues } = live;
  const m = machineOf[last]!;
  const sooner = end[last]! - end[queues[m]![position]!]!;
  live.shift(m, positionOf[last]!, 1, m, position);
  for (let o = last - 1; o >= problem.firstOf[problem.jobOf[last]!]!; o--) {
    if (problem.fixed[o]) continue;
    const n = machineOf[o]!;
    const earlier = Math.min(positionOf[o]!, positionAt(context, n, end[o]! - sooner));
    if (earlier < positionOf[o]!) live.shift(n, positionOf[o]!, 1, n, earlier);
  }
}
