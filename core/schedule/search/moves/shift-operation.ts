import {
  anyOperation,
  clamp,
  lateOperation,
  positionAt,
  someMachine,
  step,
  type SearchContext,
} from './search-context.ts';

/** Moves one operation a few positions along its queue, or to about the same time on another machine. */
export function shiftOperation(context: SearchContext): boolean {
  const { trial, rng, first } = context;
  const { home, positionOf, lengths } = trial.live;
  const o = rng.next() < 0.3 ? lateOperation(context) : anyOperation(context);
  const m = home[o]!;
  const n = someMachine(context, o);
  const last = lengths[n]! - (m === n ? 1 : 0);
  const near = m === n ? positionOf[o]! : positionAt(context, n, trial.end[o]!);
  const position = clamp(near + step(rng, last - first[n]!), first[n]!, last);
  if (m === n && position === positionOf[o]) return false;
  trial.live.shift(m, positionOf[o]!, 1, n, position);
  return true;
}
