import { changeoversOf, observationsOf } from './happened.ts';
import type { ChangeoverObservation } from './learn-changeover.ts';
import type { Observation } from './observation.ts';
import { spreadOf, timedOf, type Spread } from './spread.ts';
import { chances, type ChanceOptions, type Chances } from './chance.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { toProblem } from '../planning/to-problem.ts';
import type { Instant } from '../units/brand.ts';

/**
 * How many of the newest finished operations tell of times: about half a year of a shop with three machines; older ones
 * say little of the machines as they are now (our own limit).
 */
export const NEWEST_WORK = 2500;

/** Played through so often, a chance is true to about two percent; some eighty milliseconds for 160 lines. */
export const PLAYED: ChanceOptions = { runs: 500, seed: 1 };

/** All of a shop by which finished work is read: estimates, and the hours that were open. As long as it is the same, so is what work says. */
export const readBy = ({ machine, part, material, sheet, calendar, downtime, settings }: Shop) => [
  machine,
  part,
  material,
  sheet,
  calendar,
  downtime,
  settings,
];

/** How the newest finished operations came out against the estimates of the shop as it is. @param records newest first */
export const shopSpread = (shop: Shop, records: readonly OperationRecord[]): Result<Spread> =>
  spreadOf(timedOf(shop, observationsOf(shop, records.slice(0, NEWEST_WORK)).observations));

/** All that finished work says of times: for learning, and for chances. */
export interface Happened {
  readonly observations: readonly Observation[];
  readonly changeovers: readonly ChangeoverObservation[];
  /** How many finished operations the shop as it is now cannot estimate. */
  readonly left: number;
  /** How times lie about estimates; an issue while there is too little work. */
  readonly spread: Result<Spread>;
}

/** @param records newest first; more than `NEWEST_WORK` are not looked at */
export function whatHappened(shop: Shop, records: readonly OperationRecord[]): Happened {
  const newest = records.slice(0, NEWEST_WORK);
  const { observations, left } = observationsOf(shop, newest);
  return {
    observations,
    changeovers: changeoversOf(shop, newest),
    left: left.length,
    spread: spreadOf(timedOf(shop, observations)),
  };
}

/** The chance of each line of the plan as it is; or why it cannot be told. */
export function planChances(shop: Shop, now: Instant, spread: Spread): Result<Chances> {
  const plan = toProblem(shop, now);
  return plan.ok ? chances(plan.value.problem, plan.value.queues, spread, PLAYED) : plan;
}

/** Of the lines in the plan, how many are on time with this confidence or more. */
export function confidentLines(
  all: Chances,
  confidence: number,
): { readonly confident: number; readonly lines: number } {
  const each = Object.values(all);
  return { confident: each.filter(({ onTime }) => onTime >= confidence).length, lines: each.length };
}
