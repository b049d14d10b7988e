import type { Shop } from '../shop/state.ts';
import { cutRun, freeStock, isTaken, type RunCut, type ShearRun } from './cutting.ts';
import { viewQueues, type PlanView } from './plan-view.ts';

/** A later run of the same metal brought forward to an earlier one, and what that changes. */
export interface Join {
  readonly other: RunCut;
  /** The plan with the runs joined. */
  readonly queues: Record<string, string[]>;
  /** Cost of stock for both runs now, less that of the joined one; below 0 it costs more. */
  readonly savedCents: number;
  /** Change over the whole plan, seconds; above 0 more. */
  readonly changeoverSeconds: number;
  /** Change of the weighted sum of tardiness, seconds; above 0 later. */
  readonly latenessSeconds: number;
  readonly lateLines: number;
}

/**
 * What joining a run and the next one of the same metal on the same shear would bring. Both costs are reckoned with all
 * stock free, so that they compare.
 * @returns null without such a run, where the runs cannot be cut, or where the sheets of one were taken already
 */
export function joinOf(shop: Shop, plan: PlanView, cuts: readonly RunCut[], cut: RunCut): Join | null {
  const { run } = cut;
  const at = cuts.findIndex((one) => one.run.id === run.id);
  const other = cuts
    .slice(at + 1)
    .find((one) => !isTaken(one) && one.run.machine.id === run.machine.id && sameMetal(one.run, run));
  if (at < 0 || !other || isTaken(cut)) return null;
  const moved = other.run.operations.map((o) => o.id);
  const last = run.operations.at(-1)?.id;
  const queues = Object.fromEntries(
    Object.entries(plan.queues).map(([machine, ids]) => [
      machine,
      ids.filter((id) => !moved.includes(id)).flatMap((id) => (id === last ? [id, ...moved] : [id])),
    ]),
  );
  const after = viewQueues(shop, plan, queues);
  if (!after.ok) return null;
  const costOf = (one: ShearRun): number | null => {
    const { plan: made } = cutRun(shop, one, freeStock(shop));
    return made.ok ? made.value.costCents : null;
  };
  const [first, second] = [costOf(run), costOf(other.run)];
  const joined = costOf({ ...run, operations: [...run.operations, ...other.run.operations] });
  if (first === null || second === null || joined === null) return null;
  const { figures } = after.value;
  return {
    other,
    queues,
    savedCents: Math.round(first + second - joined),
    changeoverSeconds: figures.changeoverSeconds - plan.figures.changeoverSeconds,
    latenessSeconds: figures.weightedTardiness - plan.figures.weightedTardiness,
    lateLines: figures.lateLines - plan.figures.lateLines,
  };
}

const sameMetal = (a: ShearRun, b: ShearRun): boolean =>
  a.materialId === b.materialId && a.gauge === b.gauge && a.colourId === b.colourId;
