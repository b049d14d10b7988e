import { err, ok, issue, type Result } from '../result.ts';
import { improve } from './improve.ts';
import type { Problem, Queues } from './problem.ts';
import { putInFront } from './rush/front.ts';
import { putInRun } from './rush/run.ts';
import { wayOf, wayOfDraft, type RushCase, type RushWay } from './rush/way.ts';
import { draftOf, stepsOf, takeOut, type Draft } from './what-if/draft.ts';
import { planWithout, readQuestion } from './what-if/question.ts';
import { compareTimes } from './rules/edd.ts';

/**
 * Two quick ways to take a rush into a plan: at the front, and in its run; each with what it costs against the plan
 * without the rush. The jobs are in the queues already, it does not matter where. Several are placed in turn by due
 * date, so that the most urgent comes first. Started, frozen and pinned operations keep their positions, the rush's own too.
 * @returns `front`, then `run`; or why not: jobs or operations that are not in the plan, no jobs at all, queues that
 *   cannot be timed
 */
export function insertRush(
  problem: Problem,
  queues: Queues,
  jobIds: readonly string[],
): Result<readonly RushWay[]> {
  const read = readRush(problem, queues, jobIds);
  if (!read.ok) return read;
  const { rush, apart } = read.value;
  const urgent = [...rush.jobs].sort((a, b) => compareTimes(problem.due[a]!, problem.due[b]!) || a - b);
  const inTurn = (jobs: readonly number[], put: typeof putInFront) =>
    jobs.reduce<Draft | null>((draft, job) => draft && put(problem, draft, job), apart);
  const front = inTurn([...urgent].reverse(), putInFront);
  const run = inTurn(urgent, putInRun);
  if (front === null || run === null) return err(noPosition(jobIds));
  return ok([wayOfDraft(rush, 'front', front), wayOfDraft(rush, 'run', run)]);
}

/**
 * The third way: everything planned again outside what is started, frozen or pinned, started from the plan given (the
 * better of the two quick ways is a good one). It yields every few milliseconds of work, so that the host keeps the
 * clock; the same way until a better plan is found, none worse than the one before. Same seed, same ways.
 * @returns the search, which may end without a way when no plan fits into the open hours; or why not
 */
export function replanRush(
  problem: Problem,
  queues: Queues,
  jobIds: readonly string[],
  { seed }: { readonly seed: number },
): Result<Generator<RushWay, void>> {
  const read = readRush(problem, queues, jobIds);
  return read.ok ? ok(replan(read.value.rush, queues, seed)) : read;
}

function* replan(rush: RushCase, start: Queues, seed: number): Generator<RushWay, void> {
  let way: RushWay | null = null;
  for (const { schedule } of improve(rush.problem, { seed, start })) {
    if (way?.schedule !== schedule) way = wayOf(rush, 'replan', schedule);
    yield way;
  }
}

/** The rush, the plan without it, and the queues with its loose operations taken out. */
function readRush(
  problem: Problem,
  queues: Queues,
  jobIds: readonly string[],
): Result<{ readonly rush: RushCase; readonly apart: Draft }> {
  if (jobIds.length === 0)
    return err(issue('rush', 'jobs', 'No line was named as the rush.', 'Choose at least one line.'));
  const question = readQuestion(problem, queues, jobIds);
  if (!question.ok) return question;
  const { jobs } = question.value;
  const before = planWithout(problem, queues, jobIds);
  if (!before.ok) return before;
  const loose = jobs.flatMap((job) => stepsOf(problem, job));
  const apart = draftOf(problem, takeOut(problem, question.value.queues, loose));
  if (apart === null) return err(noPosition(jobIds));
  return ok({ rush: { problem, jobs, before: before.value }, apart });
}

const noPosition = (jobIds: readonly string[]) =>
  issue(
    `line ${jobIds.join(', ')}`,
    'queue',
    `${jobIds.join(', ')} cannot be fitted in anywhere: what is fixed ahead waits for it, or the open hours run out.`,
    'Remove a pin, or give open hours further ahead.',
  );
