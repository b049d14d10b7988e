import { checkSteps } from '../cutting/check-steps.ts';
import { countSteps } from '../cutting/counts.ts';
import type { CutPlan } from '../cutting/plan.ts';
import { planRun } from '../cutting/plan-run.ts';
import type { RunInput, Stock } from '../cutting/run.ts';
import { countCuts } from '../estimate/shear.ts';
import type { Machine } from '../shop/machine.ts';
import type { Sheet } from '../shop/material.ts';
import type { ShopOperation } from '../shop/operations.ts';
import { good, type Problem, type Result } from '../shop/result.ts';
import type { Shop } from '../shop/state.ts';
import type { CutList } from '../shop/stock.ts';
import { instant, type Instant } from '../units/brand.ts';
import type { PlanRead } from './dispatch.ts';

/** A maximal stretch of a shear's queue of one material, gauge and colour. Read off the plan, never stored. */
export interface ShearRun {
  /** Its first line. */
  readonly id: string;
  readonly machine: Machine;
  readonly materialId: string;
  readonly gauge: string;
  readonly colourId: string;
  /** In queue order. */
  readonly operations: readonly ShopOperation[];
  readonly start: Instant;
  readonly end: Instant;
}

/**
 * The runs of all shears in the order of their start. What is cut to the last piece already is left out.
 * @param plan the plan as the board shows it
 */
export function runsOf(shop: Shop, { schedule, operations }: PlanRead): ShearRun[] {
  const runs = shop.machine.flatMap((machine) => {
    if (machine.stage !== 'shear') return [];
    const made: (ShearRun & { operations: ShopOperation[] })[] = [];
    for (const planned of schedule.operations) {
      const operation = operations.get(planned.operation);
      if (planned.machine !== machine.id || !operation) continue;
      const { materialId, gauge, colourId } = operation.line;
      const last = made.at(-1);
      if (last?.materialId === materialId && last.gauge === gauge && last.colourId === colourId) {
        last.operations.push(operation);
        made[made.length - 1] = { ...last, end: instant(planned.end) };
      } else {
        const [start, end] = [instant(planned.start), instant(planned.end)];
        made.push({
          id: operation.line.id,
          machine,
          materialId,
          gauge,
          colourId,
          operations: [operation],
          start,
          end,
        });
      }
    }
    return made;
  });
  return runs.sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1));
}

/** What is left to cut of an operation: pieces counted on the floor are cut. */
const piecesLeft = ({ quantity, started }: ShopOperation): number =>
  Math.max(0, quantity - (started?.counted ?? 0));

/** An offcut this large is kept (6 in × 24 in). Common practice, no source. */
export const KEEP = { widthMm: 152.4, lengthMm: 609.6 };

/** How much of each stock is still free: pieces, of a coil stretches. */
export type FreeStock = ReadonlyMap<string, number>;
/** The shop's stock as counted. */
export const freeStock = (shop: Shop): Map<string, number> =>
  new Map(shop.sheet.map((s) => [s.id, s.onHand]));

/** The stock of a run's metal. */
export const stockFor = (shop: Shop, run: Pick<ShearRun, 'materialId' | 'gauge' | 'colourId'>): Sheet[] =>
  shop.sheet.filter(
    (s) => s.materialId === run.materialId && s.gauge === run.gauge && s.colourId === run.colourId,
  );

/**
 * A run as the cutting computation takes it.
 * @param free stock left by the runs before
 * @param buying sheets and coils can be had as many as needed; remnants never
 */
export function runInput(shop: Shop, run: ShearRun, free: FreeStock, buying: boolean): RunInput {
  const { machine } = run;
  const stock = stockFor(shop, run).flatMap((sheet): Stock[] => {
    const left = free.get(sheet.id) ?? 0;
    const here = left > 0 ? [asStock(sheet, left, 1)] : [];
    return buying && sheet.form !== 'remnant' ? [...here, asStock(sheet, null, BUYING)] : here;
  });
  return {
    lines: run.operations.map((operation) => ({
      id: operation.line.id,
      girthMm: operation.blank.girthMm,
      lengthMm: operation.blank.lengthMm,
      quantity: piecesLeft(operation),
      overrun: piecesLeft(operation) > 0 ? operation.line.overrun : 0,
      due: operation.order.due,
    })),
    stock,
    shear: {
      lengthMm: machine.maxLengthMm,
      backGaugeMm: machine.backGaugeMm ?? { min: 0, max: machine.maxLengthMm },
      scribe: true,
      minStripMm: machine.minStripMm ?? 0,
      // Nothing on record says that a machine is guarded for continuous strokes, so none are asked for.
      continuousFrom: null,
    },
    keep: KEEP,
  };
}

/** What must be bought first is reckoned so much dearer, so that what lies there is used. Our own figure. */
const BUYING = 1.25;

function asStock(sheet: Sheet, available: number | null, dearer: number): Stock {
  const edges = { id: sheet.id, widthMm: sheet.widthMm, endTrimMm: sheet.trimMm, sideTrimMm: sheet.trimMm };
  if (sheet.form === 'coil')
    return {
      ...edges,
      kind: 'coil',
      centsPerMetre: (dearer * sheet.costCents) / (sheet.lengthMm / 1000),
      lengthMm: available === null ? null : available * sheet.lengthMm,
    };
  const costCents = Math.round(dearer * sheet.costCents);
  const remnant = sheet.form === 'remnant';
  return { ...edges, kind: 'sheet', lengthMm: sheet.lengthMm, costCents, available, remnant };
}

/** What a run takes of one stock: pieces, of a coil stretches begun. */
export interface Taking {
  readonly sheetId: string;
  readonly pieces: number;
  /** Of these, as many are not on hand when the run begins. */
  readonly short: number;
}

