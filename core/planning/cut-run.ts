import { checkSteps } from '../cutting/check-steps.ts';
import type { CutPlan, SheetGroup } from '../cutting/plan.ts';
import { bounded, beside } from '../cutting/compare.ts';
import { figuresOfList } from '../cutting/figures.ts';
import { planRun } from '../cutting/plan-run.ts';
import type { RemnantRule } from '../cutting/remnant.ts';
import { REMNANT_WORTH } from '../cutting/remnants.ts';
import type { RunInput, ShearLimits, Stock } from '../cutting/run.ts';
import { standard } from '../estimate/standards.ts';
import { countCuts } from '../estimate/shear.ts';
import type { Machine } from '../shop/machine.ts';
import type { Sheet } from '../material/material.ts';
import { asStocked } from '../material/usable-sheet.ts';
import type { ShopOperation } from './operations.ts';
import { sameMetal, shearRuns, type PlanRead, type ShearRun } from './runs.ts';
import { isBought, ofBoughtLot, otherLots } from './run-lot.ts';
import { stockFor, stockOverTime, type FreeStock } from './run-stock.ts';
import { ok, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { CutList } from '../shop/stock.ts';
import { unitsOf, type Units } from '../units/length.ts';
import { workPrices } from './shear-work.ts';
import { changedLists, piecesIn, piecesLeft, planOfTaken, takenListFor, withList } from './cut-lists.ts';

/** Where the shop has not said: 6 in × 24 in (common practice, no source), ten of a size (our own figure). */
export const USUAL_REMNANTS = { widthMm: 152.4, lengthMm: 609.6, most: 10 };

/** What is kept of a sheet in this shop. */
export const remnantRuleOf = ({ settings }: Shop): RemnantRule => ({
  ...(settings.remnants ?? USUAL_REMNANTS),
  worth: REMNANT_WORTH,
});

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
  const widths = stock.map(({ widthMm, sideTrimMm }) => widthMm - sideTrimMm);
  const lengths = stock.flatMap((one) => (one.kind === 'sheet' ? [one.lengthMm - one.endTrimMm] : []));
  return {
    lines: run.operations.map((operation) => ({
      id: operation.line.id,
      girthMm: asStocked(operation.blank.girthMm, widths),
      lengthMm: asStocked(operation.blank.lengthMm, lengths),
      quantity: piecesLeft(shop, operation),
      overrun: piecesLeft(shop, operation) > 0 ? operation.line.overrun : 0,
      due: operation.terms.due,
    })),
    stock,
    shear: shearOf(machine),
    keep: remnantRuleOf(shop),
    work: workPrices(shop, machine),
    units: unitsOf(shop.settings),
  };
}

/** A shear's limits as the cutting takes them. */
export const shearOf = (machine: Machine): ShearLimits => ({
  lengthMm: machine.maxLengthMm ?? Infinity,
  backGaugeMm: machine.backGaugeMm ?? { min: 0, max: machine.maxLengthMm ?? Infinity },
  scribe: true,
  minStripMm: machine.minStripMm ?? 0,
  continuousFrom: standard(machine, 'continuousFrom') || null,
});

/** What must be bought first is priced so much dearer, so that what lies there is used. Our own figure. */
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

/** What a run takes of one stock: pieces, of a coil stretches started. */
interface Taking {
  readonly sheetId: string;
  readonly pieces: number;
  /** Of these, as many are neither on hand nor expected by the time that the run begins. */
  readonly short: number;
}

