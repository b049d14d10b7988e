import type { Blank } from '../part/blank.ts';
import type { Schedule, ScheduledOperation } from '../schedule/problem.ts';
import { attribute, inWorkOrder, type Attribute, type Attributes, type Machine } from '../shop/machine.ts';
import type { ShopOperation } from '../planning/operations.ts';
import { gaugeName, metalWords } from '../shop/metal-name.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Part } from '../part/part.ts';
import type { Shop } from '../shop/state.ts';
import { instant, type Instant } from '../units/brand.ts';

/** Where a line goes after this machine. */
export interface NextStep {
  readonly machineName: string;
  readonly start: Instant;
}

/** One operation on a machine's list, as the person at the machine needs it. */
export interface DispatchRow {
  /** Place in the machine's queue, from 1. */
  readonly place: number;
  readonly operationId: string;
  readonly line: OrderLine;
  /** Pieces to make here: the line's, less those scrapped on the step before. */
  readonly quantity: number;
  readonly customer: string;
  readonly rush: boolean;
  readonly part: Part;
  readonly colourName: string;
  readonly blank: Blank;
  readonly start: Instant;
  readonly end: Instant;
  readonly people: number;
  readonly due: Instant;
  /** Seconds by which the whole line ends after its due date; 0 when it is on time. */
  readonly tardiness: number;
  /** Null on the line's last machine. */
  readonly next: NextStep | null;
}

/** One thing to change on the machine; `from` null when what is set up is not known. Names as people say them. */
export interface SetupStep {
  readonly attribute: Attribute;
  readonly from: string | null;
  readonly to: string;
}

/** A stretch of the queue without a changeover inside it, and the changeover before it. */
export interface DispatchRun {
  /** What all its rows share, e.g. "24 ga Moss, galvanized". */
  readonly title: string;
  /** Seconds, and what changes; null when the machine needs none. */
  readonly changeover: {
    readonly start: Instant;
    readonly seconds: number;
    readonly steps: readonly SetupStep[];
  } | null;
  readonly rows: readonly DispatchRow[];
}

export interface DispatchList {
  readonly machine: Machine;
  readonly runs: readonly DispatchRun[];
}

/** The part of a plan's view (core/planning/plan-view.ts) that a list is drawn from. */
export interface PlanRead {
  readonly schedule: Schedule;
  readonly operations: ReadonlyMap<string, ShopOperation>;
}

/**
 * The queues of the machines on paper: what lies, even in part, in [from, to), in queue order, grouped by run. Times and
 * places are the schedule's own, so the paper says what the board says.
 * @returns one list a machine of the shop, shears first, empty ones too
 */
export function dispatchLists(shop: Shop, plan: PlanRead, from: Instant, to: Instant): DispatchList[] {
  const index = indexOf(shop, plan);
  return inWorkOrder(shop.machine).map((machine) => {
    const queue = plan.schedule.operations.filter((o) => o.machine === machine.id);
    return { machine, runs: runsOf(index, machine, queue, (o) => o.changeoverStart < to && o.end > from) };
  });
}

type Index = ReturnType<typeof indexOf>;

function indexOf(shop: Shop, { schedule, operations }: PlanRead) {
  const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
    new Map(rows.map((row) => [row.id, row]));
  return {
    operations,
    parts: byId(shop.part),
    materials: byId(shop.material),
    colours: byId(shop.colour),
    machines: byId(shop.machine),
    steps: new Map(schedule.operations.map((o) => [`${o.job} ${o.index}`, o])),
    ends: schedule.ends,
  };
}

/** Walks the whole queue, so that states and places are right, and keeps what is wanted. */
function runsOf(
  index: Index,
  machine: Machine,
  queue: readonly ScheduledOperation[],
  wanted: (o: ScheduledOperation) => boolean,
): DispatchRun[] {
  const runs: { rows: DispatchRow[]; changeover: DispatchRun['changeover']; shared: Attributes }[] = [];
  let state: Attributes = machine.state ?? {};
  let broken = true;
  queue.forEach((o, position) => {
    const operation = operationOf(index, o);
    const steps = setupSteps(index, machine, state, operation.attributes);
    state = { ...state, ...operation.attributes };
    broken ||= o.changeoverSeconds > 0;
    if (!wanted(o)) return;
    const row = rowOf(index, operation, o, position + 1);
    const changeover =
      o.changeoverSeconds > 0
        ? { start: instant(o.changeoverStart), seconds: o.changeoverSeconds, steps }
        : null;
    const run = runs.at(-1);
    if (broken || run === undefined) runs.push({ rows: [row], changeover, shared: operation.attributes });
    else {
      run.rows.push(row);
      run.shared = common(run.shared, operation.attributes);
    }
    broken = false;
  });
  return runs.map(({ rows, changeover, shared }) => ({ title: titleOf(index, shared), changeover, rows }));
}

/** The attributes on which two operations agree. */
function common(a: Attributes, b: Attributes): Attributes {
  return Object.fromEntries(Object.entries(a).filter(([key, value]) => b[key as Attribute] === value));
}

/** What differs from the machine's state, of those things that cost time on this machine. */
function setupSteps(index: Index, machine: Machine, state: Attributes, asked: Attributes): SetupStep[] {
  const rules = machine.changeover;
  return attribute.options.flatMap((name): SetupStep[] => {
    const to = asked[name];
    const from = state[name];
    const costs = rules.attributes[name] !== undefined || rules.exceptions.some((e) => e.attribute === name);
    if (to === undefined || to === from || !costs) return [];
    return [
      {
        attribute: name,
        from: from === undefined ? null : nameOf(index, name, from),
        to: nameOf(index, name, to),
      },
    ];
  });
}

/** An attribute's value as people say it; the value itself where its row has gone. */
function nameOf(index: Index, name: Attribute, value: string): string {
  switch (name) {
    case 'material':
      return index.materials.get(value)?.name ?? value;
    case 'gauge':
      return gaugeName(value);
    case 'colour':
      return index.colours.get(value)?.name ?? value;
    case 'profile':
      return index.parts.get(value)?.name ?? value;
  }
}

function titleOf(index: Index, { gauge, colour, material, profile }: Attributes): string {
  const metal = metalWords({
    gauge,
    colour: colour && nameOf(index, 'colour', colour),
    material: material && nameOf(index, 'material', material),
  });
  return [metal, profile && nameOf(index, 'profile', profile)].filter(Boolean).join(', ');
}

function operationOf(index: Index, o: ScheduledOperation): ShopOperation {
  const operation = index.operations.get(o.operation);
  if (!operation) throw new RangeError(`dispatchLists: ${o.operation} is scheduled but not in the shop`);
  return operation;
}

function rowOf(
  index: Index,
  { line, quantity, order, part, blank, people }: ShopOperation,
  o: ScheduledOperation,
  place: number,
): DispatchRow {
  const colour = index.colours.get(line.colourId);
  return {
    place,
    operationId: o.operation,
    line,
    quantity,
    customer: order.customer,
    rush: order.rush,
    part,
    colourName: colour?.name ?? line.colourId,
    blank,
    start: instant(o.start),
    end: instant(o.end),
    people,
    due: instant(order.due),
    tardiness: Math.max(0, (index.ends[line.id] ?? o.end) - order.due),
    next: nextStep(index, o),
  };
}

function nextStep(index: Index, o: ScheduledOperation): NextStep | null {
  const next = index.steps.get(`${o.job} ${o.index + 1}`);
  const machine = next && index.machines.get(next.machine);
  return next && machine ? { machineName: machine.name, start: instant(next.start) } : null;
}
