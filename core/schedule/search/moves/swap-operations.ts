import { anyOperation, clamp, positionAt, someMachine, step, type SearchContext } from './search-context.ts';

/** Lets two operations change positions, on one machine or on two. */
export function swapOperations(context: SearchContext): boolean {
  const { problem, trial, rng, first } = context;
  const { home, positionOf, lengths, queues } = trial.live;
  const o = anyOperation(context);
  const m = home[o]!;
  const n = someMachine(context, o);
  if (lengths[n]! <= first[n]!) return false;
  const near = m === n ? positionOf[o]! : positionAt(context, n, trial.end[o]!);
  const other = queues[n]![clamp(near + step(rng, lengths[n]! - first[n]!), first[n]!, lengths[n]! - 1)]!;
  if (other === o || problem.fixed[other] || !problem.eligible[other]!.includes(m)) return false;
  const [a, b] = positionOf[o]! < positionOf[other]! || m !== n ? [o, other] : [other, o];
  const at = positionOf[a]!;
  const to = positionOf[b]!;
  trial.live.shift(m, at, 1, n, to);
  // The second now stands one position before (same queue) or after (another queue) where the first arrived.
  trial.live.shift(n, positionOf[b]!, 1, m, at);
  return true;
}
