import { lateOperation, placeAt, step, type Ground } from './search-context.ts';

/** Brings a whole job forward: each of its steps moves ahead by about as much, those before the late one too. */
export function advanceJob(ground: Ground): boolean {
  const { problem, trial, rng, first } = ground;
  const { home, rank, queues } = trial.live;
  const job = problem.jobOf[lateOperation(ground)]!;
  const last = problem.firstOf[job + 1]! - 1;
  if (problem.fixed[last]) return false;
  const m = home[last]!;
  const ahead = Math.abs(step(rng, rank[last]! - first[m]!));
  const place = rank[last]! - ahead;
  if (place < first[m]!) return false;
  const gained = trial.end[last]! - trial.end[queues[m]![place]!]!;
  trial.live.shift(m, rank[last]!, 1, m, place);
  for (let o = last - 1; o >= problem.firstOf[job]!; o--) {
    if (problem.fixed[o]) continue;
    const n = home[o]!;
    const earlier = Math.min(rank[o]!, placeAt(ground, n, trial.end[o]! - gained));
    if (earlier < rank[o]!) trial.live.shift(n, rank[o]!, 1, n, earlier);
  }
  return true;
}
