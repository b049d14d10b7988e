import { err, ok, type Result } from '../result.ts';
import { bounded, isTidier } from './compare.ts';
import { costOf, type Cover, type Use } from './cover.ts';
import { countSteps } from './counts.ts';
import { drawGroup } from './draw.ts';
import { fillByValue } from './fill.ts';
import { groupsOf } from './groups.ts';
import { checkRun, stockRunsOut, uncuttable } from './limits.ts';
import type { CutPlan, LineYield, SheetGroup } from './plan.ts';
import { wholeOf, type Rest } from './relaxation.ts';
import { blankSizes, nearEqualSizes, type BlankSize, type RunInput } from './run.ts';
import type { SheetLayout } from './layout.ts';
import { coverOfRun } from './sheet-patterns.ts';
import { solveCover, type SolveOptions } from './solve-cover.ts';
import type { CutStep } from './step.ts';
import { stepsOf } from './steps.ts';

/** Sizes that differ by less are pointed out, so that a person may make them one. */
const nearMm = 1;

/** Steps without a cheaper answer before the one at hand is tidied. */
const stepsToSettle = 40;

type Uses = readonly Use<SheetLayout>[];

interface RunProgress {
  /** Best plan so far; null while the stock is not known to suffice. */
  readonly plan: CutPlan | null;
  readonly done: boolean;
  readonly steps: number;
}

/**
 * Plans one run on the shear: which sheets, how each is cut, the list of settings, the offcuts worth keeping.
 * Minimised in this order: cost of stock, scrap, number of settings; then the largest remnant is kept largest.
 * An anytime search that reads no clock: each value is the best so far, stop when the time is up.
 * @returns a generator, or why the run cannot be cut at all
 */
export function improveRun(
  run: RunInput,
  options: SolveOptions,
): Result<Generator<RunProgress, Result<CutPlan>>> {
  const sizes = blankSizes(run);
  const checked = checkRun(run, sizes);
  if (!checked.ok) return checked;
  const cover = coverOfRun(run, sizes);
  const first = lineByLine(cover);
  const issues = first.length > 0 ? [] : uncuttable(run, cover, sizes);
  return issues.length > 0 ? err(...issues) : ok(search(run, sizes, cover, first, options));
}

/**
 * Plans one run within a number of search steps (a few milliseconds each for a usual run): `improveRun` for callers without
 * a clock. Same input, same plan.
 */
export function planRun(run: RunInput, options: SolveOptions & { readonly steps: number }): Result<CutPlan> {
  const improving = improveRun(run, options);
  if (!improving.ok) return improving;
  let best: CutPlan | null = null;
  for (;;) {
    const step = improving.value.next();
    if (step.done) return step.value;
    best = step.value.plan ?? best;
    if (best && step.value.steps >= options.steps) return ok(best);
  }
}

function* search(
  run: RunInput,
  sizes: readonly BlankSize[],
  cover: Cover<SheetLayout>,
  first: readonly Uses[],
  options: SolveOptions,
): Generator<RunProgress, Result<CutPlan>> {
  let uses: Uses | null = null;
  let plan: CutPlan | null = null;
  let changedAt = 0;
  let tidied = false;
  const solving = solveCover(cover, first, options);
  for (;;) {
    const { value, done } = solving.next();
    if (value.uses && value.uses !== uses) {
      uses = value.uses;
      plan = drawPlan(run, sizes, uses);
      changedAt = value.steps;
      tidied = false;
    }
    const settled = done || value.status === 'optimal' || value.steps >= changedAt + stepsToSettle;
    if (uses && settled && !tidied) {
      plan = tidiest(run, sizes, cover, uses);
      tidied = true;
    }
    // The plan may cost less than the cover: a sheet that only repeats pieces is left out.
    const bound = Math.min(value.lowerBound, plan?.costCents ?? Infinity);
    if (plan) plan = bounded(plan, bound);
    if (done) return plan ? ok(plan) : err(stockRunsOut(sizes));
    yield { plan, done: value.status === 'optimal', steps: value.steps };
  }
}