export interface RunCut {
  readonly run: ShearRun;
  readonly input: RunInput;
  /** Sheets, drawing and steps; or why the run cannot be cut: which blank, which limit, what would do. */
  readonly plan: Result<CutPlan>;
  /** The list a person changed, where one stands for this run; `plan` then has its sheets and steps. */
  readonly changed: CutList | null;
  /** The list by which sheets were taken from stock for this run; where nothing else is left to cut, `plan` is that. */
  readonly taken: CutList | null;
  /** What is wrong with the step list, none for one that yields what is asked. */
  readonly faults: readonly Issue[];
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
 * @param changed the list that a person changed for it
 */
export function cutRun(
  shop: Shop,
  asked: ShearRun,
  free: Map<string, number>,
  solve: (input: RunInput) => Result<CutPlan> = planQuickly,
  changed: CutList | null = null,
): RunCut {
  const taken = takenListFor(shop, asked);
  const alone = runInput(shop, asked, isBought(asked) ? NOTHING : free, isBought(asked));
  if (taken && alone.lines.every(({ quantity }) => quantity === 0)) return asTaken(asked, alone, taken);
  const made = planned(shop, asked, alone, free, solve);
  const { run, input } = made;
  let { plan } = made;
  const listed = changed && plan.ok ? withList(plan.value, changed, run, input) : null;
  if (listed) plan = ok(listed.plan);
  const faults = listed
    ? [...listed.faults, ...otherLots(shop, run, listed.plan)]
    : plan.ok
      ? checkSteps(input, plan.value.groups, plan.value.steps)
      : [];
  const takings = plan.ok ? takingsOf(shop, plan.value, isBought(run) ? NOTHING : free) : [];
  for (const { sheetId, pieces, short } of takings)
    free.set(sheetId, (free.get(sheetId) ?? 0) - (pieces - short));
  const sheetsAlone = aloneOf(run, input.units, (operation) => piecesLeft(shop, operation));
  return { run, input, plan, changed, taken, faults, takings, sheetsAlone };
}

const NOTHING: FreeStock = new Map();

/** A run cut from what is free of its stock; where that is not enough, as if its sheets were bought. */
function planned(
  shop: Shop,
  run: ShearRun,
  input: RunInput,
  free: FreeStock,
  solve: (input: RunInput) => Result<CutPlan>,
): { run: ShearRun; input: RunInput; plan: Result<CutPlan> } {
  const plan = solve(input);
  if (isBought(run)) return { run, input, plan: atPlainCost(shop, input, plan) };
  if (plan.ok) return { run, input, plan };
  const needs = aloneOf(run, shop.settings, (operation) => piecesLeft(shop, operation));
  const bought = ofBoughtLot(shop, run, free, needs);
  const buying = runInput(shop, bought, isBought(bought) ? NOTHING : free, true);
  return { run: bought, input: buying, plan: atPlainCost(shop, buying, solve(buying)) };
}

/** A run with nothing left to cut but what its sheets were taken for. */
function asTaken(run: ShearRun, input: RunInput, taken: CutList): RunCut {
  const sheetsAlone = aloneOf(run, input.units, ({ line }) => piecesIn(taken, line.id));
  return {
    run,
    input,
    plan: ok(planOfTaken(taken, input)),
    changed: null,
    taken,
    faults: [],
    takings: [],
    sheetsAlone,
  };
}

/** Whether all that the run asks was taken from stock: its list is to be cut, no longer to be changed. */
export const isTaken = ({ taken, input }: RunCut): boolean =>
  taken !== null && input.lines.every(({ quantity }) => quantity === 0);

/**
 * Every run in turn, each with what the runs before it have left: the caller may rest between two.
 * @param withLine only the runs of the metal that this line is cut from, which no other run takes stock from
 */
export function* cutRuns(
  shop: Shop,
  plan: PlanRead,
  solve: (input: RunInput) => Result<CutPlan> = planQuickly,
  withLine?: string,
): Generator<RunCut> {
  const { free, arrive } = stockOverTime(shop);
  const runs = shearRuns(shop, plan);
  const lists = changedLists(shop, runs);
  const opened = runs.find(({ operations }) => operations.some(({ line }) => line.id === withLine));
  if (withLine !== undefined && !opened) return;
  for (const run of runs) {
    arrive(run);
    if (!opened || sameMetal(run, opened)) yield cutRun(shop, run, free, solve, lists.get(run.id) ?? null);
  }
}

/** A plan made for buying at what the stock costs; its bound holds all the more when it is lowered by as much. */
function atPlainCost(shop: Shop, input: RunInput, made: Result<CutPlan>): Result<CutPlan> {
  if (!made.ok) return made;
  const plain = <T extends Pick<SheetGroup, 'stockId' | 'lengthMm' | 'costCents'>>(group: T): T => {
    const sheet = shop.sheet.find((s) => s.id === group.stockId);
    const each = sheet?.form === 'coil' ? group.lengthMm / sheet.lengthMm : 1;
    return { ...group, costCents: sheet ? each * sheet.costCents : group.costCents };
  };
  const { steps, least } = made.value;
  const groups = made.value.groups.map(plain);
  const plan: CutPlan = {
    ...{ ...made.value, groups, ...figuresOfList(groups, steps, input) },
    least: least && { ...least, sheets: least.sheets.map(plain) },
  };
  return ok(bounded(beside(plan, plan), made.value.lowerBoundCents / BUYING));
}

/** Pieces that sheets of these groups take of each stock: of a coil stretches started. */
export function stockUsed(
  shop: Shop,
  groups: readonly Pick<SheetGroup, 'stockId' | 'count' | 'lengthMm'>[],
): { sheetId: string; pieces: number }[] {
  const used = new Map<string, number>();
  for (const { stockId, count, lengthMm } of groups) {
    const sheet = shop.sheet.find((s) => s.id === stockId);
    const each = sheet?.form === 'coil' ? lengthMm / sheet.lengthMm : 1;
    used.set(stockId, (used.get(stockId) ?? 0) + count * each);
  }
  return [...used].map(([sheetId, amount]) => ({ sheetId, pieces: Math.ceil(amount - 1e-6) }));
}

const takingsOf = (shop: Shop, { groups }: CutPlan, free: FreeStock): Taking[] =>
  stockUsed(shop, groups).map(({ sheetId, pieces }) => ({
    sheetId,
    pieces,
    short: Math.max(0, pieces - (free.get(sheetId) ?? 0)),
  }));

/** Sheets that each line would take cut alone from its own best size. */
function aloneOf(
  { operations }: ShearRun,
  units: Units,
  pieces: (operation: ShopOperation) => number,
): number {
  return operations.reduce((sum, operation) => {
    const { blank, sheet } = operation;
    const quantity = pieces(operation);
    const counted = quantity > 0 ? countCuts({ blank, quantity, sheet, units }) : null;
    return sum + (counted?.ok ? counted.value.sheets : 0);
  }, 0);
}
