import type { LineShift, PlanChange, RepairPlan, RushWay } from '../../core/contract/ask.ts';
import type { Change } from '../../core/schedule/explain.ts';
import type { Queues } from '../../core/schedule/problem.ts';
import type { Repair } from '../../core/schedule/repair.ts';
import type { RushWay as Way } from '../../core/schedule/rush/way.ts';
import type { JobShift } from '../../core/schedule/what-if/shifts.ts';

/** Answers as they cross the border: the order only, its times are decoded again where they are shown. */

export const plainQueues = (queues: Queues): Record<string, string[]> =>
  Object.fromEntries(Object.entries(queues).map(([machine, operations]) => [machine, [...operations]]));

export const plainShift = (shift: JobShift): LineShift => ({ ...shift });

export const plainChange = ({ schedule: _, ...change }: Change): PlanChange => ({
  ...change,
  moves: change.moves.map((move) => ({ ...move })),
  queues: plainQueues(change.queues),
  later: change.later.map(plainShift),
  earlier: change.earlier.map(plainShift),
});

export const plainWay = ({ schedule: _, ...way }: Way): RushWay => ({
  ...way,
  queues: plainQueues(way.queues),
  later: way.later.map(plainShift),
  earlier: way.earlier.map(plainShift),
});

export const plainRepair = ({ schedule: _, ...repair }: Repair): RepairPlan => ({
  ...repair,
  queues: plainQueues(repair.queues),
  late: [...repair.late],
  madeLate: [...repair.madeLate],
  saved: [...repair.saved],
});
