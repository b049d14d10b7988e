import { moveOf } from './move.ts';
import { anyOperation, lateOperation, type SearchContext } from './search-context.ts';
import { applyShift, changesOrder, mayLeave, type Shift } from './shift.ts';

/** Most operations moved together. */
const LONGEST = 25;

/**
 * Brings two operations together that change over to each other fast: the second, with up to a few that follow it,
 * moves right behind the first; or the first, with up to a few before it, right ahead of the second.
 *
 *     A x y B C   B and one more behind A →   A B C x y   or A alone ahead of B →   x y A B C
 *
 * Three pairs of neighbours are broken and three made; with changeovers s, and z for what follows C, the first gains
 * s(A,x) + s(y,B) + s(C,z) − s(A,B) − s(C,x) − s(y,z) seconds of changeover. A, B and C red, x and y blue, 10 s from one
 * colour to the other and nothing behind: 10 + 10 + 0 − 0 − 10 − 0 = 10.
 * It is the segment insertion of travelling-salesman searches with neighbour lists (S. Lin and B. W. Kernighan,
 * Operations Research 21, 1973, pp. 498-516, from memory).
 */
export const joinNeighbours = moveOf<Shift>({
  propose,
  valid: (context, shift) => mayLeave(context, shift) && changesOrder(shift),
  apply: applyShift,
});

function propose(context: SearchContext): Shift | null {
  const { rng } = context;
  const second = rng.next() < 0.3 ? lateOperation(context) : anyOperation(context);
  const candidates = context.neighbours(second);
  if (candidates.length === 0) return null;
  const first = candidates[rng.below(candidates.length)]!;
  const count = rng.next() < 0.3 ? 1 : 1 + rng.below(LONGEST);
  return rng.next() < 0.5
    ? bringBehind(context, first, second, count)
    : bringAhead(context, first, second, count);
}

function bringBehind({ evaluator }: SearchContext, first: number, second: number, most: number): Shift {
  const { machineOf, positionOf, lengths } = evaluator.live;
  const m = machineOf[second]!;
  const n = machineOf[first]!;
  const from = positionOf[second]!;
  let until = Math.min(from + most, lengths[m]!);
  if (m === n && positionOf[first]! > from) until = Math.min(until, positionOf[first]!);
  const count = until - from;
  const position = positionOf[first]! + 1 - (m === n && from < positionOf[first]! ? count : 0);
  return { m, from, count, n, position };
}

function bringAhead(context: SearchContext, first: number, second: number, most: number): Shift {
  const { machineOf, positionOf } = context.evaluator.live;
  const m = machineOf[first]!;
  const n = machineOf[second]!;
  const until = positionOf[first]! + 1;
  let from = Math.max(until - most, context.first[m]!);
  if (m === n && positionOf[second]! < until - 1) from = Math.max(from, positionOf[second]! + 1);
  const count = until - from;
  const position = positionOf[second]! - (m === n && from < positionOf[second]! ? count : 0);
  return { m, from, count, n, position };
}
