import type { Shop } from '../shop/state.ts';
import { err, ok, issue, type Result } from '../result.ts';
import { wallParts } from '../time/wall.ts';
import { instant } from '../units/brand.ts';
import { secondsOf } from './counts.ts';
import { dayFactors, type DayRatio } from './days.ts';
import type { Observation } from './observation.ts';
import { MAD_TO_SD, median, medianDeviation } from './robust.ts';

/** A finished operation against its estimate; the day is the shop's date, and any name of a day will do. */
export interface Timed {
  readonly machineId: string;
  readonly day: string;
  readonly estimatedSeconds: number;
  readonly actualSeconds: number;
}

/** How actual times lie about the estimates: actual = estimate × operation's ratio × its day's factor. */
export interface RatioSpread {
  readonly observations: number;
  /** Usual actual / estimate: above 1, work takes longer than estimated. */
  readonly median: number;
  /** Robust standard deviation of the logarithm of actual / estimate. */
  readonly logSpread: number;
  /** Every operation's ratio with its day's part taken off, ascending; the tails are kept. */
  readonly ratios: readonly number[];
  /** Factors of whole days on the machine, ascending; only 1 unless the records show good and bad days. */
  readonly days: readonly number[];
  /** Standard error of the mean ratio, as a share: so far the whole machine may be off, since records are few. */
  readonly standardError: number;
}

/** Per machine with enough operations of its own; all machines together for the rest. */
export interface Spread {
  readonly machines: Readonly<Record<string, RatioSpread>>;
  readonly pooled: RatioSpread;
}

/** Our own limits: with fewer the machine's tails are not seen, or nothing is. */
const ENOUGH = 30;
const FEWEST = 10;

/** A machine's own spread, or the shop's where it is thin. */
export const spreadFor = (spread: Spread, machineId: string): RatioSpread =>
  spread.machines[machineId] ?? spread.pooled;

/** Observations against the estimates of the machines' present standards; those of machines now gone are left out. */
export function timedOf(
  shop: Pick<Shop, 'machine' | 'settings'>,
  observations: readonly Observation[],
): Timed[] {
  const machines = new Map(shop.machine.map((m) => [m.id, m]));
  return observations.flatMap(({ machineId, at, counts, actualSeconds }) => {
    const machine = machines.get(machineId);
    if (!machine) return [];
    const day = wallParts(instant(at), shop.settings.timeZone).date;
    return [{ machineId, day, estimatedSeconds: secondsOf(machine, counts), actualSeconds }];
  });
}

/**
 * How actual times spread about estimates, per machine, from what happened. Nothing is assumed of its shape: the ratios
 * themselves are kept, to be drawn from again. Operations without a time or an estimate above zero say nothing.
 * @param timed any order
 * @returns the spread; or a problem when fewer than ten operations say something
 */
export function spreadOf(timed: readonly Timed[]): Result<Spread> {
  const byMachine = new Map<string, DayRatio[]>();
  for (const { machineId, day, estimatedSeconds, actualSeconds } of timed) {
    const logRatio = Math.log(actualSeconds / estimatedSeconds);
    if (!Number.isFinite(logRatio)) continue;
    const own = byMachine.get(machineId) ?? [];
    own.push({ day: `${machineId} ${day}`, logRatio });
    byMachine.set(machineId, own);
  }
  const all = [...byMachine.values()].flat();
  if (all.length < FEWEST)
    return err(
      issue(
        'finished work',
        'records',
        `Chances need at least ${FEWEST} finished operations with their times; there are ${all.length}.`,
        'Write down when work starts and ends, and look again later.',
      ),
    );
  const thick = [...byMachine].filter(([, ratios]) => ratios.length >= ENOUGH);
  return ok({
    machines: Object.fromEntries(thick.sort().map(([id, ratios]) => [id, ratioSpread(ratios)])),
    pooled: ratioSpread(all),
  });
}

function ratioSpread(all: readonly DayRatio[]): RatioSpread {
  const logs = all.map((r) => r.logRatio);
  const middle = median(logs);
  const { ratios, days } = dayFactors(all);
  return {
    observations: all.length,
    median: Math.exp(middle),
    logSpread: MAD_TO_SD * medianDeviation(logs, middle),
    ratios,
    days,
    standardError: Math.hypot(errorOf(ratios), errorOf(days)),
  };
}

/** Standard error of a mean over the mean; 0 of a single value. */
function errorOf(values: readonly number[]): number {
  const n = values.length;
  const mean = values.reduce((sum, v) => sum + v, 0) / n;
  const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return n < 2 ? 0 : Math.sqrt(squares / (n - 1) / n) / mean;
}
