import { rememberRuns } from '../cutting/remember.ts';
import { check } from '../schedule/check.ts';
import { decode } from '../schedule/decode.ts';
import type { Problem, Queues, Schedule } from '../schedule/problem.ts';
import type { Shop } from '../shop/state.ts';
import type { ShopProblem } from './to-problem.ts';
import { planQuickly } from './cut-run.ts';
import { stockOf } from './run-stock.ts';
import { sameLineLot } from './line-lot.ts';
import { sameMetal, shearRuns, type ShearRun } from './runs.ts';
import { joined, metalCost, secondsOfStock, type Solve } from './join-runs.ts';

/** What joining runs for the sake of the stock has brought so far. */
export interface Joins {
  readonly queues: Queues;
  readonly count: number;
  readonly savedCents: number;
  /** What they add to the objective of time, weighted seconds; below 0 they save time as well. */
  readonly objectiveAdded: number;
}

/**
 * Joins runs of one metal where the stock that saves is worth the time that it costs, by the shop's weights.
 *
 * Why after the search and not inside it: what a join saves depends on all the blanks of both runs and on the stock that
 * earlier runs leave, so it is no sum over neighbours in a queue, and one answer takes as long as ten thousand moves of
 * the search. A price per run broken would be cheap, but wrong for most runs (nothing is saved where both fill their
 * sheets). So the search groups by changeover and dates, and here each join that is left is computed in full:
 * the whole plan is timed again and the metal's runs are cut again. Only joins that gain are kept, so the plan with its stock is never worse.
 * @param made the problem with its pins and frozen window: no join breaks them
 * @returns a generator that yields after each join tried; stop when the time is up, the last value stands
 */
export function* worthyJoins(
  shop: Shop,
  made: ShopProblem,
  start: Queues,
  solve: Solve = planQuickly,
): Generator<Joins, void> {
  const { problem, operations } = made;
  const first = decode(problem, start);
  if (!first.ok) return;
  let schedule: Schedule = first.value;
  let joins: Joins = { queues: start, count: 0, savedCents: 0, objectiveAdded: 0 };
  // Most runs of a metal stay as they were when two are joined.
  const once = rememberRuns(solve);
  const costs = costsBy((plan, run) => metalCost(shop, { operations, schedule: plan }, run, once));
  const least = (run: ShearRun): number => leastCost(shop, shearRuns(shop, { operations, schedule }), run);
  for (let again = true; again;) {
    again = false;
    for (const { queues, to, tried } of tries(
      problem,
      shearRuns(shop, { operations, schedule }),
      joins.queues,
    )) {
      const added = tried.objective - schedule.objective;
      const now = costs(schedule, to);
      yield joins;
      if (now === null || secondsOfStock(shop, now - least(to)) <= added) continue;
      const then = costs(tried, to);
      yield joins;
      if (then === null || secondsOfStock(shop, now - then) <= added + 1e-6) continue;
      if (check(problem, tried).length > 0) continue;
      schedule = tried;
      joins = {
        queues,
        count: joins.count + 1,
        savedCents: joins.savedCents + Math.round(now - then),
        objectiveAdded: joins.objectiveAdded + added,
      };
      again = true;
      break;
    }
  }
  yield joins;
}

interface Try {
  readonly to: ShearRun;
  readonly queues: Queues;
  readonly tried: Schedule;
}

/** Each run and the next of its metal on the same shear, the later brought forward or the earlier put off: what costs least time first. */
function tries(problem: Problem, runs: readonly ShearRun[], queues: Queues): Try[] {
  const all = runs.flatMap((run, at): Try[] => {
    const next = runs
      .slice(at + 1)
      .find(
        (later) =>
          later.machine.id === run.machine.id && sameMetal(later, run) && sameLineLot(later.lot, run.lot),
      );
    if (!next) return [];
    const ways = [joined(queues, next, run, 'behind'), joined(queues, run, next, 'before')];
    return ways.flatMap((way): Try[] => {
      const tried = decode(problem, way);
      return tried.ok ? [{ to: run, queues: way, tried: tried.value }] : [];
    });
  });
  return all.sort((a, b) => a.tried.objective - b.tried.objective);
}

/** Remembers the cost of a metal by the order in which its lines are cut. */
function costsBy(cost: (plan: Schedule, run: ShearRun) => number | null) {
  const perPlan = new WeakMap<Schedule, Map<string, number | null>>();
  return (plan: Schedule, run: ShearRun): number | null => {
    const known = perPlan.get(plan) ?? new Map<string, number | null>();
    perPlan.set(plan, known);
    const metal = `${run.materialId} ${run.gauge} ${run.colourId}`;
    if (!known.has(metal)) known.set(metal, cost(plan, run));
    return known.get(metal) ?? null;
  };
}

/** No way of cutting a metal's runs costs less: their blanks at the price of the stock that is cheapest for its area. */
function leastCost(shop: Shop, runs: readonly ShearRun[], metal: ShearRun): number {
  const stock = stockOf(shop, metal);
  const perMm2 = Math.min(...stock.map((sheet) => sheet.costCents / (sheet.widthMm * sheet.lengthMm)));
  const area = runs
    .filter((run) => sameMetal(run, metal))
    .flatMap((run) => run.operations)
    .reduce((sum, { blank, quantity }) => sum + quantity * blank.girthMm * blank.lengthMm, 0);
  return Number.isFinite(perMm2) ? area * perMm2 : 0;
}
