import { anyOperation, clamp, placeAt, someMachine, step, type Ground } from './search-context.ts';

/** Lets two operations change places, on one machine or on two. */
export function swapOperations(ground: Ground): boolean {
  const { problem, trial, rng, first } = ground;
  const { home, rank, lengths, queues } = trial.live;
  const o = anyOperation(ground);
  const m = home[o]!;
  const n = someMachine(ground, o);
  if (lengths[n]! <= first[n]!) return false;
  const near = m === n ? rank[o]! : placeAt(ground, n, trial.end[o]!);
  const other = queues[n]![clamp(near + step(rng, lengths[n]! - first[n]!), first[n]!, lengths[n]! - 1)]!;
  if (other === o || problem.fixed[other] || !problem.eligible[other]!.includes(m)) return false;
  const [a, b] = rank[o]! < rank[other]! || m !== n ? [o, other] : [other, o];
  const at = rank[a]!;
  const to = rank[b]!;
  trial.live.shift(m, at, 1, n, to);
  // The second now stands one place before (same queue) or after (another queue) where the first arrived.
  trial.live.shift(n, rank[b]!, 1, m, at);
  return true;
}
