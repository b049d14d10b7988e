import { observationsOf } from '../../../core/learn/happened.ts';
import { spreadOf, timedOf, type Spread, type Timed } from '../../../core/learn/spread.ts';
import { buildProblem } from '../../../core/schedule/build.ts';
import { chances, promiseAt } from '../../../core/learn/chance.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { JobInput, MachineInput, Problem, Queues } from '../../../core/schedule/problem.ts';
import { Rng } from '../../../core/rng.ts';
import { attributesOf } from '../../../core/planning/set-up.ts';
import { lineOfOperation, stageOfOperation } from '../../../core/shop/order.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import { sentence, type Result } from '../../../core/result.ts';
import { wallParts } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { BIAS } from '../../../demo-data/make/history.ts';
import { demoShop, hoursOf, monday } from '../demo-data/demo-shop.ts';
import { normal } from './invented.ts';

/** Plans of past work, played through with what was known before it and held against what it really took. */

const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};
const DAY = 86_400;
const WEEK = 7 * DAY;
const WEEKS_KNOWN = 26;
const CONFIDENCE = 0.8;

/**
 * The cuts: after so many weeks the spread is learned from all that is finished, and held
 * against the four weeks that follow. The last one ends where the records end; no held-out week is used twice.
 */
export const ORIGINS = [6, 10, 14, 18, 22] as const;
const HELD_OUT = 4 * WEEK;

const shop = demoShop();
export const { observations, left } = observationsOf(shop, shop.record);
const timed = timedOf(shop, observations);
const estimated = new Map(timed.map((t, k) => [observations[k]!.id, Math.round(t.estimatedSeconds)]));

/** What finished operations took. */
export interface Actual {
  /** Seconds by the operation's id. */
  readonly recorded: ReadonlyMap<string, number>;
  /** Seconds that one takes when it begins at an instant, where days differ; missing: what was recorded. */
  readonly startedAt?: (id: string, start: number) => number;
}
export const asHappened: Actual = { recorded: new Map(observations.map((o) => [o.id, o.actualSeconds])) };

/** Promises made and promises kept. */
export interface Kept {
  readonly lines: number;
  readonly kept: number;
}

export const together = (all: readonly Kept[]): Kept =>
  all.reduce((sum, one) => ({ lines: sum.lines + one.lines, kept: sum.kept + one.kept }), {
    lines: 0,
    kept: 0,
  });
export const percent = ({ lines, kept }: Kept): number => (100 * kept) / lines;

/** Per cut, the lines promised at 80 % in plans of a day or of a week, made of the work that began in it. */
export function rollingOrigin(horizon: 'day' | 'week', actual: Actual, runs: number): Kept[] {
  return ORIGINS.map((weeks) => {
    const from = monday - (WEEKS_KNOWN - weeks) * WEEK;
    const spread = spreadBefore(from, actual);
    const step = horizon === 'day' ? DAY : WEEK;
    const plans: Kept[] = [];
    for (let now = from; now < from + HELD_OUT; now += step) {
      const records = shop.record
        .filter((r) => now <= r.start && r.start < now + step && actual.recorded.has(r.id))
        .sort((a, b) => a.start - b.start);
      // A piece bent in another stretch than it was sheared in has only its bend in the plan.
      if (records.length > 0) plans.push(promiseAndSee(records, now, spread, actual, runs));
    }
    return together(plans);
  });
}

function spreadBefore(origin: number, actual: Actual): Spread {
  const known = observations.flatMap((o, k): Timed[] =>
    o.at < origin ? [{ ...timed[k]!, actualSeconds: actual.recorded.get(o.id)! }] : [],
  );
  return must(spreadOf(known));
}

const machinesKnown = new Map<number, MachineInput[]>();
/** The machines with the open hours of a month from an instant on; asked for often, so kept. */
function machinesFrom(now: number): MachineInput[] {
  const machines =
    machinesKnown.get(now) ??
    shop.machine.map((m): MachineInput => ({
      id: m.id,
      stage: m.stage,
      initial: null,
      changeover: m.changeover as MachineInput['changeover'],
      open: hoursOf(shop, m.id, now, now + 30 * DAY),
    }));
  machinesKnown.set(now, machines);
  return machines;
}