export interface RunCut {
  readonly run: ShearRun;
  readonly input: RunInput;
  /** Sheets, drawing and steps; or why the run cannot be cut: which blank, which limit, what would do. */
  readonly plan: Result<CutPlan>;
  /** The list a person changed, where one stands for this run; `plan` then has its sheets and steps. */
  readonly changed: CutList | null;
  /** What is wrong with the step list, none for one that yields what is asked. */
  readonly faults: readonly Problem[];
  readonly takings: readonly Taking[];
  /** Sheets if each line were cut by itself (core/estimate/shear.ts). */
  readonly sheetsAlone: number;
}

/** Search steps for one run: enough for a usual run to be proven best, few enough to plan a week in seconds. */
const STEPS = 40;

/** A run planned at once; the same input gives the same plan. */
export const planQuickly = (input: RunInput): Result<CutPlan> => planRun(input, { steps: STEPS });

/**
 * Plans one run with the stock that is free, and takes what it needs off that stock. Where that is not enough it is
 * planned as if the sheets were bought, and what is missing is told.
 * @param solve `planQuickly`, or one that remembers its answers
 * @param free changed: less what the run takes, never below 0
 */
export function cutRun(
  shop: Shop,
  run: ShearRun,
  free: Map<string, number>,
  solve: (input: RunInput) => Result<CutPlan> = planQuickly,
): RunCut {
  let input = runInput(shop, run, free, false);
  let plan = solve(input);
  if (!plan.ok) {
    input = runInput(shop, run, free, true);
    plan = atPlainCost(shop, solve(input));
  }
  const changed = shop.cutList.find((list) => run.operations.some((o) => o.line.id === list.id)) ?? null;
  if (changed && plan.ok) plan = good(withList(plan.value, changed));
  const faults = plan.ok ? checkSteps(input, plan.value.groups, plan.value.steps) : [];
  const takings = plan.ok ? takingsOf(shop, plan.value, free) : [];
  for (const { sheetId, pieces } of takings)
    free.set(sheetId, Math.max(0, (free.get(sheetId) ?? 0) - pieces));
  return { run, input, plan, changed, faults, takings, sheetsAlone: aloneOf(run) };
}

/** Every run in turn, each with what the runs before it have left: the caller may rest between two. */
export function* cutRuns(
  shop: Shop,
  plan: PlanRead,
  solve: (input: RunInput) => Result<CutPlan> = planQuickly,
): Generator<RunCut> {
  const free = freeStock(shop);
  for (const run of runsOf(shop, plan)) yield cutRun(shop, run, free, solve);
}

/** A plan made for buying at what the stock costs; its bound holds all the more when it is lowered by as much. */
function atPlainCost(shop: Shop, made: Result<CutPlan>): Result<CutPlan> {
  if (!made.ok) return made;
  const groups = made.value.groups.map((group) => {
    const sheet = shop.sheet.find((s) => s.id === group.stockId);
    const each = sheet?.form === 'coil' ? group.lengthMm / sheet.lengthMm : 1;
    return { ...group, costCents: sheet ? each * sheet.costCents : group.costCents };
  });
  const costCents = groups.reduce((sum, group) => sum + group.count * group.costCents, 0);
  const lowerBoundCents = Math.min(costCents, made.value.lowerBoundCents / BUYING);
  const status = lowerBoundCents >= costCents - 1e-6 ? 'optimal' : 'feasible';
  return good({ ...made.value, groups, costCents, lowerBoundCents, status });
}

/** The plan with a changed list in place of its own; areas and costs are those of the list's sheets. */
function withList(plan: CutPlan, { groups, steps }: CutList): CutPlan {
  const sum = (kind: string): number =>
    groups.reduce(
      (all, { count, offcuts }) =>
        all + count * offcuts.reduce((area, cut) => area + (cut.kind === kind ? cut.w * cut.h : 0), 0),
      0,
    );
  const blanks = groups.reduce(
    (all, group) => all + group.count * group.blanks.reduce((area, { w, h }) => area + w * h, 0),
    0,
  );
  const costCents = groups.reduce((all, group) => all + group.count * group.costCents, 0);
  return {
    ...plan,
    groups,
    steps,
    counts: countSteps(steps),
    costCents,
    status: costCents <= plan.lowerBoundCents + 1e-6 ? 'optimal' : 'feasible',
    areas: { blanks, remnants: sum('remnant'), scrap: sum('scrap'), trim: sum('trim') },
  };
}

function takingsOf(shop: Shop, plan: CutPlan, free: FreeStock): Taking[] {
  const taken = new Map<string, number>();
  for (const { stockId, count, lengthMm } of plan.groups) {
    const sheet = shop.sheet.find((s) => s.id === stockId);
    const each = sheet?.form === 'coil' ? lengthMm / sheet.lengthMm : 1;
    taken.set(stockId, (taken.get(stockId) ?? 0) + count * each);
  }
  return [...taken].map(([sheetId, amount]) => {
    const pieces = Math.ceil(amount - 1e-6);
    return { sheetId, pieces, short: Math.max(0, pieces - (free.get(sheetId) ?? 0)) };
  });
}

/** Sheets that each line would take cut alone from its own best size. */
function aloneOf({ operations, machine }: ShearRun): number {
  return operations.reduce((sum, operation) => {
    const { blank, sheet } = operation;
    const quantity = piecesLeft(operation);
    const counted = quantity > 0 ? countCuts({ blank, quantity, sheet, machine }) : null;
    return sum + (counted?.ok ? counted.value.sheets : 0);
  }, 0);
}
