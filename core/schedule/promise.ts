import { ok, type Result } from '../result.ts';
import { scheduleOf } from './decode.ts';
import type { Problem, Queues, Schedule } from './problem.ts';
import { tryPositions, type Offer } from './promise/positions.ts';
import { draftOf, endOf, endsOf, stepsOf, takeOut, thin } from './what-if/draft.ts';
import { planWithout, readQuestion } from './what-if/question.ts';
import { madeLate, shiftsBetween, type JobShift } from './what-if/shifts.ts';

/** A date that can be promised for a job, and what it costs the others. */
export interface DateOffer {
  /** The job's end, on the problem's axis. */
  readonly end: number;
  readonly queues: Queues;
  readonly schedule: Schedule;
  /** Jobs that become late, or later late, than in the plan without this one. */
  readonly makesLate: readonly JobShift[];
  /** Change of the objective against the plan without the job, what the job itself adds included. */
  readonly objectiveAdded: number;
}

interface DatePromise {
  readonly job: string;
  /** The earliest end found that makes nothing else late; null when every position makes something late. */
  readonly safe: DateOffer | null;
  /** Earlier ends, soonest first, each cheaper than those before it: what they would cost. At most four. */
  readonly earlier: readonly DateOffer[];
}

/** Earlier dates shown. */
const MOST_EARLIER = 4;

/**
 * The date to promise for a job that is in the queues already (it does not matter where): the earliest at which its
 * steps can be done without making any other job late, or later late, than it would be without this one. Its positions
 * are tried step by step, the soonest first, each by timing the full plan; nothing else is moved. Fixed steps stay.
 * @returns the promise; or why there is none: a job or operation that is not in the plan, queues that cannot be timed
 */
export function promiseDate(problem: Problem, queues: Queues, jobId: string): Result<DatePromise> {
  const question = readQuestion(problem, queues, [jobId]);
  if (!question.ok) return question;
  const before = planWithout(problem, queues, [jobId]);
  if (!before.ok) return before;
  const job = question.value.jobs[0]!;
  const loose = stepsOf(problem, job);
  const apart = draftOf(problem, takeOut(problem, question.value.queues, loose));
  const end = ({ draft }: Offer) => endOf(problem, draft, job);
  const offers = [...(apart === null ? [] : tryPositions(problem, apart, job))].sort(
    (a, b) => end(a) - end(b) || a.draft.objective - b.draft.objective,
  );
  const safe = offers.find(({ harm }) => harm === 0) ?? null;
  const earlier = offers.filter((offer) => safe === null || end(offer) < end(safe));
  const told = ({ draft }: Offer): DateOffer => {
    const schedule = scheduleOf(problem, draft.queues, draft.timing);
    return {
      end: schedule.ends[jobId]!,
      queues: schedule.queues,
      schedule,
      makesLate: madeLate(shiftsBetween(problem, endsOf(problem, apart!), schedule.ends, [jobId])),
      objectiveAdded: schedule.objective - before.value.objective,
    };
  };
  return ok({
    job: jobId,
    safe: safe && told(safe),
    earlier: thin(cheaperAndCheaper(earlier), MOST_EARLIER).map(told),
  });
}

/** Of offers by their ends, those that cost less than all before them. */
function cheaperAndCheaper(offers: readonly Offer[]): Offer[] {
  let least = Infinity;
  return offers.filter(({ draft }) => {
    const cheaper = draft.objective < least;
    least = Math.min(least, draft.objective);
    return cheaper;
  });
}
