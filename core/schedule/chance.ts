import { openSecondsBetween } from '../estimate/learn/open-seconds.ts';
import { spreadFor, type RatioSpread, type Spread } from '../estimate/learn/spread.ts';
import { bad, good, problem as refusal, type Result } from '../shop/result.ts';
import { decode, readQueues } from './decode.ts';
import type { Problem, Queues } from './problem.ts';
import { Rng } from './search/rng.ts';
import { emptyTiming, timeQueues } from './timing.ts';
import { intervalAt, NEVER, type WorkingTime } from './working-time.ts';

/** How many times the plan is played through, and from which seed. */
export interface ChanceOptions {
  readonly runs: number;
  readonly seed: number;
}

/** What playing the plan through says of one job; instants on the problem's axis. */
export interface JobChance {
  /** Share of runs that ended by the due date; 1 without one. */
  readonly onTime: number;
  /** Ended by then in so many of a hundred runs; null when the open hours run out first. */
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p80: number | null;
  readonly p90: number | null;
  /** The end in each run, ascending. */
  readonly ends: Float64Array;
}

/** By job id. */
export type Chances = Readonly<Record<string, JobChance>>;

const MOST_RUNS = 100_000;
const DAY = 86_400;
/** Closed this long, a machine begins another day; shorter gaps are breaks (our own limit). */
const NIGHT = 4 * 3600;

/**
 * How likely each job is to be on time, by playing the queues through again and again with times drawn from what
 * happened: each operation takes its seconds × a ratio of its machine × a factor of the machine's day, where days
 * differ. Order, open hours and changeovers are the plan's. A begun operation is drawn from the ratios that agree with
 * its not having ended by `now`. Same seed, same chances; the same draws fall to the same operations whatever the queues,
 * so that two plans compare fairly.
 * @returns a chance per job; or why the queues have no times, or what is wrong with the options
 */
export function chances(
  problem: Problem,
  queues: Queues,
  spread: Spread,
  { runs, seed }: ChanceOptions,
): Result<Chances> {
  if (!Number.isInteger(runs) || runs < 1 || runs > MOST_RUNS || !Number.isFinite(seed))
    return bad(
      refusal(
        'chances',
        'runs',
        `A plan cannot be played through ${runs} times from seed ${seed}.`,
        `Give a whole number from 1 to ${MOST_RUNS} (1,000 is usual), and a number as seed.`,
      ),
    );
  const present = decode(problem, queues);
  if (!present.ok) return present;
  const read = readQueues(problem, queues);
  if (!read.ok) return read;

  const seconds = Int32Array.from(problem.seconds);
  const drawn: Problem = { ...problem, seconds };
  const draw = drawer(problem, present.value.operations, spread, seed);
  const timing = emptyTiming(problem);
  const ends = problem.input.jobs.map(() => new Float64Array(runs));
  for (let run = 0; run < runs; run++) {
    draw(seconds);
    timeQueues(drawn, read.value, timing);
    ends.forEach((of, j) => (of[run] = timing.end[problem.firstOf[j + 1]! - 1]!));
  }
  return good(
    Object.fromEntries(
      problem.input.jobs.map((job, j) => [job.id, chanceOf(ends[j]!.sort(), problem.due[j]!)]),
    ),
  );
}

/** One operation as it is drawn. */
interface Draw {
  /** Where its seconds stand in the problem's table. */
  readonly at: number;
  readonly seconds: number;
  readonly spread: RatioSpread;
  /** Number of its machine's day. */
  readonly day: number;
  /** Open seconds it has been running; 0 when not begun. */
  readonly elapsed: number;
}

