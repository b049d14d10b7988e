import type { SheetGroup } from '../cutting/plan.ts';
import { newGroup } from '../cutting/stacks.ts';
import type { CutStep } from '../cutting/step.ts';
import type { Sheet } from '../material/material.ts';
import { err, issue, ok, type Result } from '../result.ts';
import type { CutList } from '../shop/stock.ts';
import { formatCutSize, type Units } from '../units/length.ts';

/**
 * Steps with the one at `from` put so that `to` steps stand before it. Put between two of a group it belongs to that group;
 * put away from its own it belongs to none.
 */
export function moveStep(steps: readonly CutStep[], from: number, to: number): readonly CutStep[] {
  const step = steps[from];
  if (!step) return steps;
  const others = steps.filter((_, at) => at !== from);
  const [above, below] = [others[to - 1]?.heading, others[to]?.heading];
  const own = [above, below].includes(step.heading) ? step.heading : undefined;
  return [...others.slice(0, to), under(step, above === below ? above : own), ...others.slice(to)];
}

const under = (step: CutStep, heading: string | undefined): CutStep =>
  step.heading === heading ? step : { ...step, heading };

/** Steps with those from `first` to `last`, as they are numbered, put under a heading; an empty one takes them out of theirs. */
export const groupSteps = (
  steps: readonly CutStep[],
  first: number,
  last: number,
  heading: string,
): CutStep[] =>
  steps.map((step) =>
    step.number < first || step.number > last ? step : under(step, heading.trim() || undefined),
  );

/**
 * Steps with the one at `at` changed. What becomes of what is left is said once for a stack, whichever of its steps it was
 * said at.
 */
export const changeStep = (steps: readonly CutStep[], at: number, changed: CutStep): CutStep[] =>
  steps.map((step, n) =>
    n === at ? changed : step.stack === changed.stack && step.rest ? { ...step, rest: changed.rest } : step,
  );

/** Sheets of a stock put with those of a list, to be cut by steps that are added. */
export const addSheets = (
  groups: readonly SheetGroup[],
  { id, widthMm, lengthMm, costCents, form }: Sheet,
  count: number,
): SheetGroup[] => [
  ...groups,
  {
    ...{ id: newGroup(groups), stockId: id, remnantStock: form === 'remnant', count },
    ...{ widthMm, lengthMm, costCents, blanks: [], offcuts: [] },
  },
];

/**
 * A list laid on the stock of another run's metal, sheet by sheet of the same size; the steps stay as they are, so what that
 * run asks otherwise is told where the list is shown.
 * @param stock of the other run's metal
 * @returns the sheets; or which size that metal has no stock of
 */
export function sheetsFor(
  groups: readonly SheetGroup[],
  stock: readonly Sheet[],
  units: Units,
): Result<SheetGroup[]> {
  const same = (group: SheetGroup) => (sheet: Sheet) =>
    sheet.form !== 'coil' &&
    Math.abs(sheet.widthMm - group.widthMm) < 0.05 &&
    Math.abs(sheet.lengthMm - group.lengthMm) < 0.05;
  const missing = groups.find((group) => !stock.some(same(group)));
  if (missing) {
    const size = formatCutSize(missing.widthMm, missing.lengthMm, units);
    const message = `The other run's metal has no sheet of ${size}, which this list is cut from; nothing was copied.`;
    return err(
      issue('list', 'sheets', message, 'Enter that size in Shop, Sheet sizes, or copy single steps.'),
    );
  }
  return ok(
    groups.map((group) => {
      const { id, costCents, form } = stock.find(same(group))!;
      return { ...group, stockId: id, costCents, remnantStock: form === 'remnant', blanks: [], offcuts: [] };
    }),
  );
}

/** A list as it is kept. */
export const cutListOf = (
  runId: string,
  lines: readonly string[],
  groups: readonly SheetGroup[],
  steps: readonly CutStep[],
  revision: number,
): CutList => ({
  id: runId,
  lines,
  groups,
  steps,
  taken: null,
  counted: [],
  revision,
});
