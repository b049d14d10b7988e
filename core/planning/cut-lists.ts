import { checkSteps } from '../cutting/check-steps.ts';
import { drawSteps } from '../cutting/draw-steps.ts';
import { bounded } from '../cutting/compare.ts';
import { figuresOfList } from '../cutting/figures.ts';
import { yieldOf } from '../cutting/plan-run.ts';
import type { CutPlan } from '../cutting/plan.ts';
import { relisted } from '../cutting/renumber.ts';
import type { RunInput } from '../cutting/run.ts';
import { issue, type Issue } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { CutList } from '../shop/stock.ts';
import type { ShopOperation } from './operations.ts';
import type { ShearRun } from './runs.ts';

const lineIds = (run: ShearRun): string[] => run.operations.map((o) => o.line.id);

/**
 * The lists that people changed, by the run each stands for: the one with the first of the list's lines that still waits.
 * Of two for one run (two runs joined) the older stands.
 */
export function changedLists(shop: Shop, runs: readonly ShearRun[]): Map<string, CutList> {
  const runOf = new Map(runs.flatMap((run) => lineIds(run).map((line) => [line, run.id])));
  const lists = new Map<string, CutList>();
  for (const list of shop.cutList) {
    const first = list.taken === null ? list.lines.find((line) => runOf.has(line)) : undefined;
    const runId = first === undefined ? undefined : runOf.get(first);
    if (runId !== undefined && !lists.has(runId)) lists.set(runId, list);
  }
  return lists;
}

/** The newest list by which sheets were taken from stock for lines of a run; null: none were. */
export function takenListFor(shop: Shop, run: ShearRun): CutList | null {
  const lines = new Set(lineIds(run));
  const taken = shop.cutList.filter((list) => list.taken !== null && list.lines.some((id) => lines.has(id)));
  return taken.reduce<CutList | null>(
    (newest, list) => ((newest?.taken ?? 0) > (list.taken ?? 0) ? newest : list),
    null,
  );
}

/** The newest list by which sheets were issued that gives a line blanks; null: none. */
export const issuedListOf = (shop: Pick<Shop, 'cutList'>, lineId: string): CutList | null =>
  shop.cutList.reduce<CutList | null>(
    (newest, list) =>
      list.taken === null || piecesIn(list, lineId) === 0 || (newest?.taken ?? 0) > list.taken
        ? newest
        : list,
    null,
  );

/** Blanks of a line whose sheets were taken from stock already. */
export const piecesTaken = (shop: Shop, lineId: string): number =>
  shop.cutList.reduce((sum, list) => sum + (list.taken === null ? 0 : piecesIn(list, lineId)), 0);

/**
 * Blanks of a line that are cut or lie on issued sheets. Sheets are issued for what is not counted by then, so each list
 * adds its blanks to those; what is counted later was cut from them, until more are counted than they gave.
 * @param counted pieces counted on the floor by now
 */
export function piecesCovered(shop: Shop, lineId: string, counted: number): number {
  const issued = shop.cutList.filter(({ taken, lines }) => taken !== null && lines.includes(lineId));
  const covered = issued
    .toSorted((a, b) => (a.taken ?? 0) - (b.taken ?? 0))
    .reduce((sum, list) => {
      const before = list.counted.find(({ line }) => line === lineId)?.pieces ?? 0;
      return Math.max(sum, before) + piecesIn(list, lineId);
    }, 0);
  return Math.max(covered, counted);
}

/** What is left to cut of an operation: neither counted on the floor nor on sheets that were issued. */
export const piecesLeft = (shop: Shop, { quantity, started, suspended, line }: ShopOperation): number =>
  Math.max(0, quantity - piecesCovered(shop, line.id, (started ?? suspended)?.counted ?? 0));

/** Blanks that a list gives a line. */
export const piecesIn = ({ steps }: Pick<CutList, 'steps'>, lineId: string): number =>
  steps.reduce((sum, { lines }) => sum + (lines.find((lot) => lot.line === lineId)?.pieces ?? 0), 0);

/**
 * A run's plan with a changed list in place of its own: sheets that no step cuts are left out, the others are drawn as
 * the list cuts them, and all figures are those of the list.
 * @returns the plan, and what is wrong with the list: who joined or left the run, what is missing or too many
 */
export function withList(plan: CutPlan, list: CutList, run: ShearRun, input: RunInput) {
  const used = list.groups.filter((group) => list.steps.some((step) => step.stack === group.id));
  const steps = relisted(list.steps, used, input.lines);
  const groups = used.map((group) => ({ ...group, ...drawSteps(group, steps, input) }));
  const faults = [...changesOf(list, run), ...checkSteps(input, groups, steps)];
  const lines = input.lines.map(({ id, quantity }) => yieldOf(id, quantity, steps));
  const made: CutPlan = {
    ...plan,
    groups,
    steps,
    lines,
    ...figuresOfList(groups, steps, input),
    least: null,
  };
  const judged = bounded(made, plan.lowerBoundCents);
  return { plan: faults.length === 0 ? judged : { ...judged, status: 'feasible' as const }, faults };
}

/** A list that sheets were taken for, as a plan: it is cut as it was then, whatever the run asks now. */
export function planOfTaken({ groups, steps }: CutList, { keep, work }: RunInput): CutPlan {
  return {
    groups,
    steps,
    lines: [],
    // The remnants of then lie in stock by now: they are not held against themselves.
    ...figuresOfList(groups, steps, { keep, work, stock: [] }),
    least: null,
    lowerBoundCents: 0,
    status: 'feasible',
    nearEqual: [],
  };
}

/** Lines that joined or left the run since the list was changed. */
function changesOf(list: CutList, run: ShearRun): Issue[] {
  const lines = lineIds(run);
  const say = (ids: readonly string[], what: string, advice: string): Issue[] =>
    ids.length === 0
      ? []
      : [
          issue(
            `run ${run.id}`,
            'lines',
            `${ids.length === 1 ? 'Line' : 'Lines'} ${ids.join(', ')} ${ids.length === 1 ? 'has' : 'have'} ${what} this run since its list was changed.`,
            advice,
          ),
        ];
  return [
    ...say(
      lines.filter((id) => !list.lines.includes(id)),
      'joined',
      'Add steps for it, or plan the steps again.',
    ),
    ...say(
      list.lines.filter((id) => !lines.includes(id)),
      'left',
      'Remove its steps, or plan the steps again.',
    ),
  ];
}
