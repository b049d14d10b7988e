import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import { readyAt } from '../timing.ts';
import {
  draftOf,
  putIn,
  positionAt,
  stepsOf,
  thin,
  type Draft,
  type QueuePosition,
} from '../what-if/draft.ts';
import { compareTimes } from '../rules/edd.ts';

/** Positions tried of the same changeover cost on one machine, and partial plans carried from one step to the next. */
const SPREAD = 6;
const BEAM_WIDTH = 8;
const SPREAD_CONTENDED = 2;
const BEAM_WIDTH_CONTENDED = 3;

/**
 * Puts a job's loose steps in where they add the fewest changeover seconds and the job still ends by its due date; of
 * equal ones where the plan costs least. That is as a rule inside the run of the same attributes. If no such positions
 * keep the date: where it ends soonest. The steps are placed in turn, with a beam of the best few partial plans (beam search).
 * @param draft the job's loose steps left out
 * @returns null when no position can be timed
 */
export function putInRun(problem: Problem, draft: Draft, job: number): Draft | null {
  const contended = isContended(problem);
  const steps = stepsOf(problem, job).filter((o) => !problem.fixed[o]);
  const due = problem.due[job]!;
  let beam: readonly Draft[] = [draft];
  for (const o of steps) {
    const tried = beam.flatMap((partial) =>
      promisingPositions(problem, partial, o, contended ? SPREAD_CONTENDED : SPREAD).flatMap(
        (target) => draftOf(problem, putIn(problem, partial.queues, o, target)) ?? [],
      ),
    );
    beam =
      o === steps.at(-1)
        ? tried.sort(byPurpose(o, due)).slice(0, 1)
        : thin(undominated(tried, o), contended ? BEAM_WIDTH_CONTENDED : BEAM_WIDTH);
  }
  return beam[0] ?? null;
}

/** On time before late; then fewest changeover seconds, least cost; among late ones the soonest first of all. */
const byPurpose =
  (o: number, due: number) =>
  (a: Draft, b: Draft): number => {
    const late = (draft: Draft) => Math.max(0, draft.timing.end[o]! - due);
    return compareTimes(late(a), late(b)) || byChangeover(a, b) || a.timing.end[o]! - b.timing.end[o]!;
  };

const byChangeover = (a: Draft, b: Draft): number =>
  a.changeoverSeconds - b.changeoverSeconds || a.objective - b.objective;

/** Of each changeover total the soonest end and the least cost, where no smaller total ends as soon. */
function undominated(tried: readonly Draft[], o: number): Draft[] {
  const end = (draft: Draft) => draft.timing.end[o]!;
  const kept = new Set<Draft>();
  const totals = [...new Set(tried.map((draft) => draft.changeoverSeconds))].sort((a, b) => a - b);
  let soonest = Infinity;
  for (const total of totals) {
    const equal = tried.filter((draft) => draft.changeoverSeconds === total);
    const first = equal.reduce((best, draft) => (end(draft) < end(best) ? draft : best));
    if (end(first) >= soonest) continue;
    soonest = end(first);
    kept.add(equal.reduce((best, draft) => (draft.objective < best.objective ? draft : best)));
    kept.add(first);
  }
  return [...kept];
}

/**
 * Positions worth timing. Read off from when the step can start, a position counts when it adds fewer changeover seconds than
 * every earlier one, or as few as such a position; of each cost a few, evenly spread.
 */
function promisingPositions(problem: Problem, draft: Draft, o: number, spread: number): QueuePosition[] {
  const ready = readyAt(problem, draft.timing, o);
  return Array.from(problem.eligible[o]!).flatMap((machine) => {
    const costs = addedChangeover(problem, draft, machine, o);
    const byCost = new Map<number, QueuePosition[]>();
    let least = Infinity;
    for (let position = positionAt(problem, draft, machine, ready); position < costs.length; position++) {
      const cost = costs[position]!;
      if (cost < least) byCost.set(cost, []);
      least = Math.min(least, cost);
      byCost.get(cost)?.push({ machine, position });
    }
    return [...byCost.values()].flatMap((targets) => thin(targets, spread));
  });
}

/** Changeover seconds that the operation adds at each position of a machine's queue, next to its two neighbours. */
function addedChangeover(problem: Problem, draft: Draft, machine: number, o: number): number[] {
  const setup = problem.setups[machine]!;
  const queue = Array.from(draft.queues[machine]!);
  const own = setup.classOf[o]!;
  let state = problem.initialState[machine]!;
  return [...queue, -1].map((next) => {
    const before = setup.row(state)[own]!;
    if (next === -1) return before;
    const kind = setup.classOf[next]!;
    const added = before + setup.row(setup.after(state, own))[kind]! - setup.row(state)[kind]!;
    state = setup.after(state, kind);
    return added;
  });
}
