import { err, ok, issue, type Result } from '../result.ts';
import { scheduleOf } from './decode.ts';
import { improve } from './improve.ts';
import type { Problem, Queues, Schedule } from './problem.ts';
import { movedOperations } from './repair/moved.ts';
import { improveNearBy, nearBy } from './repair/near.ts';
import { draftOf } from './what-if/draft.ts';
import { readQuestion, type Question } from './what-if/question.ts';

/** A plan after something went wrong. */
export interface Repair {
  /**
   * How much was allowed to change: `published`: nothing, everything waits its turn; `near`: jobs that the trouble
   * delays; `whole`: everything that is not fixed.
   */
  readonly reach: 'published' | 'near' | 'whole';
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

export interface RepairOptions {
  readonly seed: number;
  /** Where the trouble is: their operations and what follows them may move first. Left out: every machine. */
  readonly machines?: readonly string[];
}

const TINY = 1e-6;

/**
 * Plans for a shop in which a machine broke down or work began late. The problem holds the new hours and facts, and as
 * `reference` the ends of the plan that was published; a move must gain more than the stability it costs, by the weight the
 * objective gives that. The first plan keeps the published order and only shifts its times. Then single operations that the
 * trouble delays are moved, and when those gain no more, everything that is not fixed is searched until the host stops
 * asking. It yields every few milliseconds of work: the same object until a better plan is found, none worse than the one
 * before. Same seed, same plans.
 * @param queues the published order
 * @returns the search; or why not: machines or operations that are not in the plan, queues that cannot be timed
 */
export function repair(
  problem: Problem,
  queues: Queues,
  { seed, machines = problem.input.machines.map(({ id }) => id) }: RepairOptions,
): Result<Generator<Repair, void>> {
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
  return ok(search(problem, question.value, hurt, seed));
}

function* search(
  problem: Problem,
  { queues, schedule: published }: Question,
  machines: ReadonlySet<number>,
  seed: number,
): Generator<Repair, void> {
  let best = repairOf(problem, published, 'published', published);
  yield best;
  const start = draftOf(problem, queues)!;
  for (const draft of improveNearBy(problem, start, nearBy(problem, start, machines), seed)) {
    if (draft.objective < best.objective - TINY)
      best = repairOf(problem, published, 'near', scheduleOf(problem, draft.queues, draft.timing));
    yield best;
  }
  for (const { schedule, objective } of improve(problem, { seed, start: best.queues })) {
    if (objective < best.objective - TINY) best = repairOf(problem, published, 'whole', schedule);
    yield best;
  }
}

function repairOf(problem: Problem, published: Schedule, reach: Repair['reach'], schedule: Schedule): Repair {
  const lateIn = ({ ends }: Schedule) =>
    problem.input.jobs.filter(({ id, due }) => due !== null && ends[id]! > due).map(({ id }) => id);
  const was = new Set(lateIn(published));
  const late = lateIn(schedule);
  return {
    reach,
    queues: schedule.queues,
    schedule,
    objective: schedule.objective,
    movedOperations: movedOperations(published.queues, schedule.queues).length,
    late,
    madeLate: late.filter((id) => !was.has(id)),
    saved: [...was].filter((id) => !late.includes(id)),
  };
}
