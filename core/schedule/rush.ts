import { err, ok, issue, type Result } from '../result.ts';
import { buildProblem } from './build.ts';
import { decode } from './decode.ts';
import { improve } from './improve.ts';
import type { Problem, Queues, Schedule } from './problem.ts';
import { byAdvice } from './rush/advise.ts';
import { fillIdle } from './rush/fill.ts';
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
 * Stretches for which a machine would stand still before a step of the rush are filled with work that waits there.
 * @param asPlanned the same problem as it is without the rush, where that takes from others what they start with: it says
 *   when they would end
 * @returns `front`, then `run`; or why not: jobs or operations that are not in the plan, no jobs at all, queues that
 *   cannot be timed
 */
export function insertRush(
  problem: Problem,
  queues: Queues,
  jobIds: readonly string[],
  asPlanned: Problem = problem,
): Result<readonly RushWay[]> {
  const read = readRush(problem, queues, jobIds, asPlanned);
  if (!read.ok) return read;
  const { rush, apart } = read.value;
  const front = putAll(rush, apart, 'front');
  const run = putAll(rush, apart, 'run');
  return front === null || run === null ? err(noPosition(jobIds)) : ok([front, run]);
}

/** The first of the two alone: as soon as the rush can be ready. */
export function soonestRush(problem: Problem, queues: Queues, jobIds: readonly string[]): Result<RushWay> {
  const read = readRush(problem, queues, jobIds);
  if (!read.ok) return read;
  const front = putAll(read.value.rush, read.value.apart, 'front');
  return front === null ? err(noPosition(jobIds)) : ok(front);
}

/** The whole rush put in, in turn: at the front the most urgent last, so that it stands foremost. */
function putAll(rush: RushCase, apart: Draft, way: 'front' | 'run'): RushWay | null {
  const { problem, jobs } = rush;
  const urgent = [...jobs].sort((a, b) => compareTimes(problem.due[a]!, problem.due[b]!) || a - b);
  const put = way === 'front' ? putInFront : putInRun;
  const placed = (way === 'front' ? urgent.reverse() : urgent).reduce<Draft | null>(
    (draft, job) => draft && put(problem, draft, job),
    apart,
  );
  return placed && wayOfDraft(rush, way, fillIdle(problem, placed, jobs));
}

/** So many times their own importance have the rush's jobs in the search, so that their dates lead it. */
const URGENCY = 20;

/**
 * The third way: everything planned again outside what is started, frozen or pinned, started from the plan given (the
 * quick way that is advised is a good one). The rush's own date comes before what the plan costs (`byAdvice`). It yields
 * every few milliseconds of work, so that the host keeps the clock; the same way until a better one is found, the first
 * being the plan given, none worse than the one before. Same seed, same ways.
 * @returns the search; or why not
 */
export function replanRush(
  problem: Problem,
  queues: Queues,
  jobIds: readonly string[],
  { seed, asPlanned = problem }: { readonly seed: number; readonly asPlanned?: Problem },
): Result<Generator<RushWay, void>> {
  const read = readRush(problem, queues, jobIds, asPlanned);
  if (!read.ok) return read;
  const { rush, plan } = read.value;
  const urgent = withUrgency(problem, jobIds);
  return urgent.ok ? ok(replan(rush, urgent.value, plan, seed)) : urgent;
}

function* replan(rush: RushCase, urgent: Problem, plan: Schedule, seed: number): Generator<RushWay, void> {
  let way = wayOf(rush, 'replan', plan);
  let seen: Queues | null = null;
  yield way;
  for (const { queues } of improve(urgent, { seed, start: plan.queues })) {
    const schedule = queues === seen ? null : decode(rush.problem, queues);
    seen = queues;
    const found = schedule?.ok ? wayOf(rush, 'replan', schedule.value) : null;
    if (found && byAdvice(found, way) < 0) way = found;
    yield way;
  }
}

/** The problem in which the rush's jobs count many times as much. */
function withUrgency({ input }: Problem, jobIds: readonly string[]): Result<Problem> {
  const rush = new Set(jobIds);
  const jobs = input.jobs.map((job) => (rush.has(job.id) ? { ...job, weight: job.weight * URGENCY } : job));
  return buildProblem({ ...input, jobs });
}

/** The rush, the plan without it, the one given, and the queues with its loose operations taken out. */
function readRush(
  problem: Problem,
  queues: Queues,
  jobIds: readonly string[],
  asPlanned: Problem = problem,
): Result<{ readonly rush: RushCase; readonly plan: Schedule; readonly apart: Draft }> {
  if (jobIds.length === 0)
    return err(issue('rush', 'jobs', 'No line was named as the rush.', 'Choose at least one line.'));
  const question = readQuestion(problem, queues, jobIds);
  if (!question.ok) return question;
  const { jobs, schedule: plan } = question.value;
  const before = planWithout(asPlanned, queues, jobIds);
  if (!before.ok) return before;
  const loose = jobs.flatMap((job) => stepsOf(problem, job));
  const apart = draftOf(problem, takeOut(problem, question.value.queues, loose));
  if (apart === null) return err(noPosition(jobIds));
  return ok({ rush: { problem, jobs, before: before.value }, plan, apart });
}

const noPosition = (jobIds: readonly string[]) =>
  issue(
    `line ${jobIds.join(', ')}`,
    'queue',
    `${jobIds.join(', ')} cannot be fitted in anywhere: what is fixed ahead waits for it, or the open hours run out.`,
    'Remove a pin, or give open hours further ahead.',
  );
