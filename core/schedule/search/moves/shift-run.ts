import { moveOf } from './move.ts';
import { anyOperation, clamp, positionAt, someMachine, step, type SearchContext } from './search-context.ts';
import { applyShift, changesOrder, mayLeave, type Shift } from './shift.ts';

/**
 * Moves a run (neighbours with the same setup), or a few neighbours whatever their setups, along or to another machine.
 *
 * A run in the midst of another costs two changeovers, behind it one. With 10 s from red to blue and back, and nothing
 * late either way, the gain is 10 s × the weight of changeovers:
 *
 *     red red [blue blue] red   20 s →   red red red [blue blue]   10 s
 */
export const shiftRun = moveOf<Shift>({
  propose,
  valid: (_, shift) => changesOrder(shift),
  apply: applyShift,
});

/** A position is drawn only for a stretch that may leave its queue. */
function propose(context: SearchContext): Shift | null {
  const { evaluator, rng, first } = context;
  const { machineOf, lengths, queues } = evaluator.live;
  const o = anyOperation(context);
  const m = machineOf[o]!;
  const [from, until] = rng.next() < 0.5 ? runAround(context, o) : someNeighbours(context, o);
  const count = until - from;
  const n = someMachine(context, o);
  if (!mayLeave(context, { m, from, count, n })) return null;
  const last = lengths[n]! - (m === n ? count : 0);
  const near = m === n ? from : positionAt(context, n, evaluator.end[queues[m]![from]!]!);
  const position = clamp(near + step(rng, last - first[n]!), first[n]!, last);
  return { m, from, count, n, position };
}

function runAround({ problem, evaluator, first }: SearchContext, o: number): [number, number] {
  const { machineOf, positionOf, lengths, queues } = evaluator.live;
  const m = machineOf[o]!;
  const queue = queues[m]!;
  const { classOf } = problem.setups[m]!;
  const sameRun = (other: number) => !problem.fixed[other] && classOf[other] === classOf[o];
  let from = positionOf[o]!;
  let until = from + 1;
  while (from > first[m]! && sameRun(queue[from - 1]!)) from -= 1;
  while (until < lengths[m]! && sameRun(queue[until]!)) until += 1;
  return [from, until];
}

function someNeighbours({ evaluator, rng }: SearchContext, o: number): [number, number] {
  const { machineOf, positionOf, lengths } = evaluator.live;
  const from = positionOf[o]!;
  return [from, Math.min(lengths[machineOf[o]!]!, from + 2 + rng.below(6))];
}
