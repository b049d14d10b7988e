import { Rng } from '../../rng.ts';
import { isContended } from '../contention.ts';
import type { Problem } from '../problem.ts';
import { draftOf, endOf, putIn, positionOf, stepsOf, takeOut, thin, type Draft } from '../what-if/draft.ts';

/** Positions tried per operation and machine in one go; timing takes ten times as long with limited crews or things shared. */
const MOST_POSITIONS = 30;
const MOST_POSITIONS_CONTENDED = 6;
/** Positions on either side of its own that are always among them. */
const CLOSE = 3;
/** So many operations are looked at before the first of them is moved. */
const FIRST_LOOK = 24;
/** So often is an operation looked at for each that may be moved; then it is time for the search of everything. */
const LOOKS_A_MOVE = 12;
const TINY = 1e-6;

/**
 * The operations that a breakdown may move: loose steps of jobs that now end later than in the plan that was published, or
 * stood in none, those first whose jobs lose most lateness by it; before all others the steps on these machines, with the
 * later ones of the same jobs.
 */
export function delayedBy(problem: Problem, draft: Draft, machines: ReadonlySet<number>): number[] {
  const lateness = (job: number, end: number) => problem.weight[job]! * Math.max(0, end - problem.due[job]!);
  const lost = (job: number) =>
    lateness(job, endOf(problem, draft, job)) - (lateness(job, problem.reference[job]!) || 0);
  const steps = Array.from({ length: problem.jobs }, (_, job) => job)
    .filter((job) => !(endOf(problem, draft, job) <= problem.reference[job]!))
    .sort((a, b) => lost(b) - lost(a) || a - b)
    .map((job) => stepsOf(problem, job));
  const near = steps.flatMap((own) => {
    const first = own.findIndex((o) => machines.has(draft.timing.machine[o]!));
    return first === -1 ? [] : own.slice(first);
  });
  return [...new Set([...near, ...steps.flat()])].filter((o) => !problem.fixed[o]);
}

export interface FewMoves {
  /** The operations that may be moved, the most urgent first. */
  readonly operations: readonly number[];
  /** At most so many may stand elsewhere in the end. */
  readonly most: number;
  /** How many stand elsewhere in queues. */
  readonly moved: (draft: Draft) => number;
  readonly seed: number;
}

/**
 * Moves single operations, each to where the plan costs least, the one that gains most first, until none gains or so many
 * stand elsewhere as may. What a move gains changes with those before it, as a rule to less; so the one that gained most
 * when it was looked at last is looked at again, and moved only if it still gains as much as the next one did (lazy greedy).
 * It yields after each look, the same draft when nothing moved.
 * Source: M. Minoux, Optimization Techniques, Lecture Notes in Control and Information Sciences 7, 1978, pp. 234-243
 * (accelerated greedy; from memory). There gains only fall; here they may rise, so the order is a rule of thumb.
 */
export function* moveFew(problem: Problem, start: Draft, few: FewMoves): Generator<Draft, void> {
  const { operations, most, seed } = few;
  const rng = new Rng(seed);
  const unseen = [...operations];
  const gains = new Map<number, number>();
  let best = start;
  let looks = FIRST_LOOK + LOOKS_A_MOVE * most;
  while (looks > 0) {
    const batch = unseen.splice(0, FIRST_LOOK);
    if (batch.length === 0) return;
    for (const o of rng.shuffled(batch)) {
      looks -= 1;
      gains.set(o, best.objective - bestPosition(problem, best, o, few).objective);
      yield best;
    }
    for (let top = greatest(gains); looks > 0 && top !== null; top = greatest(gains)) {
      looks -= 1;
      const moved = bestPosition(problem, best, top, few);
      const gain = best.objective - moved.objective;
      gains.set(top, gain);
      if (greatest(gains) === top) {
        best = moved;
        gains.set(top, 0);
      }
      yield best;
    }
  }
}

/** The operation that gained most when it was looked at last; null when none gained. */
function greatest(gains: ReadonlyMap<number, number>): number | null {
  let top: number | null = null;
  for (const [o, gain] of gains) if (gain > TINY && (top === null || gain > gains.get(top)!)) top = o;
  return top;
}

/** The plan with the operation where the plan costs least; the plan as it is when no other position gains, or may be taken. */
function bestPosition(problem: Problem, draft: Draft, o: number, { most, moved }: FewMoves): Draft {
  const apart = takeOut(problem, draft.queues, [o]);
  const home = draft.timing.machine[o]!;
  const spread = isContended(problem) ? MOST_POSITIONS_CONTENDED : MOST_POSITIONS;
  let best = draft;
  for (const machine of problem.eligible[o]!) {
    const front = problem.front[machine]!.length;
    const positions = Array.from({ length: apart[machine]!.length - front + 1 }, (_, k) => front + k);
    const own = positionOf(draft, o);
    const close = machine === home ? positions.filter((position) => Math.abs(position - own) <= CLOSE) : [];
    for (const position of new Set([...close, ...thin(positions, spread)])) {
      const tried = draftOf(problem, putIn(problem, apart, o, { machine, position }));
      if (tried !== null && tried.objective < best.objective - TINY && moved(tried) <= most) best = tried;
    }
  }
  return best;
}
