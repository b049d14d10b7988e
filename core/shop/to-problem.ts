import { buildProblem } from '../schedule/build.ts';
import { decode } from '../schedule/decode.ts';
import type {
  JobInput,
  MachineInput,
  OperationInput,
  Problem as Compiled,
  ProblemInput,
  Queues,
} from '../schedule/problem.ts';
import { workingTime, type WorkingTime } from '../schedule/working-time.ts';
import { openIntervals } from '../time/working-time.ts';
import { instant, type Instant } from '../units/brand.ts';
import { completeQueues } from './complete-queues.ts';
import { operationsOf, type ShopOperation } from './operations.ts';
import { secondsOfStarted } from './remaining.ts';
import { bad, good, type Problem, type Result } from './result.ts';
import type { Shop } from './state.ts';

const DAY = 86_400;
/** Open hours are looked up this far: back, so that begun work has its hours; ahead, so that a long backlog has an end. */
const DAYS_BACK = 14;
const DAYS_AHEAD = 370;

/** The shop translated for the scheduling engine; a job is an order line, its id the line's. */
export interface ShopProblem {
  readonly problem: Compiled;
  /** The plan as it stands, made whole (core/shop/complete-queues.ts). */
  readonly queues: Queues;
  /** By operation id. */
  readonly operations: ReadonlyMap<string, ShopOperation>;
  /** Open lines that stand in no queue, each with its reason. */
  readonly unplannable: readonly Problem[];
}

/**
 * The whole shop as a scheduling problem, with the plan as it stands.
 * @param now nothing that has not begun starts before it
 * @returns the problem; or what stops any planning (a calendar without open hours, an unknown time zone)
 */
export function toProblem(shop: Shop, now: Instant): Result<ShopProblem> {
  const { operations, unplannable } = operationsOf(shop);
  const machines = machineInputs(shop, now);
  if (!machines.ok) return machines;
  const queues = completeQueues(shop, operations);
  const built = buildProblem({
    name: shop.settings.name,
    machines: machines.value,
    jobs: jobInputs(shop, operations, machines.value, now),
    objective: objectiveOf(shop),
    now,
    crew:
      shop.settings.crewLimit === null
        ? null
        : [{ start: 0, end: now + DAYS_AHEAD * DAY, people: shop.settings.crewLimit }],
  });
  if (!built.ok) return built;
  return good({
    problem: built.value,
    queues,
    operations: new Map(operations.map((o) => [o.id, o])),
    unplannable,
  });
}

/**
 * The same for the search: pins and the frozen window hold, and the plan as it stands is what calm is measured from.
 * Only operations that the stored plan names are frozen; what was never planned may go anywhere.
 */
export function toSearchProblem(shop: Shop, now: Instant): Result<ShopProblem> {
  const plain = toProblem(shop, now);
  if (!plain.ok) return plain;
  const { problem, queues } = plain.value;
  const present = decode(problem, queues);
  if (!present.ok) return present;
  const planned = new Set(shop.queue.flatMap((q) => q.operations));
  const fence = now + shop.settings.frozenHours * 3600;
  const starts = new Map(present.value.operations.map((o) => [o.operation, o.start]));
  const frozen: Record<string, string[]> = {};
  for (const [machine, ids] of Object.entries(queues)) {
    const free = ids.findIndex((id) => !planned.has(id) || (starts.get(id) ?? fence) >= fence);
    frozen[machine] = free === -1 ? [...ids] : ids.slice(0, free);
  }
  const lines = new Set([...planned].map((id) => plain.value.operations.get(id)?.line.id));
  const input: ProblemInput = {
    ...problem.input,
    frozen,
    pins: pinsOf(shop, queues),
    reference: Object.fromEntries(Object.entries(present.value.ends).filter(([line]) => lines.has(line))),
  };
  const built = buildProblem(input);
  return built.ok ? good({ ...plain.value, problem: built.value }) : built;
}

/** Weights in the engine's words. */
const objectiveOf = ({ settings: { weights } }: Shop): ProblemInput['objective'] => ({
  weightedTardiness: weights.lateness,
  changeover: weights.changeover,
  makespan: 0,
  flowTime: weights.flow,
  disturbance: weights.calm,
});

function machineInputs(shop: Shop, now: Instant): Result<MachineInput[]> {
  const inputs: MachineInput[] = [];
  const problems: Problem[] = [];
  for (const machine of shop.machine) {
    const calendar = shop.calendar.find((c) => c.id === machine.calendarId);
    if (!calendar) throw new Error(`machine ${machine.id}: calendar ${machine.calendarId} is gone`);
    const downtimes = shop.downtime.filter((d) => d.machineId === machine.id);
    const from = instant(now - DAYS_BACK * DAY);
    const open = openIntervals(
      calendar,
      downtimes,
      shop.settings.timeZone,
      from,
      instant(now + DAYS_AHEAD * DAY),
    );
    if (!open.ok) {
      problems.push(
        ...open.problems.map((p) => ({
          ...p,
          subject: `machine ${machine.id}`,
          message: `Machine ${machine.id}: ${p.message}`,
        })),
      );
      continue;
    }
    const { id, stage, state, changeover } = machine;
    inputs.push({
      id,
      stage,
      initial: state as Record<string, string> | null,
      changeover: changeover as MachineInput['changeover'],
      open: open.value,
    });
  }
  return problems.length > 0 ? bad(...problems) : good(inputs);
}

function jobInputs(
  shop: Shop,
  operations: readonly ShopOperation[],
  machines: readonly MachineInput[],
  now: Instant,
): JobInput[] {
  const open = new Map(machines.map((m) => [m.id, workingTime(m.open)]));
  const jobs = new Map<string, JobInput & { operations: OperationInput[] }>();
  for (const operation of operations) {
    const { line, order } = operation;
    let job = jobs.get(line.id);
    if (!job) {
      job = {
        id: line.id,
        release: order.release ?? now,
        due: order.due,
        weight: order.weight,
        operations: [],
      };
      jobs.set(line.id, job);
    }
    job.operations.push(operationInput(operation, shop.settings.transferShare, open, now));
  }
  return [...jobs.values()];
}

function operationInput(
  { id, stage, machines, attributes, people, started, quantity }: ShopOperation,
  transferShare: number,
  open: ReadonlyMap<string, WorkingTime>,
  now: Instant,
): OperationInput {
  const times = machines.map((able) => {
    const hours = started?.machineId === able.id ? open.get(able.id) : undefined;
    return {
      id: able.id,
      seconds:
        started && hours ? secondsOfStarted(started, quantity, able.seconds, hours, now) : able.seconds,
    };
  });
  return {
    id,
    stage,
    seconds: times[0]?.seconds ?? 0,
    machines: times,
    attributes: attributes as Record<string, string>,
    crew: people,
    ...(stage === 'shear' ? { transferShare } : {}),
    ...(started ? { started: { machine: started.machineId, at: started.at } } : {}),
  };
}

function pinsOf(shop: Shop, queues: Queues): NonNullable<ProblemInput['pins']> {
  const pinned = new Set(shop.pin.map((p) => p.id));
  return Object.entries(queues).flatMap(([machine, ids]) =>
    ids.flatMap((operation, rank) => (pinned.has(operation) ? [{ operation, machine, rank }] : [])),
  );
}