type Seconds = ReadonlyMap<string, number>;

function jobsOf(records: readonly OperationRecord[], seconds: Seconds, now: number): JobInput[] {
  const lines = new Set(records.map((r) => lineOfOperation(r.id)));
  return [...lines].map((id): JobInput => {
    const steps = ['shear', 'brake'].flatMap((s) => records.filter((r) => r.id === `${id}:${s}`));
    const operations = steps.map((r) => {
      const stage = stageOfOperation(r.id);
      const attributes = attributesOf(stage, r) as Record<string, string>;
      return { id: r.id, stage, seconds: seconds.get(r.id)!, machines: [{ id: r.machineId }], attributes };
    });
    return { id, release: now, due: null, weight: 1, operations };
  });
}

/** The lines of one plan, in the records' order. */
function promiseAndSee(
  records: readonly OperationRecord[],
  now: number,
  spread: Spread,
  actual: Actual,
  runs: number,
): Kept {
  const queues: Queues = Object.fromEntries(
    shop.machine.map((m) => [m.id, records.filter((r) => r.machineId === m.id).map((r) => r.id)]),
  );
  const machines = machinesFrom(now);
  const objective = { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 };
  const by = (seconds: Seconds): Problem =>
    must(buildProblem({ name: 'past', machines, jobs: jobsOf(records, seconds, now), objective, now }));
  const played = must(chances(by(estimated), queues, spread, { runs, seed: 1 }));
  const ends = trueEnds(by, queues, actual);
  const kept = Object.entries(ends).filter(([id, end]) => end <= must(promiseAt(played, id, CONFIDENCE)));
  return { lines: Object.keys(ends).length, kept: kept.length };
}

/** Days are met again and again until hardly any operation moves from one into another. */
const PASSES = 6;

/** When the lines of a plan end; work that a slow day pushes into the next takes what it does on that one. */
function trueEnds(by: (seconds: Seconds) => Problem, queues: Queues, { recorded, startedAt }: Actual) {
  let schedule = must(decode(by(recorded), queues));
  for (let pass = 0; startedAt && pass < PASSES; pass++) {
    const seconds = new Map(schedule.operations.map((o) => [o.operation, startedAt(o.operation, o.start)]));
    schedule = must(decode(by(seconds), queues));
  }
  return schedule.ends;
}

/**
 * The same operations with times drawn again: estimate × the machine's bias × log-normal scatter of 0.16 × a log-normal
 * factor of the machine's day; a few get stuck.
 * @param daySpread standard deviation of the day's logarithm; 0: days are alike
 */
export function drawnAgain(seed: number, daySpread: number): Actual {
  const [ofOperations, ofDays] = [new Rng(seed), new Rng(seed + 1_000_000)];
  const days = new Map<string, number>();
  const factorOf = (machineId: string, day: string): number => {
    const place = `${machineId} ${day}`;
    if (!days.has(place)) days.set(place, Math.exp(daySpread * normal(ofDays)));
    return days.get(place)!;
  };
  const own = new Map(
    observations.map(({ id, machineId }, k) => {
      const usual = timed[k]!.estimatedSeconds * BIAS[machineId]! * Math.exp(0.16 * normal(ofOperations));
      const stuck = ofOperations.next() < 0.03 ? 1.8 + 1.2 * ofOperations.next() : 1;
      return [id, { machineId, seconds: usual * stuck }] as const;
    }),
  );
  const takenOn = (id: string, day: string): number => {
    const { machineId, seconds } = own.get(id)!;
    return Math.round(seconds * factorOf(machineId, day));
  };
  return {
    recorded: new Map(observations.map(({ id }, k) => [id, takenOn(id, timed[k]!.day)])),
    startedAt: (id, start) => takenOn(id, wallParts(instant(start), shop.settings.timeZone).date),
  };
}
