import { openSecondsBetween } from '../schedule/working-time.ts';
import { spreadFor, type RatioSpread, type Spread } from './spread.ts';
import { err, ok, issue, type Result } from '../result.ts';
import { decode, readQueues } from '../schedule/decode.ts';
import type { Problem, Queues } from '../schedule/problem.ts';
import { Rng } from '../rng.ts';
import { emptyTiming } from '../schedule/timing.ts';
import { timeQueues } from '../schedule/time-queues.ts';
import { intervalAt, NEVER, type WorkingTime } from '../schedule/working-time.ts';
import { DAY } from '../units/duration.ts';

/** How many times the plan is played through, and from which seed. */
export interface ChanceOptions {
  readonly runs: number;
  readonly seed: number;
}

/** What playing the plan through says of one job; instants on the problem's axis. */
interface JobChance {
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

const MOST_RUNS = 10_000;
/** Closed this long, a machine begins another day; shorter gaps are breaks (our own limit). */
const NIGHT = 4 * 3600;

/**
 * How likely each job is to be on time, by playing the queues through again and again with times drawn from what
 * happened: each operation takes its seconds × a ratio of its machine × a factor of the machine's day, where days
 * differ; the whole machine is off by what its records leave open. Order, open hours and changeovers are the plan's. A
 * started operation is drawn from the ratios that agree with its not having ended by `now`. Same seed, same chances; the
 * same draws fall to the same operations whatever the queues, so that two plans compare fairly.
 * @returns a chance per job; or why the queues have no times, or what is wrong with the options
 */
export function chances(
  problem: Problem,
  queues: Queues,
  spread: Spread,
  { runs, seed }: ChanceOptions,
): Result<Chances> {
  if (!Number.isInteger(runs) || runs < 1 || runs > MOST_RUNS || !Number.isFinite(seed))
    return err(
      issue(
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

  return ok(playThrough(problem, read.value, spread, runs, seed));
}

function playThrough(
  problem: Problem,
  queues: readonly Int32Array[],
  spread: Spread,
  runs: number,
  seed: number,
): Chances {
  const seconds = Int32Array.from(problem.seconds);
  const drawn: Problem = { ...problem, seconds };
  const timing = emptyTiming(problem);
  // What is away comes back when it was said to: our own records tell nothing of others' times.
  const spreads = problem.tracks.map(({ machine }) =>
    machine.unlimited ? AS_SAID : spreadFor(spread, machine.id),
  );
  const lots = drawLots(problem, queues, spreads, seed);
  const usual = usualStarts(problem, queues, spreads);
  const passes = spreads.some(({ days }) => days.length > 1) ? 2 : 1;
  const ends = problem.input.jobs.map(() => new Float64Array(runs));
  for (let run = 0; run < runs; run++) {
    const take = lots();
    // A slow day pushes work into the next, which has a factor of its own: the second pass knows who was pushed.
    for (let pass = 0; pass < passes; pass++) {
      take(pass === 0 ? usual : timing.start, seconds);
      timeQueues(drawn, queues, timing);
    }
    ends.forEach((of, j) => (of[run] = timing.end[problem.firstOf[j + 1]! - 1]!));
  }
  return Object.fromEntries(
    problem.input.jobs.map((job, j) => [job.id, chanceOf(ends[j]!.sort(), problem.due[j]!)]),
  );
}

const AS_SAID: RatioSpread = {
  observations: 0,
  median: 1,
  logSpread: 0,
  ratios: [1],
  days: [1],
  standardError: 0,
};

/** Writes one run's seconds into the problem's table, given when each operation starts. */
type Take = (starts: Float64Array, seconds: Int32Array) => void;

/**
 * Draws a run at each call. Operations, machines and days have streams of their own, so that how many days are met does
 * not shift the other draws.
 */
function drawLots(
  problem: Problem,
  queues: readonly Int32Array[],
  spreads: readonly RatioSpread[],
  seed: number,
): () => Take {
  const seeds = new Rng(seed);
  const [ofOperations, ofMachines, ofDays] = [0, 1, 2].map(() => new Rng(seeds.below(2 ** 31 - 1))) as [
    Rng,
    Rng,
    Rng,
  ];
  const openings = problem.open.map(dayOpenings);
  const home = new Int32Array(problem.operations);
  queues.forEach((queue, m) => queue.forEach((o) => (home[o] = m)));
  const elapsed = problem.startedAt.map((at, o) =>
    Number.isNaN(at) ? 0 : openSecondsBetween(problem.open[home[o]!]!, at, problem.input.now),
  );
  return () => {
    const lot = Float64Array.from({ length: problem.operations }, () => ofOperations.next());
    const whole = spreads.map(({ standardError }) => Math.exp(standardError * normal(ofMachines)));
    const days = spreads.map(() => new Map<number, number>());
    const factorAt = (m: number, start: number): number => {
      const { days: of } = spreads[m]!;
      if (of.length === 1) return whole[m]! * of[0]!;
      const day = dayOf(problem.open[m]!, openings[m]!, start);
      if (!days[m]!.has(day)) days[m]!.set(day, of[ofDays.below(of.length)]!);
      return whole[m]! * days[m]!.get(day)!;
    };
    return (starts, seconds) =>
      home.forEach((m, o) => {
        const at = o * problem.machines + m;
        const usual = problem.seconds[at]! * factorAt(m, starts[o]!);
        const { ratios } = spreads[m]!;
        // Begun work has not ended by now: ratios that say it has are out.
        const first = elapsed[o] === 0 ? 0 : Math.min(above(ratios, elapsed[o]! / usual), ratios.length - 1);
        seconds[at] = Math.round(usual * ratios[first + Math.floor(lot[o]! * (ratios.length - first))]!);
      });
  };
}

/** Starts when every operation takes its machine's mean ratio: they say on which day it is likely to fall. */
function usualStarts(
  problem: Problem,
  queues: readonly Int32Array[],
  spreads: readonly RatioSpread[],
): Float64Array {
  const means = spreads.map(({ ratios }) => ratios.reduce((sum, r) => sum + r, 0) / ratios.length);
  const seconds = problem.seconds.map((s, at) => Math.round(s * means[at % problem.machines]!));
  return timeQueues({ ...problem, seconds }, queues, emptyTiming(problem)).start;
}

/** Standard normal (G. E. P. Box and M. E. Muller, 1958). */
const normal = (rng: Rng): number =>
  Math.sqrt(-2 * Math.log(1 - rng.next())) * Math.cos(2 * Math.PI * rng.next());

/** Index of the first ratio above a limit; the length when there is none. */
function above(ratios: readonly number[], limit: number): number {
  const index = ratios.findIndex((ratio) => ratio > limit);
  return index === -1 ? ratios.length : index;
}

/** Per open interval, the opening that began its day. */
function dayOpenings(open: WorkingTime): Float64Array {
  const openings = Float64Array.from(open.start, (start) => Math.max(start, 0));
  for (let k = 1; k < openings.length; k++)
    if (open.start[k]! - open.end[k - 1]! < NIGHT) openings[k] = openings[k - 1]!;
  return openings;
}

/** The day that holds an instant, by its beginning; round the clock, every 24 h from the opening count as a day. */
function dayOf(open: WorkingTime, openings: Float64Array, at: number): number {
  const opening = openings[intervalAt(open, at)]!;
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
    err(issue(`job ${jobId}`, field, message, advice));
  if (chance === undefined)
    return refuse('id', `Job ${jobId} is not in the plan.`, 'Plan it first, then ask for a date.');
  if (!(confidence > 0 && confidence < 1))
    return refuse(
      'confidence',
      `A promise cannot be kept with a confidence of ${confidence}.`,
      'Give a share above 0 and below 1, like 0.8.',
    );
  const end = endAt(chance.ends, confidence);
  if (end !== null) return ok(end);
  return refuse(
    'open',
    `The open hours end before job ${jobId} is done with a confidence of ${confidence}.`,
    'Give open hours further ahead, or plan less work.',
  );
}
