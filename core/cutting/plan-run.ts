import { err, ok, type Result } from '../result.ts';
import { beside, bounded, isBetter } from './compare.ts';
import { costOf, type Cover } from './cover.ts';
import { drawGroup } from './draw.ts';
import { figuresOfList } from './figures.ts';
import { groupsOf } from './groups.ts';
import { checkRun, stockRunsOut, uncuttable } from './limits.ts';
import type { CutPlan, LineYield } from './plan.ts';
import { blankSizes, nearEqualSizes, type BlankSize, type RunInput } from './run.ts';
import type { SheetLayout } from './layout.ts';
import { refill } from './refill.ts';
import { wholeOf } from './relaxation.ts';
import { coverOfRun } from './sheet-patterns.ts';
import { solveCover, type SolveOptions } from './solve-cover.ts';
import type { CutStep } from './step.ts';
import { stepsOf } from './steps.ts';
import { trimmedFirst } from './trim-first.ts';
import { fillWithCorrection } from './value-correction.ts';
import { lineCuts } from './work.ts';
import { coverWithoutSlivers, lineByLine, waysToCut, type Uses } from './ways.ts';

/** Sizes that differ by less are pointed out, so that a person may make them one. */
const nearMm = 1;

interface RunProgress {
  /** Best plan so far; null while the stock is not known to suffice. */
  readonly plan: CutPlan | null;
  readonly done: boolean;
  readonly steps: number;
  /** The ways that a shear lead would try were compared. */
  readonly compared: boolean;
}

/**
 * Plans one run on the shear: which sheets, how each is cut, the list of settings, the offcuts worth keeping.
 * The list is the cheapest found in all, stock and work less what its remnants are worth; one that takes less metal for
 * more work is told beside it. At equal cost: least scrap, fewest settings, the largest remnant.
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
    if (best && step.value.compared && step.value.steps >= options.steps) return ok(best);
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
  let lists: Lists | null = null;
  let compared = false;
  const solving = solveCover(cover, first, options);
  let tidying: Generator<Uses | null> | null = null;
  for (;;) {
    const { value, done } = solving.next();
    const told = (): RunProgress => {
      const plan = lists && bounded(beside(lists.best, lists.saving), value.lowerBound);
      return { plan, done: value.status === 'optimal', steps: value.steps, compared };
    };
    if (value.uses && value.uses !== uses) {
      uses = value.uses;
      lists = better(lists, drawPlan(run, sizes, uses));
    }
    if (uses && !compared) {
      yield { ...told(), done: false };
      for (const way of waysToCut(cover)) {
        lists = better(lists, drawPlan(run, sizes, way));
        yield { ...told(), done: false };
      }
      if (lists && lineCuts(lists.best.steps).pieces > 0) {
        const held = coverWithoutSlivers(run, sizes);
        tidying = tidied(held);
        for (const way of waysToCut(held)) {
          lists = better(lists, drawPlan(run, sizes, way));
          yield { ...told(), done: false };
        }
      }
      compared = true;
    }
    // With the least metal known, what is left to gain is work.
    const settled = done === true || value.status === 'optimal';
    if (tidying && (settled || value.steps % TIDIED_EVERY === 0) && value.steps > QUICK) {
      for (let next = tidying.next(); !next.done; next = tidying.next()) {
        if (next.value) lists = better(lists, drawPlan(run, sizes, next.value));
        if (!settled) break;
        yield { ...told(), done: false };
      }
    }
    const { plan } = told();
    if (done) return plan ? ok(plan) : err(stockRunsOut(sizes));
    yield told();
  }
}

/** While a first list is wanted soon, all steps go into metal. */
const QUICK = 40;
/** Then one step of so many goes into lists without slivers, and all of them when the least metal is known, up to a limit. */
const TIDIED_EVERY = 8;
const MOST_TIDIED = 300;
/** Of these the first are whole fills, the others fill in part what is best, until so many have brought no less metal. */
const TIDY_FILLS = 5;
const TIDY_IDLE = 150;

/** Answers without slivers, each once; null for a step that found none. */
function* tidied(held: Cover<SheetLayout>): Generator<Uses | null> {
  let best: Uses | null = null;
  for (const uses of fillWithCorrection(held, wholeOf(held), held.sizes, TIDY_FILLS)) {
    yield uses;
    if (!best || costOf(uses) < costOf(best)) best = uses;
  }
  if (!best) return;
  const found: Uses[] = [];
  const filling = refill(held, best, TIDY_IDLE, (uses) => void found.push(uses));
  for (let step = TIDY_FILLS; step < MOST_TIDIED && !filling.next().done; step++) yield found.pop() ?? null;
}

/** The cheapest list in all, and that of least metal. */
interface Lists {
  readonly best: CutPlan;
  readonly saving: CutPlan;
}

function better(lists: Lists | null, plan: CutPlan): Lists {
  if (!lists) return { best: plan, saving: plan };
  const saves =
    plan.costCents < lists.saving.costCents - 1e-6 ||
    (plan.costCents < lists.saving.costCents + 1e-6 && isBetter(plan, lists.saving));
  return { best: isBetter(plan, lists.best) ? plan : lists.best, saving: saves ? plan : lists.saving };
}

function drawPlan(run: RunInput, sizes: readonly BlankSize[], uses: Uses): CutPlan {
  const groups = groupsOf(run, sizes, uses).map((group) => trimmedFirst(run, sizes, group));
  const steps = stepsOf(run, sizes, groups);
  const drawn = groups.map((group) => drawGroup(run, sizes, group));
  return {
    groups: drawn,
    steps,
    lines: run.lines.map(({ id, quantity }) => yieldOf(id, quantity, steps)),
    ...figuresOfList(drawn, steps, run),
    least: null,
    lowerBoundCents: 0,
    status: 'feasible',
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
