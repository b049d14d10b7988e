import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import type { NumberedQueues } from '../numbered-queues.ts';
import { readyAt } from '../timing.ts';
import {
  draftOf,
  putIn,
  positionAt,
  positionOf,
  stepsOf,
  takeOut,
  thin,
  type Draft,
} from '../what-if/draft.ts';

/** One change of the order, to be tried. */
interface Rearrangement {
  readonly kind: 'earlier-position' | 'other-machine' | 'swap';
  /** Operations that would be elsewhere, those of the job in question first. */
  readonly moved: readonly number[];
  readonly queues: NumberedQueues;
}

/** Positions tried per step and kind; each is timed with the full plan, which takes ten times as long with limited crews or things shared. */
const MOST = 80;
const MOST_CONTENDED = 8;

/**
 * Single changes that could end a job earlier: a step at each earlier position in its queue, all its steps brought forward
 * together, a step on another machine that can do it, a step in exchange with one ahead of it. Positions long before
 * the step before is done are left out: there it would only keep the machine waiting. Fixed operations stay.
 */
export function rearrangements(problem: Problem, draft: Draft, job: number): Rearrangement[] {
  const free = stepsOf(problem, job).filter((o) => !problem.fixed[o]);
  const most = isContended(problem) ? MOST_CONTENDED : MOST;
  return [
    ...free.flatMap((o) => earlierPositions(problem, draft, o, most)),
    ...(free.length > 1 ? broughtForward(problem, draft, free, most >> 1) : []),
    ...free.flatMap((o) => otherMachines(problem, draft, o, most)),
    ...free.flatMap((o) => exchanges(problem, draft, o, most >> 1)),
  ];
}

/** The first position worth trying on a machine: one before the first that does not keep it waiting for the step before. */
const firstPosition = (problem: Problem, draft: Draft, machine: number, ready: number): number =>
  Math.max(problem.front[machine]!.length, positionAt(problem, draft, machine, ready) - 1);

function positionsAhead(problem: Problem, draft: Draft, o: number, most: number): readonly number[] {
  const first = firstPosition(problem, draft, draft.timing.machine[o]!, readyAt(problem, draft.timing, o));
  const count = Math.max(0, positionOf(draft, o) - first);
  return thin(
    Array.from({ length: count }, (_, k) => first + k),
    most,
  );
}

function earlierPositions(problem: Problem, draft: Draft, o: number, most: number): Rearrangement[] {
  const machine = draft.timing.machine[o]!;
  const rest = takeOut(problem, draft.queues, [o]);
  return positionsAhead(problem, draft, o, most).map((position) => ({
    kind: 'earlier-position',
    moved: [o],
    queues: putIn(problem, rest, o, { machine, position }),
  }));
}

/** The first free step at each earlier position, every later one as soon as it does not keep its machine waiting. */
function broughtForward(
  problem: Problem,
  draft: Draft,
  free: readonly number[],
  most: number,
): Rearrangement[] {
  const rest = takeOut(problem, draft.queues, free);
  const [first, ...others] = free as [number, ...number[]];
  return positionsAhead(problem, draft, first, most).flatMap((position) => {
    let queues = putIn(problem, rest, first, { machine: draft.timing.machine[first]!, position });
    for (const o of others) {
      const partly = draftOf(problem, queues);
      if (partly === null) return [];
      const machine = draft.timing.machine[o]!;
      const ready = readyAt(problem, partly.timing, o);
      queues = putIn(problem, queues, o, { machine, position: positionAt(problem, partly, machine, ready) });
    }
    return { kind: 'earlier-position' as const, moved: free, queues };
  });
}

function otherMachines(problem: Problem, draft: Draft, o: number, most: number): Rearrangement[] {
  const rest = takeOut(problem, draft.queues, [o]);
  const ready = readyAt(problem, draft.timing, o);
  return Array.from(problem.eligible[o]!)
    .filter((machine) => machine !== draft.timing.machine[o])
    .flatMap((machine) => {
      const first = firstPosition(problem, draft, machine, ready);
      const last = positionAt(problem, draft, machine, draft.timing.end[o]!);
      const positions = Array.from({ length: last - first + 1 }, (_, k) => first + k);
      return thin(positions, most).map((position): Rearrangement => ({
        kind: 'other-machine',
        moved: [o],
        queues: putIn(problem, rest, o, { machine, position }),
      }));
    });
}

function exchanges(problem: Problem, draft: Draft, o: number, most: number): Rearrangement[] {
  const machine = draft.timing.machine[o]!;
  const position = positionOf(draft, o);
  return positionsAhead(problem, draft, o, most).flatMap((ahead) => {
    const other = draft.queues[machine]![ahead]!;
    if (problem.fixed[other]) return [];
    const queue = Int32Array.from(draft.queues[machine]!);
    queue[ahead] = o;
    queue[position] = other;
    const queues = draft.queues.map((each, m) => (m === machine ? queue : each));
    return { kind: 'swap' as const, moved: [o, other], queues };
  });
}
