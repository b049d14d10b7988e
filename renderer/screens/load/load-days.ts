import { loadByDay, type DayLoad } from '../../../core/report/load.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { ScheduledOperation } from '../../../core/schedule/problem.ts';
import type { OpenInterval } from '../../../core/schedule/working-time.ts';
import { isElsewhere } from '../../../core/part/stage.ts';
import { inWorkOrder, type Machine } from '../../../core/shop/machine.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { intersect } from '../../../core/time/interval.ts';
import { addDays, startOfDay } from '../../../core/time/wall.ts';
import type { Instant } from '../../../core/units/brand.ts';

/** Where work is counted: on the days it is planned on, or on the day it is due (overdue work: today). */
export const bases = ['planned', 'due'] as const;
type Basis = (typeof bases)[number];

export interface MachineLoad {
  readonly machine: Machine;
  readonly days: readonly DayLoad[];
  readonly capacity: number;
  readonly work: number;
  readonly changeover: number;
  /** null: closed all the time. */
  readonly utilisation: number | null;
}

/** More is asked of a day than it has open, beyond the minute that rounding may make. */
export const isOver = ({
  work,
  changeover,
  capacity,
}: Pick<DayLoad, 'work' | 'changeover' | 'capacity'>): boolean => work + changeover > capacity + 60;

/**
 * Each machine's load day by day from today on; today counts from the present minute, so it has only the hours left.
 * By the plan a day is never over its capacity, because a plan keeps the open hours. By due date it may be: that is
 * the work that has to be started earlier, or comes late.
 */
export function machineLoads(
  shop: Shop,
  plan: PlanView,
  now: Instant,
  days: number,
  basis: Basis,
): MachineLoad[] {
  const { timeZone } = shop.settings;
  const today = startOfDay(now, timeZone);
  const end = addDays(today, days, timeZone);
  // An outside shop has no hours of ours to fill.
  const machines = shop.machine.filter(({ stage }) => !isElsewhere(stage));
  return inWorkOrder(machines).map((machine) => {
    const open = intersect(openOf(plan, machine.id), [{ start: now, end }]);
    const operations = plan.schedule.operations.filter((o) => o.machine === machine.id);
    const planned = loadByDay(machine.id, open, operations, today, days, timeZone);
    const rows = basis === 'planned' ? planned : dueLoad(plan, planned, operations, end);
    const sum = (part: (day: DayLoad) => number) => rows.reduce((all, day) => all + part(day), 0);
    const [capacity, work, changeover] = [
      sum((d) => d.capacity),
      sum((d) => d.work),
      sum((d) => d.changeover),
    ];
    const utilisation = capacity > 0 ? (work + changeover) / capacity : null;
    return { machine, days: rows, capacity, work, changeover, utilisation };
  });
}

const openOf = (plan: PlanView, machineId: string): readonly OpenInterval[] =>
  plan.problem.input.machines.find((m) => m.id === machineId)?.open ?? [];

/** The same days with each operation's whole work and changeover on the day its line is due; later ones left out. */
function dueLoad(
  plan: PlanView,
  days: readonly DayLoad[],
  operations: readonly ScheduledOperation[],
  end: Instant,
): DayLoad[] {
  const rows = days.map((day) => ({ ...day, work: 0, changeover: 0 }));
  for (const o of operations) {
    const operation = plan.operations.get(o.operation);
    if (!operation || operation.terms.due >= end) continue;
    const row = rows.findLast(({ day }) => day <= operation.terms.due) ?? rows[0];
    if (!row) continue;
    row.work += operation.machines.find((m) => m.id === o.machine)?.seconds ?? 0;
    row.changeover += o.changeoverSeconds;
  }
  return rows.map((row) => ({
    ...row,
    utilisation: row.capacity > 0 ? (row.work + row.changeover) / row.capacity : null,
  }));
}

export const percent = (share: number): string => `${Math.round(share * 100)} %`;
