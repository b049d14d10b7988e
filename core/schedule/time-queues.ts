import { Contention, isContended } from './contention.ts';
import type { Problem } from './problem.ts';
import { timeOperation, type Timing } from './timing.ts';

/**
 * Times every operation of the queues, each as early as its queue, its routing and its machine allow:
 * - start = max(job ready, end of the changeover started when the machine is free), moved into open time;
 * - work and changeovers pause while the machine is closed;
 * - with transfer lots, it may start when the first lot of the step before is done, and cannot end before its last lot
 *   (that share of its own work, after the step before ends);
 * - a started operation starts when it did, needs no changeover any more and cannot end before `now`;
 * - with a crew limit, or things that machines share, operations are placed one by one, always the one that could start
 *   first (ties: the machine listed first), each at the first instant from which enough people and what it holds are free
 *   for all of it: a changeover that waits for a thing begins when no other machine holds it any more, and takes longer
 *   where what it is part of has to be fetched (`Contention`).
 * @param queues operation numbers by machine
 */
export function timeQueues(problem: Problem, queues: readonly ArrayLike<number>[], timing: Timing): Timing {
  const contention = isContended(problem) ? new Contention(problem) : null;
  const heads = new Int32Array(problem.machines);
  const states = Int32Array.from(problem.initialState);
  const free = Float64Array.from(problem.availableFrom);
  const done = new Uint8Array(problem.operations);
  const waiting = (m: number) => {
    const o = queues[m]![heads[m]!];
    if (o === undefined) return -1;
    return problem.firstOf[problem.jobOf[o]!] === o || done[o - 1] === 1 ? o : -1;
  };
  const placeNext = (m: number, o: number) => {
    const setup = problem.setups[m]!;
    const kind = setup.classOf[o]!;
    const seconds = setup.row(states[m]!)[kind]!;
    timeOperation(problem, timing, o, m, free[m]!, seconds);
    contention?.place(timing, o, m, free[m]!, states[m]!);
    states[m] = setup.after(states[m]!, kind);
    free[m] = Math.max(free[m]!, timing.end[o]!);
    heads[m]! += 1;
    done[o] = 1;
    timing.placed += 1;
  };
  timing.placed = 0;
  const choose =
    contention === null ? anyHead(problem, waiting) : earliestHead(problem, waiting, timing, free, states);
  for (let m = choose(); m >= 0; m = choose()) placeNext(m, waiting(m));
  return timing;
}

/** Goes on with one machine while it can, then with the next. */
function anyHead(problem: Problem, waiting: (m: number) => number): () => number {
  let m = 0;
  return () => {
    for (let tried = 0; tried < problem.machines; tried++) {
      if (waiting(m) >= 0) return m;
      m = m + 1 === problem.machines ? 0 : m + 1;
    }
    return -1;
  };
}

function earliestHead(
  problem: Problem,
  waiting: (m: number) => number,
  timing: Timing,
  free: Float64Array,
  states: Int32Array,
): () => number {
  // The head of each machine's queue that was timed last: until it is placed, its start stays the same.
  const timed = new Int32Array(problem.machines).fill(-1);
  return () => {
    let best = -1;
    let bestStart = Infinity;
    for (let m = 0; m < problem.machines; m++) {
      const o = waiting(m);
      if (o < 0) continue;
      // What has started has its people and tools already, so it is placed before anything that has not.
      if (!Number.isNaN(problem.startedAt[o]!)) return m;
      if (timed[m] !== o) {
        const setup = problem.setups[m]!;
        timeOperation(problem, timing, o, m, free[m]!, setup.row(states[m]!)[setup.classOf[o]!]!);
        timed[m] = o;
      }
      if (timing.start[o]! >= bestStart) continue;
      best = m;
      bestStart = timing.start[o]!;
    }
    return best;
  };
}
