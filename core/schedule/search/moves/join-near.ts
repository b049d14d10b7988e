import { anyOperation, canMove, lateOperation, type Ground } from './search-context.ts';

/** Longest stretch moved together. */
const LONGEST = 25;

/**
 * Brings two operations together that change over to each other fast: the second, with up to a few that follow it,
 * moves right behind the first; or the first, with up to a few before it, right ahead of the second.
 * It is the segment insertion of travelling-salesman searches with neighbour lists (S. Lin and B. W. Kernighan,
 * Operations Research 21, 1973, pp. 498-516, from memory).
 */
export function joinNear(ground: Ground): boolean {
  const { rng } = ground;
  const second = rng.next() < 0.3 ? lateOperation(ground) : anyOperation(ground);
  const candidates = ground.near(second);
  if (candidates.length === 0) return false;
  const first = candidates[rng.below(candidates.length)]!;
  const count = rng.next() < 0.3 ? 1 : 1 + rng.below(LONGEST);
  return rng.next() < 0.5
    ? bringBehind(ground, first, second, count)
    : bringAhead(ground, first, second, count);
}

function bringBehind(ground: Ground, first: number, second: number, count: number): boolean {
  const { home, rank, lengths } = ground.trial.live;
  const m = home[second]!;
  const n = home[first]!;
  const from = rank[second]!;
  let until = Math.min(from + count, lengths[m]!);
  if (m === n && rank[first]! > from) until = Math.min(until, rank[first]!);
  if (!canMove(ground, m, from, until, n)) return false;
  const place = rank[first]! + 1 - (m === n && from < rank[first]! ? until - from : 0);
  if (m === n && place === from) return false;
  ground.trial.live.shift(m, from, until - from, n, place);
  return true;
}

function bringAhead(ground: Ground, first: number, second: number, count: number): boolean {
  const { home, rank } = ground.trial.live;
  const m = home[first]!;
  const n = home[second]!;
  const until = rank[first]! + 1;
  let from = Math.max(until - count, ground.first[m]!);
  if (m === n && rank[second]! < until - 1) from = Math.max(from, rank[second]! + 1);
  if (!canMove(ground, m, from, until, n)) return false;
  const place = rank[second]! - (m === n && from < rank[second]! ? until - from : 0);
  if (m === n && place === from) return false;
  ground.trial.live.shift(m, from, until - from, n, place);
  return true;
}
