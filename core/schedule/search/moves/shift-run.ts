import {
  anyOperation,
  canMove,
  clamp,
  positionAt,
  someMachine,
  step,
  type SearchContext,
} from './search-context.ts';

/** Moves a run (neighbours with the same setup), or a few neighbours whatever their setups, along or to another machine. */
export function shiftRun(context: SearchContext): boolean {
  const { trial, rng, first } = context;
  const { home, positionOf, lengths, queues } = trial.live;
  const o = anyOperation(context);
  const m = home[o]!;
  const [from, until] = rng.next() < 0.5 ? runAround(context, o) : someNeighbours(context, o);
  const count = until - from;
  const n = someMachine(context, o);
  const queue = queues[m]!;
  if (!canMove(context, m, from, until, n)) return false;
  const last = lengths[n]! - (m === n ? count : 0);
  const near = m === n ? from : positionAt(context, n, trial.end[queue[from]!]!);
  const position = clamp(near + step(rng, last - first[n]!), first[n]!, last);
  if (m === n && position === positionOf[queue[from]!]) return false;
  trial.live.shift(m, from, count, n, position);
  return true;
}

function runAround({ problem, trial, first }: SearchContext, o: number): [number, number] {
  const { home, positionOf, lengths, queues } = trial.live;
  const queue = queues[home[o]!]!;
  const { classOf } = problem.setups[home[o]!]!;
  const sameRun = (other: number) => !problem.fixed[other] && classOf[other] === classOf[o];
  let from = positionOf[o]!;
  let until = from + 1;
  while (from > first[home[o]!]! && sameRun(queue[from - 1]!)) from -= 1;
  while (until < lengths[home[o]!]! && sameRun(queue[until]!)) until += 1;
  return [from, until];
}

function someNeighbours({ trial, rng }: SearchContext, o: number): [number, number] {
  const { home, positionOf, lengths } = trial.live;
  const from = positionOf[o]!;
  return [from, Math.min(lengths[home[o]!]!, from + 2 + rng.below(6))];
}
