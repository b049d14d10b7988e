import { lateOperation, positionAt, step, type SearchContext } from './search-context.ts';

/** Brings a whole job forward: each of its steps moves ahead by about as much, those before the late one too. */
export function advanceJob(context: SearchContext): boolean {
  const { problem, trial, rng, first } = context;
  const { home, positionOf, queues } = trial.live;
  const job = problem.jobOf[lateOperation(context)]!;
  const last = problem.firstOf[job + 1]! - 1;
  if (problem.fixed[last]) return false;
  const m = home[last]!;
  const ahead = Math.abs(step(rng, positionOf[last]! - first[m]!));
  const position = positionOf[last]! - ahead;
  if (position < first[m]!) return false;
  const gained = trial.end[last]! - trial.end[queues[m]![position]!]!;
  trial.live.shift(m, positionOf[last]!, 1, m, position);
  for (let o = last - 1; o >= problem.firstOf[job]!; o--) {
    if (problem.fixed[o]) continue;
    const n = home[o]!;
    const earlier = Math.min(positionOf[o]!, positionAt(context, n, trial.end[o]! - gained));
    if (earlier < positionOf[o]!) trial.live.shift(n, positionOf[o]!, 1, n, earlier);
  }
  return true;
}
