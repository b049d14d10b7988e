import { err, ok, issue, type Issue, type Result } from '../../result.ts';
import { buildProblem } from '../build.ts';
import { decode, nameQueues, readQueues } from '../decode.ts';
import type { Problem, Queues, Schedule } from '../problem.ts';
import { withFixedPositions, type NumberedQueues } from '../numbered-queues.ts';

/** A question about some jobs of a plan, read and found sound. */
export interface Question {
  /** Started, frozen and pinned operations are where they belong. */
  readonly queues: NumberedQueues;
  /** These queues with their times. */
  readonly schedule: Schedule;
  /** Job numbers in the order asked, each once. */
  readonly jobs: readonly number[];
}

/**
 * Reads what a question about jobs is asked of.
 * @returns numbers for names; or why it cannot be answered: a job that is not in the plan, queues that `decode` refuses,
 *   a shop with one job order on all machines (there no step can move by itself)
 */
export function readQuestion(problem: Problem, queues: Queues, jobIds: readonly string[]): Result<Question> {
  const refusals = jobIds.filter((id) => !problem.jobAt.has(id)).map(unknownJob);
  if (problem.input.sameOrder)
    refusals.push(
      issue(
        `problem ${problem.input.name}`,
        'sameOrder',
        'This shop keeps one job order on all machines, so single steps cannot be moved.',
        'Search for a new order of all jobs instead.',
      ),
    );
  if (refusals.length > 0) return err(...refusals);
  const read = readQueues(problem, queues);
  if (!read.ok) return read;
  const placed = withFixedPositions(problem, read.value);
  const schedule = decode(problem, nameQueues(problem, placed));
  if (!schedule.ok) return schedule;
  return ok({
    queues: placed,
    schedule: schedule.value,
    jobs: [...new Set(jobIds)].map((id) => problem.jobAt.get(id)!),
  });
}

const unknownJob = (id: string): Issue =>
  issue(
    `line ${id}`,
    'job',
    `Line ${id} is not among the lines to be planned.`,
    'Choose an open line; a held, finished or cancelled one is not planned.',
  );

/**
 * The same problem without some jobs: the shop as if they had never come in.
 * @returns the problem, or which of the jobs is not in it
 */
export function withoutJobs(problem: Problem, jobIds: readonly string[]): Result<Problem> {
  const unknown = jobIds.filter((id) => !problem.jobAt.has(id));
  if (unknown.length > 0) return err(...unknown.map(unknownJob));
  const { input } = problem;
  const gone = new Set(jobIds);
  const jobs = input.jobs.filter((job) => !gone.has(job.id));
  const left = new Set(jobs.flatMap((job) => job.operations.map((operation) => operation.id)));
  // Pins inside the front say nothing more than the front does, and their positions would not fit a shorter one.
  const fronts = new Set(
    problem.front.flatMap((front) => Array.from(front, (o) => problem.operationIds[o]!)),
  );
  return buildProblem({
    ...input,
    jobs,
    pins: (input.pins ?? []).filter((pin) => left.has(pin.operation) && !fronts.has(pin.operation)),
    frozen: Object.fromEntries(
      Object.entries(input.frozen ?? {}).map(([machine, ids]) => [machine, ids.filter((id) => left.has(id))]),
    ),
    reference: Object.fromEntries(Object.entries(input.reference ?? {}).filter(([id]) => !gone.has(id))),
  });
}

/**
 * The plan as if some jobs had never come in: the order of the others as it is, pinned operations at their position.
 * @returns its times; or what `withoutJobs` and `readQuestion` refuse
 */
export function planWithout(problem: Problem, queues: Queues, jobIds: readonly string[]): Result<Schedule> {
  const without = withoutJobs(problem, jobIds);
  if (!without.ok) return without;
  const { operationAt } = without.value;
  const left = Object.fromEntries(
    Object.entries(queues).map(([machine, ids]) => [machine, ids.filter((id) => operationAt.has(id))]),
  );
  const question = readQuestion(without.value, left, []);
  return question.ok ? ok(question.value.schedule) : question;
}
