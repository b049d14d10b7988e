import { anyOperation, canMove, clamp, placeAt, someMachine, step, type Ground } from './search-context.ts';

/** Moves a run (neighbours with the same setup), or a few neighbours whatever their setups, along or to another machine. */
export function shiftRun(ground: Ground): boolean {
  const { trial, rng, first } = ground;
  const { home, rank, lengths, queues } = trial.live;
  const o = anyOperation(ground);
  const m = home[o]!;
  const [from, until] = rng.next() < 0.5 ? runAround(ground, o) : someNeighbours(ground, o);
  const count = until - from;
  const n = someMachine(ground, o);
  const queue = queues[m]!;
  if (!canMove(ground, m, from, until, n)) return false;
  const last = lengths[n]! - (m === n ? count : 0);
  const near = m === n ? from : placeAt(ground, n, trial.end[queue[from]!]!);
  const place = clamp(near + step(rng, last - first[n]!), first[n]!, last);
  if (m === n && place === rank[queue[from]!]) return false;
  trial.live.shift(m, from, count, n, place);
  return true;
}

function runAround({ problem, trial, first }: Ground, o: number): [number, number] {
  const { home, rank, lengths, queues } = trial.live;
  const queue = queues[home[o]!]!;
  const { classOf } = problem.setups[home[o]!]!;
  const sameRun = (other: number) => !problem.fixed[other] && classOf[other] === classOf[o];
  let from = rank[o]!;
  let until = from + 1;
  while (from > first[home[o]!]! && sameRun(queue[from - 1]!)) from -= 1;
  while (until < lengths[home[o]!]! && sameRun(queue[until]!)) until += 1;
  return [from, until];
}

function someNeighbours({ trial, rng }: Ground, o: number): [number, number] {
  const { home, rank, lengths } = trial.live;
  const from = rank[o]!;
  return [from, Math.min(lengths[home[o]!]!, from + 2 + rng.below(6))];
}
