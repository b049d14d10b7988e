import { err, ok, issue, type Result } from '../result.ts';
import { nameQueues, scheduleOf } from './decode.ts';
import { improve } from './improve.ts';
import type { Problem, Queues, Schedule } from './problem.ts';
import { moveFew, delayedBy } from './repair/few.ts';
import { movedIn } from './repair/moved.ts';
import { draftOf, type Draft } from './what-if/draft.ts';
import { readQuestion, type Question } from './what-if/question.ts';

/** A plan after something went wrong. */
export interface Repair {
  readonly queues: Queues;
  readonly schedule: Schedule;
  readonly objective: number;
  /** The fewest operations that must be put elsewhere to get from the published order to this one. */
  readonly movedOperations: number;
  /** Jobs late now; those of them that keeping the published order would have on time; and the other way round. */
  readonly late: readonly string[];
  readonly madeLate: readonly string[];
  readonly saved: readonly string[];
}

/** Two ways to repair a plan; the published order where nothing better was found. */
export interface Repairs {
  /** At most so many operations stand elsewhere. */
  readonly few: Repair;
  /** Whatever is not fixed may stand elsewhere. */
  readonly best: Repair;
}

export interface RepairOptions {
  readonly seed: number;
  /** How many operations the repair of few moves may move. */
  readonly most: number;
  /** Where the trouble is: their operations and what follows them may move first. Left out: every machine. */
  readonly machines?: readonly string[];
}

const TINY = 1e-6;

/**
 * Plans for a shop in which a machine broke down or work began late. The problem holds the new hours and facts, and as
 * `reference` the ends of the plan that was published; a move must gain more than the stability it costs, by the weight the
 * objective gives that. The first plans keep the published order and only shift its times. Then single operations that the
 * trouble delays are moved, those that gain most first and at most `most`; after that everything that is not fixed is
 * searched, beginning with these, until the host stops asking. It yields every few milliseconds of work: the same object
 * until a better plan is found, neither plan worse than the one before, the best never worse than the one of few moves.
 * Same seed, same plans.
 * @param queues the published order
 * @returns the search; or why not: machines or operations that are not in the plan, queues that cannot be timed
 */
export function repair(
  problem: Problem,
  queues: Queues,
  { seed, most, machines = problem.input.machines.map(({ id }) => id) }: RepairOptions,
): Result<Generator<Repairs, void>> {
  const unknown = machines.filter((id) => !problem.machineAt.has(id));
  if (unknown.length > 0)
    return err(
      ...unknown.map((id) =>
        issue(`machine ${id}`, 'machines', `Machine ${id} is not in the shop.`, 'Name one that is.'),
      ),
    );
  const question = readQuestion(problem, queues, []);
  if (!question.ok) return question;
  const hurt = new Set(machines.flatMap((id) => problem.machineAt.get(id)!));
  return ok(search(problem, question.value, hurt, { seed, most }));
}

function* search(
  problem: Problem,
  { queues, schedule: published }: Question,
  machines: ReadonlySet<number>,
  { seed, most }: RepairOptions,
): Generator<Repairs, void> {
  const kept = repairOf(problem, published, published);
  let found: Repairs = { few: kept, best: kept };
  yield found;
  const start = draftOf(problem, queues)!;
  const moved = (draft: Draft) =>
    movedIn(problem, published.queues, nameQueues(problem, draft.queues)).length;
  const operations = delayedBy(problem, start, machines);
  for (const draft of moveFew(problem, start, { operations, most, moved, seed })) {
    if (draft.objective < found.few.objective - TINY) {
      const few = repairOf(problem, published, scheduleOf(problem, draft.queues, draft.timing));
      found = { few, best: few };
    }
    yield found;
  }
  const { few } = found;
  for (const { schedule, objective } of improve(problem, { seed, start: few.queues })) {
    if (objective < found.best.objective - TINY)
      found = { few, best: repairOf(problem, published, schedule) };
    yield found;
  }
}

function repairOf(problem: Problem, published: Schedule, schedule: Schedule): Repair {
  const lateIn = ({ ends }: Schedule) =>
    problem.input.jobs.filter(({ id, due }) => due !== null && ends[id]! > due).map(({ id }) => id);
  const was = new Set(lateIn(published));
  const late = lateIn(schedule);
  return {
    queues: schedule.queues,
    schedule,
    objective: schedule.objective,
    movedOperations: movedIn(problem, published.queues, schedule.queues).length,
    late,
    madeLate: late.filter((id) => !was.has(id)),
    saved: [...was].filter((id) => !late.includes(id)),
  };
}
