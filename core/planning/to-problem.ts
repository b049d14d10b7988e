import { FIRST_PIECE, firstPieceSeconds, firstPieceValue } from '../estimate/first-piece.ts';
import { buildProblem } from '../schedule/build.ts';
import { decode } from '../schedule/decode.ts';
import type {
  JobInput,
  MachineInput,
  OperationInput,
  Problem as Compiled,
  ProblemInput,
  Queues,
  Schedule,
} from '../schedule/problem.ts';
import { workingTime, type WorkingTime } from '../schedule/working-time.ts';
import type { Instant } from '../units/brand.ts';
import { completeQueues } from './complete-queues.ts';
import { crewLimits } from './crew-limits.ts';
import { followedShop, publishedQueues } from './followed-plan.ts';
import { DAYS_AHEAD, machineInputs, onOpenMachines } from './machine-inputs.ts';
import { withListedTimes } from './listed-times.ts';
import { withMetal } from './lots.ts';
import { operationsOf, type ShopOperation } from './operations.ts';
import { inLots, stageAfter } from './routing.ts';
import { sharedPartOf, sharedTools, withTools } from './set-up.ts';
import { secondsOfSuspended, secondsOfStarted, startedBy } from './remaining.ts';
import { ok, type Issue, type Result } from '../result.ts';
import { lineOfOperation } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { DAY } from '../units/duration.ts';

/** The shop translated for the scheduling engine; a job is an order line, its id the line's. */
export interface ShopProblem {
  readonly problem: Compiled;
  /** The plan as it is, made whole (core/planning/complete-queues.ts). */
  readonly queues: Queues;
  /** By operation id. */
  readonly operations: ReadonlyMap<string, ShopOperation>;
  /** Open lines that stand in no queue, each with its reason. */
  readonly unplannable: readonly Issue[];
  /** Machines without an open hour ahead, each with the reason: they are left out of problem and queues. */
  readonly shut: ReadonlyMap<string, Issue>;
}

/** A problem, and what it was made of. */
export interface KnownProblem {
  readonly shop: Shop;
  readonly now: Instant;
  readonly problem: ShopProblem;
}

/** Whether nothing but queues and pins differs, and no operation by them: metal and lots go by the order of the queues. */
function isSameWork(
  { shop: before, now: then, problem }: KnownProblem,
  shop: Shop,
  now: Instant,
  operations: readonly ShopOperation[],
): boolean {
  const kinds = Object.keys(shop) as (keyof Shop)[];
  return (
    then === now &&
    kinds.every((kind) => kind === 'queue' || kind === 'pin' || shop[kind] === before[kind]) &&
    operations.length === problem.operations.size &&
    operations.every((operation) => problem.operations.get(operation.id) === operation)
  );
}

/**
 * The whole shop as a scheduling problem, with the plan as it is.
 * @param now nothing that has not started starts before it
 * @param known of an earlier state of this shop: built anew only where more than queues and pins has changed since
 * @param metalFirst lines that metal is given to before all others, as if they stood at the front
 * @returns the problem; or what stops any planning (no machine has open hours, an unknown time zone)
 */
export function toProblem(
  shop: Shop,
  now: Instant,
  known?: KnownProblem,
  metalFirst: readonly string[] = [],
): Result<ShopProblem> {
  const machines = machineInputs(shop, now);
  if (!machines.ok) return machines;
  const { inputs, shut } = machines.value;
  const { operations: alone, unplannable } = onOpenMachines(operationsOf(shop), shop.machine, shut);
  const open = { ...shop, machine: shop.machine.filter(({ id }) => !shut.has(id)) };
  const queues = completeQueues(open, alone);
  const operations = withListedTimes(shop, withMetal(shop, alone, queues, metalFirst), queues);
  if (known && isSameWork(known, shop, now, operations)) return ok({ ...known.problem, queues });
  const built = buildProblem({
    name: shop.settings.name,
    machines: inputs,
    jobs: jobInputs(shop, operations, inputs, now),
    objective: objectiveOf(shop),
    now,
    crew: crewLimits(shop, now + DAYS_AHEAD * DAY),
    partOf: sharedPartOf(shop),
  });
  if (!built.ok) return built;
  return ok({
    problem: built.value,
    queues,
    operations: new Map(operations.map((o) => [o.id, o])),
    unplannable,
    shut,
  });
}

/**
 * The same for the search: pins and the frozen window hold, and stability is measured from the plan that the floor follows.
 * Only operations that the stored plan names are frozen; what was never planned may go anywhere.
 */
export function toSearchProblem(
  shop: Shop,
  now: Instant,
  metalFirst: readonly string[] = [],
): Result<ShopProblem> {
  const plain = toProblem(shop, now, undefined, metalFirst);
  if (!plain.ok) return plain;
  const { problem, queues } = plain.value;
  const present = decode(problem, queues);
  if (!present.ok) return present;
  const planned = new Set(shop.queue.flatMap((q) => q.operations));
  const fence = now + shop.settings.frozenHours * 3600;
  const starts = new Map(present.value.operations.map((o) => [o.operation, o.start]));
  const frozen: Record<string, string[]> = {};
  for (const [machine, ids] of Object.entries(queues)) {
    if (isUnlimited(problem.input, machine)) continue;
    const free = ids.findIndex((id) => !planned.has(id) || (starts.get(id) ?? fence) >= fence);
    frozen[machine] = free === -1 ? [...ids] : ids.slice(0, free);
  }
  const reference = referenceEnds(shop, present.value.ends, now);
  if (!reference.ok) return reference;
  const input: ProblemInput = {
    ...problem.input,
    frozen,
    pins: pinsOf(shop, queues).filter((pin) => !isUnlimited(problem.input, pin.machine)),
    reference: reference.value,
  };
  const built = buildProblem(input);
  return built.ok ? ok({ ...plain.value, problem: built.value }) : built;
}

