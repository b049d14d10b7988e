import { metalWords } from '../../core/shop/metal-name.ts';
import type { PlanView } from '../../core/planning/plan-view.ts';
import { queueRuns, type PlannedOperation } from '../../core/planning/runs.ts';
import type { ScheduledOperation } from '../../core/schedule/problem.ts';
import { isElsewhere } from '../../core/part/stage.ts';
import { inWorkOrder, type Machine } from '../../core/shop/machine.ts';
import type { ShopOperation } from '../../core/planning/operations.ts';
import type { Shop } from '../../core/shop/state.ts';
import { intersect, subtract, type Interval } from '../../core/time/interval.ts';
import { DAY } from '../../core/units/duration.ts';

/** One operation as a bar of its sheet's colour. Instants in epoch seconds. */
export interface Bar {
  readonly operation: string;
  readonly lineId: string;
  readonly orderId: string;
  /** Count of operations before it in the queue. */
  readonly position: number;
  readonly changeoverStart: number;
  readonly changeoverSeconds: number;
  readonly start: number;
  readonly end: number;
  /** The parts of [start, end) in which the machine is open; work rests in between. */
  readonly pieces: readonly Interval[];
  /** The same of [changeoverStart, start). */
  readonly changeoverPieces: readonly Interval[];
  /** Where bars may overlap, which of so many levels of the lane it is drawn on, from 0; 0 of 1 elsewhere. */
  readonly level: number;
  readonly levels: number;
  /** "#2f5d3a", the sheet's own colour. */
  readonly hex: string;
  readonly colourName: string;
  readonly gauge: string;
  readonly partName: string;
  readonly quantity: number;
  readonly customer: string;
  readonly due: number;
  /** Seconds by which the line ends after its due date; 0 on time. */
  readonly tardiness: number;
  /** The line ends with this operation. */
  readonly last: boolean;
  readonly pinned: boolean;
  readonly started: boolean;
  readonly rush: boolean;
}

/** A run (core/planning/runs.ts) as the board draws it. */
export interface Run {
  readonly start: number;
  readonly end: number;
  /** Which of the lane's bars is its first, and how many are its. */
  readonly first: number;
  readonly count: number;
  /** What its operations share, "24 ga Moss". */
  readonly title: string;
}

export interface Lane {
  readonly machine: Machine;
  /** In queue order, so ascending in time; overlapping only at an outside shop, on levels of their own. */
  readonly bars: readonly Bar[];
  readonly runs: readonly Run[];
  /** Stretches in which the machine is closed, ascending. */
  readonly closed: readonly Interval[];
  /** Why it never opens and has no queue, a sentence; null for a machine with open hours. */
  readonly shut: string | null;
  /** Due dates of the lines that end here, ascending, each once. */
  readonly dues: readonly number[];
}

/** The stretch of time the board can show: a week back, and a week past the last end or due date. */
export function horizonOf(plan: PlanView): Interval {
  const { now, jobs } = plan.problem.input;
  const last = jobs.reduce((latest, job) => Math.max(latest, job.due ?? 0), plan.figures.lastEnd ?? now);
  const first = plan.schedule.operations.reduce((earliest, o) => Math.min(earliest, o.start), now);
  return { start: first - 7 * DAY, end: Math.max(now, last) + 7 * DAY };
}

/**
 * The plan as lanes, one a machine, shears first, else in the shop's order. Times only: where they are drawn is the scale's
 * affair.
 * @param like the lanes of the same shop with its queues in another order: what stays where it is is taken over as it is,
 *   so that nothing of it is drawn again
 */
export function lanesOf(shop: Shop, plan: PlanView, like: readonly Lane[] = []): Lane[] {
  const horizon = horizonOf(plan);
  const before = new Map(like.map((lane) => [lane.machine.id, lane]));
  const known = new Map(like.flatMap(({ bars }) => bars.map((bar) => [bar.operation, bar])));
  const colours = new Map(shop.colour.map((colour) => [colour.id, colour]));
  const pins = new Set(shop.pin.map((pin) => pin.id));
  const lastIndex = new Map(plan.problem.input.jobs.map((job) => [job.id, job.operations.length - 1]));
  const barOf = (o: ScheduledOperation, position: number, open: readonly Interval[] | null): Bar[] => {
    const operation = plan.operations.get(o.operation);
    if (!operation) return [];
    const tardiness = Math.max(0, (plan.schedule.ends[o.job] ?? o.end) - operation.terms.due);
    const old = known.get(o.operation);
    if (old && old.levels === 1)
      return [
        isAsBefore(old, o, position, tardiness) ? old : { ...old, ...placeOf(o, position, open), tardiness },
      ];
    const colour = colours.get(operation.line.colourId);
    return [
      {
        ...placeOf(o, position, open),
        ...wordsOf(operation),
        hex: colour?.hex ?? '#808080',
        colourName: colour?.name ?? operation.line.colourId,
        tardiness,
        last: o.index === lastIndex.get(o.job),
        pinned: pins.has(o.operation),
      },
    ];
  };
  return inWorkOrder(shop.machine).map((machine) => {
    const shut = plan.shut.get(machine.id);
    const open = shut ? [] : (plan.problem.input.machines.find((m) => m.id === machine.id)?.open ?? null);
    const queue = plan.schedule.operations.filter((o) => o.machine === machine.id);
    const flat = queue.flatMap((o, position) => barOf(o, position, open));
    const isOutside = isElsewhere(machine.stage);
    const bars = isOutside ? onLevels(flat) : flat;
    const old = before.get(machine.id);
    const closed = closedOf(open, horizon, old?.closed);
    if (
      old &&
      closed === old.closed &&
      old.bars.length === bars.length &&
      bars.every((bar, i) => bar === old.bars[i])
    )
      return old;
    return {
      machine,
      bars,
      runs: isOutside ? [] : runsOf(bars, queueRuns(plan, machine)),
      closed,
      shut: shut ? `${shut.message} ${shut.advice}` : null,
      dues: duesOf(bars),
    };
  });
}

