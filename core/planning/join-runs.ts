import type { CutPlan } from '../cutting/plan.ts';
import type { RunInput } from '../cutting/run.ts';
import type { Queues } from '../schedule/problem.ts';
import type { Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { sameLineLot } from './line-lot.ts';
import { cutRun, isTaken, planQuickly, type RunCut } from './cut-run.ts';
import { viewQueues, type PlanView } from './plan-view.ts';
import { stockOverTime } from './run-stock.ts';
import { sameMetal, type PlanRead, shearRuns, type ShearRun } from './runs.ts';

/** Cuts one run; the same for both sides of a comparison, or the better computed side would seem the cheaper one. */
export type Solve = (input: RunInput) => Result<CutPlan>;

/** A later run of the same metal brought forward to an earlier one, and what that changes. */
export interface Join {
  readonly other: RunCut;
  /** The plan with the runs joined. */
  readonly queues: Record<string, string[]>;
  /** Cost of stock over all runs of the metal now, less that afterwards; below 0 it costs more. */
  readonly savedCents: number;
  /** Change over the whole plan, seconds; above 0 more. */
  readonly changeoverSeconds: number;
  /** Change of the sum of tardiness over all lines, seconds; above 0 later. */
  readonly latenessSeconds: number;
  readonly lateLines: number;
  /** By the shop's priorities: above 0 the stock saved is worth the time it costs. Weighted seconds. */
  readonly gain: number;
}

/**
 * What joining a run and the next one of the same metal on the same shear would bring. The stock is computed run by run
 * in the order of the plan, each with what the runs before have left, for the plan as it is and as it would be: only
 * runs of one metal draw on the same stock, so the others need no look.
 * @returns null without such a run, where the runs cannot be cut, or where the sheets of one were taken already
 */
export function joinOf(
  shop: Shop,
  plan: PlanView,
  cuts: readonly RunCut[],
  cut: RunCut,
  solve: Solve = planQuickly,
): Join | null {
  const { run } = cut;
  const at = cuts.findIndex((one) => one.run.id === run.id);
  const other = cuts
    .slice(at + 1)
    .find(
      (one) =>
        !isTaken(one) &&
        one.run.machine.id === run.machine.id &&
        sameMetal(one.run, run) &&
        sameLineLot(one.run.lot, run.lot),
    );
  if (at < 0 || !other || isTaken(cut)) return null;
  const queues = joined(plan.queues, other.run, run, 'behind');
  const after = viewQueues(shop, plan, queues);
  if (!after.ok) return null;
  const [now, then] = [metalCost(shop, plan, run, solve), metalCost(shop, after.value, run, solve)];
  if (now === null || then === null) return null;
  const { figures, schedule } = after.value;
  return {
    other,
    queues,
    savedCents: Math.round(now - then),
    changeoverSeconds: figures.changeoverSeconds - plan.figures.changeoverSeconds,
    latenessSeconds: figures.tardiness - plan.figures.tardiness,
    lateLines: figures.lateLines - plan.figures.lateLines,
    gain: secondsOfStock(shop, now - then) - (schedule.objective - plan.schedule.objective),
  };
}

/** The queues with a run's operations taken to another run of the same shear, right behind its last or before its first. */
export function joined(
  queues: Queues,
  moved: ShearRun,
  to: ShearRun,
  where: 'behind' | 'before',
): Record<string, string[]> {
  const ids = moved.operations.map((o) => o.id);
  const anchor = (where === 'behind' ? to.operations.at(-1) : to.operations[0])?.id;
  const place = (id: string): string[] =>
    id !== anchor ? [id] : where === 'behind' ? [id, ...ids] : [...ids, id];
  return Object.fromEntries(
    Object.entries(queues).map(([machine, all]) => [
      machine,
      all.filter((id) => !ids.includes(id)).flatMap(place),
    ]),
  );
}

/** Cost of the stock still to be taken for every run of a metal, cut in plan order from what there is; null where one cannot be cut. */
export function metalCost(shop: Shop, plan: PlanRead, metal: ShearRun, solve: Solve): number | null {
  const { free, arrive } = stockOverTime(shop);
  let cents = 0;
  for (const run of shearRuns(shop, plan)) {
    arrive(run);
    if (!sameMetal(run, metal)) continue;
    const cut = cutRun(shop, run, free, solve);
    if (!cut.plan.ok) return null;
    if (!isTaken(cut)) cents += cut.plan.value.costCents;
  }
  return cents;
}

/** Stock in the objective's seconds (core/shop/settings.ts): a hundred weighs `material` hours. */
export const secondsOfStock = ({ settings }: Shop, cents: number): number =>
  (settings.weights.material * 3600 * cents) / 10_000;
