import { moveOf } from './move.ts';
import { anyOperation, clamp, positionAt, someMachine, step, type SearchContext } from './search-context.ts';

interface Swap {
  readonly o: number;
  readonly other: number;
}

/**
 * Exchanges the positions of two operations, on one machine or on two. It is made of two shifts:
 *
 *     A B C D   A to the last position →   B C D A   D to the first →   D B C A
 */
export const swapOperations = moveOf<Swap>({ propose, valid, apply });

function propose(context: SearchContext): Swap | null {
  const { evaluator, rng, first } = context;
  const { machineOf, positionOf, lengths, queues } = evaluator.live;
  const o = anyOperation(context);
  const m = machineOf[o]!;
  const n = someMachine(context, o);
  if (lengths[n]! <= first[n]!) return null;
  const near = m === n ? positionOf[o]! : positionAt(context, n, evaluator.end[o]!);
  const position = clamp(near + step(rng, lengths[n]! - first[n]!), first[n]!, lengths[n]! - 1);
  return { o, other: queues[n]![position]! };
}

/** The first is movable and the other's machine eligible for it as drawn; the other has to be so too. */
function valid({ problem, evaluator }: SearchContext, { o, other }: Swap): boolean {
  return (
    other !== o && !problem.fixed[other] && problem.eligible[other]!.includes(evaluator.live.machineOf[o]!)
  );
}

function apply({ evaluator: { live } }: SearchContext, { o, other }: Swap): void {
  const { machineOf, positionOf } = live;
  const sameQueue = machineOf[o] === machineOf[other];
  const [a, b] = positionOf[o]! < positionOf[other]! || !sameQueue ? [o, other] : [other, o];
  const [m, n] = [machineOf[a]!, machineOf[b]!];
  const at = positionOf[a]!;
  live.shift(m, at, 1, n, positionOf[b]!);
  // The second is now one position before (same queue) or after (another queue) where the first arrived.
  live.shift(n, positionOf[b]!, 1, m, at);
}