/** Work away has no order that could be kept. */
const isUnlimited = ({ machines }: ProblemInput, machine: string): boolean =>
  machines.some(({ id, unlimited }) => id === machine && unlimited);

type Ends = Schedule['ends'];

/**
 * Where the lines end that the plan names which floor and paper follow: the one published last where plans are published by
 * hand, else the plan as it is.
 * @param present the ends of the plan as it is
 */
function referenceEnds(shop: Shop, present: Ends, now: Instant): Result<Ends> {
  const byHand = shop.settings.publishing === 'byHand';
  const ends = byHand ? endsOf(followedShop(shop), now) : ok(present);
  const queues = byHand ? Object.values(publishedQueues(shop)) : shop.queue.map((q) => q.operations);
  const named = new Set(queues.flat().map(lineOfOperation));
  return ends.ok ? ok(Object.fromEntries(Object.entries(ends.value).filter(([id]) => named.has(id)))) : ends;
}

function endsOf(shop: Shop, now: Instant): Result<Ends> {
  const plan = toProblem(shop, now);
  const schedule = plan.ok ? decode(plan.value.problem, plan.value.queues) : plan;
  return schedule.ok ? ok(schedule.value.ends) : schedule;
}

/** Weights in the engine's words. */
const objectiveOf = ({ settings: { weights } }: Shop): ProblemInput['objective'] => ({
  weightedTardiness: weights.lateness,
  changeover: weights.changeover,
  makespan: 0,
  flowTime: weights.flow,
  stability: weights.stability,
});

function jobInputs(
  shop: Shop,
  operations: readonly ShopOperation[],
  machines: readonly MachineInput[],
  now: Instant,
): JobInput[] {
  const open = new Map(machines.map((m) => [m.id, workingTime(m.open)]));
  const withFirstPiece = new Set(shop.machine.flatMap((m) => (firstPieceSeconds(m) > 0 ? [m.id] : [])));
  const jobs = new Map<string, JobInput & { operations: OperationInput[] }>();
  for (const operation of operations) {
    const { line, terms } = operation;
    let job = jobs.get(line.id);
    if (!job) {
      job = {
        id: line.id,
        release: Math.max(terms.release ?? now, operation.metal?.arrival ?? -Infinity),
        due: terms.due,
        weight: terms.importance,
        operations: [],
      };
      jobs.set(line.id, job);
    }
    job.operations.push(
      operationInput(operation, shop.settings.transferShare, { open, withFirstPiece }, now),
    );
  }
  return [...jobs.values()];
}

/**
 * What a machine asks for besides: a changeover to the tools of a brake, that no other brake holds those it shares, and a
 * first piece where that belongs to the changeover.
 */
function askedThere({ tools, attributes }: ShopOperation['machines'][number], firstPiece: boolean) {
  const first = firstPiece ? firstPieceValue(attributes, tools !== null) : null;
  const asked = { ...withTools({}, tools), ...(first === null ? {} : { [FIRST_PIECE]: first }) };
  return {
    ...(Object.keys(asked).length === 0 ? {} : { attributes: asked as Record<string, string> }),
    ...(tools === null ? {} : { holds: sharedTools(tools) }),
  };
}

interface On {
  /** By machine. */
  readonly open: ReadonlyMap<string, WorkingTime>;
  readonly withFirstPiece: ReadonlySet<string>;
}

function operationInput(
  { id, stage, part, machines, attributes, people, started, suspended, quantity, lotShare }: ShopOperation,
  transferShare: number,
  { open, withFirstPiece }: On,
  now: Instant,
): OperationInput {
  const times = machines.map((able) => {
    const hours = started?.machineId === able.id ? open.get(able.id) : undefined;
    const left = suspended ? secondsOfSuspended(suspended, quantity, able.seconds) : able.seconds;
    return {
      id: able.id,
      ...askedThere(able, withFirstPiece.has(able.id)),
      // What is away is back when it was said to be, however little of it is counted.
      seconds:
        started && hours && stage !== 'outside'
          ? secondsOfStarted(started, quantity, able.seconds, hours, now)
          : left,
    };
  });
  return {
    id,
    stage,
    seconds: times[0]?.seconds ?? 0,
    machines: times,
    attributes: attributes as Record<string, string>,
    crew: people,
    ...(inLots(stage, stageAfter(part, stage)) ? { transferShare: lotShare ?? transferShare } : {}),
    ...(started ? { started: { machine: started.machineId, at: startedBy(started.at, now) } } : {}),
  };
}

function pinsOf(shop: Shop, queues: Queues): NonNullable<ProblemInput['pins']> {
  const pinned = new Set(shop.pin.map((p) => p.id));
  return Object.entries(queues).flatMap(([machine, ids]) =>
    ids.flatMap((operation, position) => (pinned.has(operation) ? [{ operation, machine, position }] : [])),
  );
}
