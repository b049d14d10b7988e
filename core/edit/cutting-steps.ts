import type { SheetGroup } from '../cutting/plan.ts';
import type { CutStep } from '../cutting/step.ts';
import type { CutList } from '../shop/stock.ts';

/** Steps with the one at `from` put so that `to` steps stand before it. */
export function moveStep(steps: readonly CutStep[], from: number, to: number): readonly CutStep[] {
  const step = steps[from];
  if (!step) return steps;
  const others = steps.filter((_, at) => at !== from);
  return [...others.slice(0, to), step, ...others.slice(to)];
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
