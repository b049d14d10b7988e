import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Problem, Queues, Schedule, ScheduledOperation } from './problem.ts';
import { objectiveOf, termsOf } from './score.ts';
import { emptyTiming, type Timing } from './timing.ts';
import { timeQueues } from './time-queues.ts';
import { NEVER, rewind } from './working-time.ts';

/**
 * The plan's times: every queue worked off in order, each operation as early as it can be (the rules are at
 * `timeQueues`). Pins are not enforced here: a queue is a queue. Seconds on the problem's axis.
 * @returns the schedule, or why there is none: an operation unknown, missing, listed twice or on a machine that cannot
 *   do it; a started one that is not first on its machine; queues that wait for each other; open hours that run out
 */
export function decode(problem: Problem, queues: Queues): Result<Schedule> {
  const read = readQueues(problem, queues);
  if (!read.ok) return read;
  const timing = timeQueues(problem, read.value, emptyTiming(problem));
  const refusals =
    timing.placed < problem.operations
      ? [circularWait(problem, read.value, timing)]
      : outOfHours(problem, timing);
  return refusals.length > 0 ? err(...refusals) : ok(scheduleOf(problem, read.value, timing));
}

/** Queues by name as operation numbers by machine, or what is wrong with them. */
export function readQueues(problem: Problem, queues: Queues): Result<Int32Array[]> {
  const refusals: Issue[] = [];
  const seen = new Uint8Array(problem.operations);
  for (const id of Object.keys(queues))
    if (!problem.machineAt.has(id))
      refusals.push(
        issue(
          `machine ${id}`,
          'queue',
          `There is a queue for machine ${id}, which is not in the shop.`,
          'Remove the queue.',
        ),
      );
  const numbers: number[][] = problem.tracks.map(() => []);
  for (const { id: machineId } of problem.input.machines)
    for (const id of queues[machineId] ?? []) {
      const o = problem.operationAt.get(id);
      const refuse = (message: string, advice: string) =>
        refusals.push(issue(`operation ${id}`, 'queue', message, advice));
      if (o === undefined) {
        refuse(
          `The queue of ${machineId} names operation ${id}, which is not in the plan.`,
          'Remove it from the queue.',
        );
        continue;
      }
      const m = problem.machineAt.get(machineId)!.find((track) => problem.eligible[o]!.includes(track));
      if (seen[o]) refuse(`Operation ${id} is in the queues twice.`, 'Keep one of the two positions.');
      else if (m === undefined)
        refuse(`Machine ${machineId} cannot do operation ${id}.`, 'Move it to a machine that can.');
      seen[o] = 1;
      if (m !== undefined) numbers[m]!.push(o);
    }
  seen.forEach((found, o) => {
    const id = problem.operationIds[o]!;
    if (!found)
      refusals.push(
        issue(
          `operation ${id}`,
          'queue',
          `Operation ${id} is in no queue.`,
          'Put it in the queue of a machine that can do it.',
        ),
      );
  });
  numbers.forEach((queue, m) => {
    for (const o of queue.filter(
      (o, position) => !Number.isNaN(problem.startedAt[o]!) && (position > 0 || startedOn(problem, o) !== m),
    ))
      refusals.push(
        issue(
          `operation ${problem.operationIds[o]}`,
          'queue',
          `Operation ${problem.operationIds[o]} is already running but does not come first on its machine.`,
          'Put it first on the machine that runs it.',
        ),
      );
  });
  return refusals.length > 0 ? err(...refusals) : ok(numbers.map((queue) => Int32Array.from(queue)));
}

function startedOn(problem: Problem, o: number): number {
  return problem.front.findIndex((front) => front[0] === o);
}

/** Names the heads that wait for each other: following "waits for" from any of them comes round in a circle. */
function circularWait(problem: Problem, queues: readonly Int32Array[], timing: Timing): Issue {
  const placed = new Set<number>();
  const placeable = (o: number) => timing.machine[o] !== -1;
  queues.forEach((queue) => queue.forEach((o) => placeable(o) && placed.add(o)));
  const heads = queues.map((queue) => queue.find((o) => !placed.has(o)));
  const home = new Map(queues.flatMap((queue, m) => [...queue].map((o) => [o, m] as const)));
  let o = heads.find((head) => head !== undefined)!;
  const path: number[] = [];
  while (!path.includes(o)) {
    path.push(o);
    let missing = o - 1;
    while (missing > problem.firstOf[problem.jobOf[o]!]! && !placed.has(missing - 1)) missing -= 1;
    o = heads[home.get(missing)!]!;
  }
  const names = path.slice(path.indexOf(o)).map((each) => problem.operationIds[each]!);
  return issue(
    `operation ${names[0]}`,
    'queue',
    `These operations wait for each other in a circle: ${names.join(', ')}.`,
    'Move one of them behind the step it waits for.',
  );
}

function outOfHours(problem: Problem, timing: Timing): Issue[] {
  const last = new Map<number, number>();
  timing.end.forEach((end, o) => {
    const m = timing.machine[o]!;
    if (end >= NEVER && !last.has(m)) last.set(m, o);
  });
  return [...last].map(([m, o]) =>
    issue(
      `machine ${machineIdOf(problem, m)}`,
      'open',
      `The open hours of machine ${machineIdOf(problem, m)} end before operation ${problem.operationIds[o]} is done.`,
      'Give open hours further ahead, or plan less work on it.',
    ),
  );
}

/** Names for numbers. */
export function nameQueues(problem: Problem, queues: readonly ArrayLike<number>[]): Queues {
  return Object.fromEntries(
    problem.input.machines.map(({ id }) => [
      id,
      problem.machineAt.get(id)!.flatMap((m) => Array.from(queues[m]!, (o) => problem.operationIds[o]!)),
    ]),
  );
}

/** The name of a machine by its number. */
export const machineIdOf = ({ tracks }: Pick<Problem, 'tracks'>, m: number): string => tracks[m]!.machine.id;

/** The schedule with the times of a complete timing. */
export function scheduleOf(problem: Problem, queues: readonly ArrayLike<number>[], timing: Timing): Schedule {
  const { input } = problem;
  const tracked = problem.tracks.flatMap(({ machine }, m) =>
    Array.from(queues[m]!, (o): ScheduledOperation => {
      const job = problem.jobOf[o]!;
      const start = timing.start[o]!;
      const changeoverSeconds = timing.changeover[o]!;
      return {
        job: input.jobs[job]!.id,
        index: o - problem.firstOf[job]!,
        operation: problem.operationIds[o]!,
        machine: machine.id,
        changeoverStart: rewind(problem.open[m]!, start, changeoverSeconds),
        changeoverSeconds,
        start,
        end: timing.end[o]!,
      };
    }),
  );
  const onMachines = input.machines.map(({ id, unlimited }) => {
    const own = tracked.filter(({ machine }) => machine === id);
    // Where any number go on at once there is no order but that of time.
    return { id, own: unlimited ? own.sort((a, b) => a.start - b.start) : own };
  });
  const terms = termsOf(problem, timing.end, timing.changeover);
  const ends = Object.fromEntries(
    input.jobs.map((job, j) => [job.id, timing.end[problem.firstOf[j + 1]! - 1]!]),
  );
  return {
    queues: Object.fromEntries(onMachines.map(({ id, own }) => [id, own.map((o) => o.operation)])),
    operations: onMachines.flatMap(({ own }) => own),
    ends,
    terms,
    objective: objectiveOf(input.objective, terms),
  };
}
