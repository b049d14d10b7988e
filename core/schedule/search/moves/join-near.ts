import { anyOperation, canMove, lateOperation, type SearchContext } from './search-context.ts';

/** Longest stretch moved together. */
const LONGEST = 25;

/**
 * Brings two operations together that change over to each other fast: the second, with up to a few that follow it,
 * moves right behind the first; or the first, with up to a few before it, right ahead of the second.
 * It is the segment insertion of travelling-salesman searches with neighbour lists (S. Lin and B. W. Kernighan,
 * Operations Research 21, 1973, pp. 498-516, from memory).
 */
export function joinNear(context: SearchContext): boolean {
  const { rng } = context;
  const second = rng.next() < 0.3 ? lateOperation(context) : anyOperation(context);
  const candidates = context.near(second);
  if (candidates.length === 0) return false;
  const first = candidates[rng.below(candidates.length)]!;
  const count = rng.next() < 0.3 ? 1 : 1 + rng.below(LONGEST);
  return rng.next() < 0.5
    ? bringBehind(context, first, second, count)
    : bringAhead(context, first, second, count);
}

function bringBehind(context: SearchContext, first: number, second: number, count: number): boolean {
  const { home, positionOf, lengths } = context.trial.live;
  const m = home[second]!;
  const n = home[first]!;
  const from = positionOf[second]!;
  let until = Math.min(from + count, lengths[m]!);
  if (m === n && positionOf[first]! > from) until = Math.min(until, positionOf[first]!);
  if (!canMove(context, m, from, until, n)) return false;
  const position = positionOf[first]! + 1 - (m === n && from < positionOf[first]! ? until - from : 0);
  if (m === n && position === from) return false;
  context.trial.live.shift(m, from, until - from, n, position);
  return true;
}

function bringAhead(context: SearchContext, first: number, second: number, count: number): boolean {
  const { home, positionOf } = context.trial.live;
  const m = home[first]!;
  const n = home[second]!;
  const until = positionOf[first]! + 1;
  let from = Math.max(until - count, context.first[m]!);
  if (m === n && positionOf[second]! < until - 1) from = Math.max(from, positionOf[second]! + 1);
  if (!canMove(context, m, from, until, n)) return false;
  const position = positionOf[second]! - (m === n && from < positionOf[second]! ? until - from : 0);
  if (m === n && position === from) return false;
  context.trial.live.shift(m, from, until - from, n, position);
  return true;
}
