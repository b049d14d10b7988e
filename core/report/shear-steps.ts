import type { CutPlan, SheetGroup } from '../cutting/plan.ts';
import type { ShearAtWork } from '../cutting/replay.ts';
import { stepPlaces } from '../cutting/step-places.ts';
import { cutsOf } from '../cutting/step.ts';
import type { Shop } from '../shop/state.ts';
import { formatCutLength } from '../units/length.ts';
import { CONTINUOUS_ONLY } from './cautions.ts';
import { stepRows, type StepRow } from './cutting-words.ts';

/** One step of the shear's list, for the person who makes it. */
export interface ShearStep extends StepRow {
  /** What the back gauge is set to, or the scribed line: figures apart from their unit, since they are read from afar. */
  readonly figures: string;
  readonly unit: string;
  /** "Back gauge", "Cut to a line at", or "No cut". */
  readonly how: string;
  /** Cuts to make over all pieces fed, and those counted. */
  readonly cuts: number;
  readonly made: number;
  /** What becomes of the piece, a sentence each. */
  readonly becomes: readonly string[];
  /** The sheet that it is cut from, with the places on it. */
  readonly group: SheetGroup | null;
  readonly places: ReturnType<typeof stepPlaces>;
}

/** Cuts counted so far of each step of a list. */
export const cutsMade = (shop: Pick<Shop, 'cutCount'>, listId: string): ReadonlyMap<number, number> =>
  new Map(shop.cutCount.flatMap((row) => (row.listId === listId ? [[row.step, row.made] as const] : [])));

/**
 * A step list one step at a time.
 * @param made cuts counted by step (`cutsMade`); of a list that is only proposed none can be
 */
export function shearSteps(
  { steps, groups }: Pick<CutPlan, 'steps' | 'groups'>,
  at: ShearAtWork,
  made: ReadonlyMap<number, number>,
): ShearStep[] {
  return stepRows({ steps, groups }, at).map((row, n) => {
    const step = steps[n]!;
    const group = groups.find(({ id }) => id === step.group) ?? null;
    const isCut = step.cutsEach > 0;
    return {
      ...row,
      ...apart(formatCutLength(step.sizeMm, at.units), at.units.units),
      how: !isCut ? 'No cut' : step.backGaugeMm === null ? 'Cut to a line at' : 'Back gauge',
      stroke: step.stroke === 'single' ? 'Single stroke' : `Continuous strokes, ${CONTINUOUS_ONLY}`,
      cuts: cutsOf(step),
      made: made.get(step.number) ?? 0,
      becomes: [...(isCut ? [`Falls behind the blade: ${row.drop}.`] : []), `In front: ${row.held}.`],
      group,
      places: group ? stepPlaces(group, steps, step.number, at) : { fed: [], cuts: [] },
    };
  });
}

const apart = (size: string, unit: string): { figures: string; unit: string } => ({
  figures: size.replace(` ${unit}`, ''),
  unit,
});

/** Where work goes on: the first step with cuts to make, by position; the last one where all are made. */
export function openStep(steps: readonly Pick<ShearStep, 'cuts' | 'made'>[]): number {
  const open = steps.findIndex(({ cuts, made }) => made < cuts);
  return open === -1 ? Math.max(0, steps.length - 1) : open;
}
