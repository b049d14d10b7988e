import {
  anyOperation,
  clamp,
  lateOperation,
  placeAt,
  someMachine,
  step,
  type Ground,
} from './search-context.ts';

/** Moves one operation a few places along its queue, or to about the same time on another machine. */
export function shiftOperation(ground: Ground): boolean {
  const { trial, rng, first } = ground;
  const { home, rank, lengths } = trial.live;
  const o = rng.next() < 0.3 ? lateOperation(ground) : anyOperation(ground);
  const m = home[o]!;
  const n = someMachine(ground, o);
  const last = lengths[n]! - (m === n ? 1 : 0);
  const near = m === n ? rank[o]! : placeAt(ground, n, trial.end[o]!);
  const place = clamp(near + step(rng, last - first[n]!), first[n]!, last);
  if (m === n && place === rank[o]) return false;
  trial.live.shift(m, rank[o]!, 1, n, place);
  return true;
}