/** Each size cut alone, one after the other: a first answer, and the cost that no plan may exceed. */
function lineByLine(cover: Cover<SheetLayout>): Uses[] {
  const available = cover.stock.map((one) => one.available);
  const uses: Use<SheetLayout>[] = [];
  for (let item = 0; item < cover.demand.length; item++) {
    const rest: Rest = { wanted: cover.demand.map((pieces, at) => (at === item ? pieces : 0)), available };
    const filled = fillByValue(cover, rest, cover.sizes);
    if (!filled) return [];
    for (const { column, count } of filled) {
      const left = available[column.stock];
      if (left != null) available[column.stock] = left - column.use * count;
    }
    uses.push(...filled);
  }
  return [uses];
}

/** Of several ways to cut from the same stock at the same cost: least scrap, then fewest settings, then the largest remnant. */
function tidiest(run: RunInput, sizes: readonly BlankSize[], cover: Cover<SheetLayout>, uses: Uses): CutPlan {
  const cost = costOf(uses);
  const available = cover.stock.map((_, at) =>
    uses.reduce((sum, { column, count }) => sum + (column.stock === at ? column.use * count : 0), 0),
  );
  const rest: Rest = { ...wholeOf(cover), available };
  const alone = lineByLine({ ...cover, stock: available.map((left) => ({ available: left })) });
  const fills = [1, 1.25].map((power) =>
    fillByValue(
      cover,
      rest,
      cover.sizes.map((size) => size ** power),
    ),
  );
  const plans = [uses, ...alone, ...fills].flatMap((one) =>
    one && costOf(one) <= cost + 1e-6 ? [drawPlan(run, sizes, one)] : [],
  );
  return plans.reduce((best, plan) => (isTidier(plan, best) ? plan : best));
}

function drawPlan(run: RunInput, sizes: readonly BlankSize[], uses: Uses): CutPlan {
  const groups = groupsOf(run, sizes, uses);
  const steps = stepsOf(run, sizes, groups);
  const drawn = groups.map((group) => drawGroup(run, sizes, group));
  return {
    groups: drawn,
    steps,
    lines: run.lines.map(({ id, quantity }) => yieldOf(id, quantity, steps)),
    counts: countSteps(steps),
    costCents: drawn.reduce((sum, group) => sum + group.costCents * group.count, 0),
    lowerBoundCents: 0,
    status: 'feasible',
    areas: areasOf(drawn),
    nearEqual: nearEqualSizes(sizes, nearMm).map(([a, b]) => ({
      lines: [a.lines[0]?.id ?? '', b.lines[0]?.id ?? ''] as const,
      differenceMm: Math.round((a.girthMm - b.girthMm) * 100) / 100,
    })),
  };
}

/** What a list of steps gives a line. */
export function yieldOf(line: string, asked: number, steps: readonly CutStep[]): LineYield {
  let cut = 0;
  let readyAfterStep = 0;
  for (const step of steps) {
    const pieces = step.lines.find((lot) => lot.line === line)?.pieces ?? 0;
    if (cut < asked && cut + pieces >= asked) readyAfterStep = step.number;
    cut += pieces;
  }
  return { line, asked, cut, readyAfterStep };
}

/** Areas over all sheets; what a changed list leaves on a stack counts as scrap until it is cut up. */
export function areasOf(groups: readonly SheetGroup[]): CutPlan['areas'] {
  const sum = (rects: (group: SheetGroup) => readonly { w: number; h: number }[]): number =>
    groups.reduce(
      (total, group) => total + group.count * rects(group).reduce((area, { w, h }) => area + w * h, 0),
      0,
    );
  const offcuts = (kind: string): number => sum((group) => group.offcuts.filter((cut) => cut.kind === kind));
  return {
    blanks: sum((group) => group.blanks),
    remnants: offcuts('remnant'),
    scrap: offcuts('scrap') + offcuts('left'),
    trim: offcuts('trim'),
  };
}
