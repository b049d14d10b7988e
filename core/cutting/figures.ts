import { countSteps } from './counts.ts';
import type { CutPlan, SheetGroup } from './plan.ts';
import { remnantsOf } from './remnants.ts';
import type { RunInput } from './run.ts';
import type { CutStep } from './step.ts';
import { workCents } from './work.ts';

type Priced = Pick<RunInput, 'keep' | 'work' | 'stock'>;
type Figures = Pick<CutPlan, 'counts' | 'costCents' | 'workCents' | 'remnantCents' | 'remnants' | 'areas'>;

/** All that is counted and priced of a list: what it takes, what its work costs, what it leaves that is worth keeping. */
export function figuresOfList(
  groups: readonly SheetGroup[],
  steps: readonly CutStep[],
  { keep, work, stock }: Priced,
): Figures {
  const { sizes, cents, keptMm2 } = remnantsOf(groups, keep, stock);
  return {
    counts: countSteps(steps),
    costCents: groups.reduce((sum, group) => sum + group.count * group.costCents, 0),
    workCents: workCents(steps, work),
    remnantCents: cents,
    remnants: sizes,
    areas: areasOf(groups, keptMm2),
  };
}

/** Areas over all sheets. What a changed list leaves on a stack, and remnants beyond those worth keeping, are scrap. */
function areasOf(groups: readonly SheetGroup[], keptMm2: number): CutPlan['areas'] {
  const sum = (rects: (group: SheetGroup) => readonly { w: number; h: number }[]): number =>
    groups.reduce(
      (total, group) => total + group.count * rects(group).reduce((area, { w, h }) => area + w * h, 0),
      0,
    );
  const offcuts = (...kinds: string[]): number =>
    sum((group) => group.offcuts.filter((cut) => kinds.includes(cut.kind)));
  return {
    blanks: sum((group) => group.blanks),
    remnants: keptMm2,
    scrap: Math.max(0, offcuts('remnant', 'scrap', 'left') - keptMm2),
    trim: offcuts('trim'),
  };
}
