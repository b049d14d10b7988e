import type { Sheet } from '../material/material.ts';
import type { Schedule, ScheduledOperation } from '../schedule/problem.ts';
import type { Machine } from '../shop/machine.ts';
import type { Shop } from '../shop/state.ts';
import { instant, type Instant } from '../units/brand.ts';
import { sameLineLot, type LineLot } from './line-lot.ts';
import type { ShopOperation } from './operations.ts';

/** The part of a plan's view (core/planning/plan-view.ts) that runs, lists and paper are read off. */
export interface PlanRead {
  readonly schedule: Schedule;
  readonly operations: ReadonlyMap<string, ShopOperation>;
}

/** An operation with its times in the plan. */
export interface PlannedOperation {
  readonly planned: ScheduledOperation;
  readonly operation: ShopOperation;
}

/** What blanks are cut from. */
export type Metal = Pick<Sheet, 'materialId' | 'gauge' | 'colourId'>;

export const sameMetal = (a: Metal, b: Metal): boolean =>
  a.materialId === b.materialId && a.gauge === b.gauge && a.colourId === b.colourId;

/** Whether the blanks of two lines come from the same sheets: one metal, of it one lot where the shop tells lots apart, there at one time. */
const sameSheets = (a: ShopOperation, b: ShopOperation): boolean =>
  sameMetal(a.line, b.line) &&
  sameLineLot(a.lot, b.lot) &&
  (a.metal?.arrival ?? null) === (b.metal?.arrival ?? null);

/** Neighbours that belong together, side by side. @returns maximal stretches, in order; none is empty */
function stretches<T>(queue: readonly T[], goesOn: (before: T, next: T) => boolean): T[][] {
  const all: T[][] = [];
  for (const item of queue) {
    const last = all.at(-1);
    if (last && goesOn(last.at(-1)!, item)) last.push(item);
    else all.push([item]);
  }
  return all;
}

/**
 * The runs of a shear's queue: maximal stretches of one metal and lot, whose sheets are there at one time. A sheet is of one material, gauge and colour, so a
 * run ends where the metal does, also where changing over to the next costs nothing. Needs no times.
 */
export const metalRuns = (queue: readonly ShopOperation[]): ShopOperation[][] => stretches(queue, sameSheets);

/**
 * The runs of one machine's queue as planned, the only definition of a run with times: maximal stretches inside which
 * nothing is changed over and, on a shear, metal and lot are one (`metalRuns`). Board, paper, cutting and figures read these.
 * @returns in queue order
 * @throws RangeError for a scheduled operation that the plan's view does not hold, a caller's bug
 */
export function queueRuns({ schedule, operations }: PlanRead, machine: Machine): PlannedOperation[][] {
  const queue = schedule.operations
    .filter((planned) => planned.machine === machine.id)
    .map((planned): PlannedOperation => {
      const operation = operations.get(planned.operation);
      if (!operation)
        throw new RangeError(`queueRuns: ${planned.operation} is scheduled but not in the shop`);
      return { planned, operation };
    });
  return stretches(queue, (before, { planned, operation }) =>
    machine.stage === 'shear' ? sameSheets(before.operation, operation) : planned.changeoverSeconds === 0,
  );
}

/** A run of a shear's queue as it is cut. Read off the plan, never stored. */
export interface ShearRun {
  /** Its first line. */
  readonly id: string;
  readonly machine: Machine;
  readonly materialId: string;
  readonly gauge: string;
  readonly colourId: string;
  /** Of all its lines; null where the shop tells no lots apart. */
  readonly lot: LineLot | null;
  /** In queue order. */
  readonly operations: readonly ShopOperation[];
  readonly start: Instant;
  readonly end: Instant;
}

/**
 * The runs of all shears in the order of their start. What is cut to the last piece already is left out.
 * @param plan the plan as the board shows it
 */
export function shearRuns(shop: Shop, plan: PlanRead): ShearRun[] {
  const shears = shop.machine.filter(({ stage }) => stage === 'shear');
  const runs = shears.flatMap((machine) =>
    queueRuns(plan, machine).map((run): ShearRun => {
      const [{ planned: first, operation }, last] = [run[0]!, run.at(-1)!];
      const { id, materialId, gauge, colourId } = operation.line;
      return {
        id,
        machine,
        materialId,
        gauge,
        colourId,
        lot: operation.lot,
        operations: run.map((one) => one.operation),
        start: instant(first.start),
        end: instant(last.planned.end),
      };
    }),
  );
  return runs.sort((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1));
}
