import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import { readyAt } from '../timing.ts';
import {
  draftOf,
  endOf,
  putIn,
  positionAt,
  stepsOf,
  thin,
  type Draft,
  type QueuePosition,
} from '../what-if/draft.ts';
import { finish, nextOpen } from '../working-time.ts';

/** A plan with the job in it. */
export interface Offer {
  readonly draft: Draft;
  /** Seconds of lateness added to other jobs, summed; 0 when no job is made late. */
  readonly harm: number;
}

/** How many partial plans are carried from one step to the next (beam search): harmless ones, and others. */
const BEAM_WIDTH = { harmless: 12, harmful: 4 };
/** Of the plans that are ready in time for a position, harmless and harmful each, so many are tried there. */
const PER_POSITION = 2;
/** Plans timed for one step at most; timing takes ten times as long with limited crews or things shared. */
const MOST = 700;
const MOST_CONTENDED = 80;

/** Seconds of lateness that one plan adds to jobs other than this one, compared with another. */
function harmOf(problem: Problem, before: Draft, after: Draft, job: number): number {
  let harm = 0;
  for (let j = 0; j < problem.jobs; j++) {
    const due = problem.due[j]!;
    if (j === job || due === Infinity) continue;
    const late = (draft: Draft) => Math.max(0, endOf(problem, draft, j) - due);
    harm += Math.max(0, late(after) - late(before));
  }
  return harm;
}

/**
 * Plans with the job's loose steps put in, the other operations in the order they have. Step by step every position is
 * tried from the soonest on; the last step's until one does no harm and none left can be sooner.
 * @param apart the plan without these steps: what harm is measured from
 */
export function tryPositions(problem: Problem, apart: Draft, job: number): readonly Offer[] {
  const loose = stepsOf(problem, job).filter((o) => !problem.fixed[o]);
  let beam: readonly Offer[] = [{ draft: apart, harm: 0 }];
  for (const o of loose) {
    const last = o === loose.at(-1);
    const offers = tryStep(problem, beam, o, last, (draft) => harmOf(problem, apart, draft, job));
    beam = last ? offers : narrowed(offers, o);
  }
  return beam;
}

/** Spread over the times at which the step may end, so that a later step finds one that is ready when it can start. */
function narrowed(offers: readonly Offer[], o: number): readonly Offer[] {
  const sorted = [...offers].sort((a, b) => a.draft.timing.end[o]! - b.draft.timing.end[o]!);
  return [
    ...thin(
      sorted.filter(({ harm }) => harm === 0),
      BEAM_WIDTH.harmless,
    ),
    ...thin(
      sorted.filter(({ harm }) => harm > 0),
      BEAM_WIDTH.harmful,
    ),
  ];
}

interface Candidate {
  readonly from: Offer;
  readonly target: QueuePosition;
  /** When it would end if nothing ahead moved, and how long it would wait between the step before and its start. */
  readonly end: number;
  readonly waits: number;
}

function tryStep(
  problem: Problem,
  beam: readonly Offer[],
  o: number,
  last: boolean,
  harmOf: (draft: Draft) => number,
): Offer[] {
  const offers: Offer[] = [];
  let safe = Infinity;
  for (const { from, target, end } of candidatesFor(problem, beam, o)) {
    if (last && end >= safe) break;
    const draft = draftOf(problem, putIn(problem, from.draft.queues, o, target));
    if (draft === null) continue;
    const harm = harmOf(draft);
    offers.push({ draft, harm });
    if (harm === 0) safe = Math.min(safe, draft.timing.end[o]!);
  }
  return offers;
}

/**
 * What to time, the soonest end first. Where the machine is busy until then, the end is the same however early the step
 * before is done: only the plans in which it waits shortest are tried, which disturb the others least.
 */
function candidatesFor(problem: Problem, beam: readonly Offer[], o: number): readonly Candidate[] {
  const tries = new Map<string, number>();
  const chosen = beam
    .flatMap((from) => Array.from(problem.eligible[o]!).flatMap((m) => candidatesOn(problem, from, o, m)))
    .sort((a, b) => a.end - b.end || a.waits - b.waits)
    .filter(({ from, target, waits }) => {
      if (waits === 0) return true;
      const key = `${target.machine} ${target.position} ${from.harm === 0}`;
      tries.set(key, (tries.get(key) ?? 0) + 1);
      return tries.get(key)! <= PER_POSITION;
    });
  return thin(chosen, isContended(problem) ? MOST_CONTENDED : MOST);
}

/** Positions on one machine, from the one before the first that does not keep it waiting for the step before. */
function candidatesOn(problem: Problem, from: Offer, o: number, machine: number): Candidate[] {
  const { timing, queues } = from.draft;
  const open = problem.open[machine]!;
  const queue = queues[machine]!;
  const ready = readyAt(problem, timing, o);
  const first = Math.max(problem.front[machine]!.length, positionAt(problem, from.draft, machine, ready) - 1);
  return Array.from({ length: queue.length - first + 1 }, (_, k) => {
    const position = first + k;
    const free = position === 0 ? problem.availableFrom[machine]! : timing.end[queue[position - 1]!]!;
    const start = nextOpen(open, Math.max(ready, free));
    const end = finish(open, start, problem.seconds[o * problem.machines + machine]!);
    return { from, target: { machine, position }, end, waits: Math.max(0, free - ready) };
  });
}
