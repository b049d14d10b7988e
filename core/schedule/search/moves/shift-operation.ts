import { moveOf } from './move.ts';
import {
  anyOperation,
  clamp,
  lateOperation,
  positionAt,
  someMachine,
  step,
  type SearchContext,
} from './search-context.ts';
import { applyShift, changesOrder, type Shift } from './shift.ts';

/**
 * Moves one operation a few positions along its queue, or to about the same time on another machine that can do it.
 *
 *     A B C D   C two positions forward →   C A B D
 *
 * The operation is movable and its machine eligible as drawn, so that only a shift to where it is already is invalid.
 */
export const shiftOperation = moveOf<Shift>({
  propose,
  valid: (_, shift) => changesOrder(shift),
  apply: applyShift,
});

function propose(context: SearchContext): Shift {
  const { evaluator, rng, first } = context;
  const { machineOf, positionOf, lengths } = evaluator.live;
  const o = rng.next() < 0.3 ? lateOperation(context) : anyOperation(context);
  const m = machineOf[o]!;
  const n = someMachine(context, o);
  const last = lengths[n]! - (m === n ? 1 : 0);
  const near = m === n ? positionOf[o]! : positionAt(context, n, evaluator.end[o]!);
  const position = clamp(near + step(rng, last - first[n]!), first[n]!, last);
  return { m, from: positionOf[o]!, count: 1, n, position };
}