/** Makes the function that fills the table with one run's seconds. */
function drawer(
  problem: Problem,
  operations: readonly { readonly operation: string; readonly machine: string; readonly start: number }[],
  spread: Spread,
  seed: number,
): (seconds: Int32Array) => void {
  // Days have a stream of their own: how many there are depends on the queues, the operations' draws must not.
  const [ofOperations, ofDays] = [new Rng(seed), new Rng(seed + 1)];
  const days = new Map<string, number>();
  const daySpreads: RatioSpread[] = [];
  const draws = operations.map(({ operation, machine, start }): Draw => {
    const m = problem.machineAt.get(machine)!;
    const at = problem.operationAt.get(operation)! * problem.machines + m;
    const own = spreadFor(spread, machine);
    const key = `${m} ${dayOf(problem.open[m]!, start)}`;
    if (!days.has(key)) days.set(key, daySpreads.push(own) - 1);
    const begun = !Number.isNaN(problem.startedAt[problem.operationAt.get(operation)!]!);
    const elapsed = begun ? openSecondsBetween(problem.open[m]!, start, problem.input.now) : 0;
    return { at, seconds: problem.seconds[at]!, spread: own, day: days.get(key)!, elapsed };
  });
  draws.sort((a, b) => a.at - b.at);
  const factors = new Float64Array(daySpreads.length);
  return (seconds) => {
    daySpreads.forEach(({ days: of }, k) => (factors[k] = of[ofDays.below(of.length)]!));
    for (const { at, seconds: planned, spread: own, day, elapsed } of draws) {
      const whole = planned * factors[day]!;
      // Begun work has not ended by now: ratios that say it has are out.
      const first = elapsed === 0 ? 0 : Math.min(above(own.ratios, elapsed / whole), own.ratios.length - 1);
      const ratio = own.ratios[first + Math.floor(ofOperations.next() * (own.ratios.length - first))]!;
      seconds[at] = Math.round(whole * ratio);
    }
  };
}

/** Index of the first ratio above a limit; the length when there is none. */
function above(ratios: readonly number[], limit: number): number {
  const index = ratios.findIndex((ratio) => ratio > limit);
  return index === -1 ? ratios.length : index;
}

/** The opening that began the machine's day at an instant; round the clock, every 24 h count as a day. */
function dayOf(open: WorkingTime, at: number): number {
  let k = intervalAt(open, at);
  while (k > 0 && open.start[k]! - open.end[k - 1]! < NIGHT) k -= 1;
  const opening = Math.max(open.start[k]!, 0);
  return opening + DAY * Math.floor((at - opening) / DAY);
}

/** The least of ascending ends by which that share of the runs has ended; null when the hours run out first. */
function endAt(ends: Float64Array, share: number): number | null {
  const end = ends[Math.ceil(share * ends.length) - 1]!;
  return end < NEVER ? end : null;
}

function chanceOf(ends: Float64Array, due: number): JobChance {
  const late = ends.findIndex((end) => end > due);
  return {
    onTime: late === -1 ? 1 : late / ends.length,
    p10: endAt(ends, 0.1),
    p50: endAt(ends, 0.5),
    p80: endAt(ends, 0.8),
    p90: endAt(ends, 0.9),
    ends,
  };
}

/**
 * The earliest end to promise so that it is kept with the wished confidence.
 * @param confidence above 0, below 1 (0.8: kept in eight of ten weeks like this)
 * @returns the instant; or a problem: an unknown job, a confidence that is none, open hours that run out first
 */
export function promiseAt(all: Chances, jobId: string, confidence: number): Result<number> {
  const chance = all[jobId];
  const refuse = (field: string, message: string, advice: string) =>
    bad(refusal(`job ${jobId}`, field, message, advice));
  if (chance === undefined)
    return refuse('id', `Job ${jobId} is not in the plan.`, 'Plan it first, then ask for a date.');
  if (!(confidence > 0 && confidence < 1))
    return refuse(
      'confidence',
      `A promise cannot be kept with a confidence of ${confidence}.`,
      'Give a share above 0 and below 1, like 0.8.',
    );
  const end = endAt(chance.ends, confidence);
  if (end !== null) return good(end);
  return refuse(
    'open',
    `The open hours end before job ${jobId} is done with a confidence of ${confidence}.`,
    'Give open hours further ahead, or plan less work.',
  );
}