const isAsBefore = (old: Bar, o: ScheduledOperation, position: number, tardiness: number): boolean =>
  old.position === position &&
  old.start === o.start &&
  old.end === o.end &&
  old.changeoverStart === o.changeoverStart &&
  old.changeoverSeconds === o.changeoverSeconds &&
  old.tardiness === tardiness;

function placeOf(o: ScheduledOperation, position: number, open: readonly Interval[] | null) {
  const openIn = (start: number, end: number): readonly Interval[] => {
    const whole = end > start ? [{ start, end }] : [];
    return open ? intersect(whole, near(open, start, end)) : whole;
  };
  return {
    operation: o.operation,
    position,
    changeoverStart: o.changeoverStart,
    changeoverSeconds: o.changeoverSeconds,
    start: o.start,
    end: o.end,
    level: 0,
    levels: 1,
    pieces: openIn(o.start, o.end),
    changeoverPieces: openIn(o.changeoverStart, o.start),
  };
}

const wordsOf = ({ line, order, terms, part, started }: ShopOperation) => ({
  lineId: line.id,
  orderId: order.id,
  gauge: line.gauge,
  partName: part.name,
  quantity: line.quantity,
  customer: order.customer,
  due: terms.due,
  started: started !== null,
  rush: order.rush,
});

/** Index of the first item for which `isPast` holds; items before it do not, items after it do. */
export function firstWhere<T>(items: readonly T[], isPast: (item: T) => boolean): number {
  let low = 0;
  let high = items.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isPast(items[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The items of an ascending list that touch [from, to). */
export const near = <T extends Interval>(items: readonly T[], from: number, to: number): readonly T[] =>
  items.slice(
    firstWhere(items, (item) => item.end > from),
    firstWhere(items, (item) => item.start >= to),
  );

/** Each bar on the first level that is free by then. */
function onLevels(bars: readonly Bar[]): Bar[] {
  const free: number[] = [];
  const placed = bars.map((bar) => {
    const found = free.findIndex((end) => end <= bar.start);
    const level = found === -1 ? free.length : found;
    free[level] = bar.end;
    return { ...bar, level };
  });
  return placed.map((bar) => ({ ...bar, levels: free.length }));
}

/** The bars of a lane that touch [from, to). */
export const barsIn = ({ bars }: Pick<Lane, 'bars'>, from: number, to: number): readonly Bar[] =>
  (bars[0]?.levels ?? 1) > 1 ? bars.filter((bar) => bar.end > from && bar.start < to) : near(bars, from, to);

/** Closed hours of the horizon; the very ones of before where they are the same. */
function closedOf(
  open: readonly Interval[] | null,
  horizon: Interval,
  before?: readonly Interval[],
): readonly Interval[] {
  const closed = open ? subtract([horizon], near(open, horizon.start, horizon.end)) : [];
  const isSame =
    before?.length === closed.length &&
    closed.every(({ start, end }, i) => start === before[i]?.start && end === before[i].end);
  return isSame ? before : closed;
}

const duesOf = (bars: readonly Bar[]): number[] =>
  [...new Set(bars.filter((bar) => bar.last).map((bar) => bar.due))].sort((a, b) => a - b);

function runsOf(bars: readonly Bar[], runs: readonly (readonly PlannedOperation[])[]): Run[] {
  const barOf = new Map(bars.map((bar) => [bar.operation, bar]));
  return runs.map((run) => {
    const group = run.map(({ planned }) => barOf.get(planned.operation)!);
    const shared = (of: (bar: Bar) => string) =>
      new Set(group.map(of)).size === 1 ? of(group[0]!) : undefined;
    const title = metalWords({ gauge: shared((bar) => bar.gauge), colour: shared((bar) => bar.colourName) });
    return {
      ...{ start: group[0]!.start, end: group.at(-1)!.end },
      ...{ first: bars.indexOf(group[0]!), count: group.length, title },
    };
  });
}
