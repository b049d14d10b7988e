import { err, ok, type Result } from '../result.ts';
import type { OperationInput, Problem, ProblemInput, Track } from './problem.ts';
import { attributesOn } from './changeover.ts';
import { heldTable } from './held.ts';
import { SetupTable } from './setup.ts';
import { tracksOf } from './tracks.ts';
import { validate } from './validate.ts';
import { canDo, frontOf } from './validate-fixed.ts';
import { workingTime } from './working-time.ts';

/**
 * Validates a problem once and compiles it; everything after trusts it. Zero machines or jobs are allowed.
 * @returns the compiled problem, or what is wrong: repeated ids, operations no machine can do, times that are not whole
 *   or are negative, open hours out of order or missing, pins and frozen or started operations that contradict
 */
export function buildProblem(input: ProblemInput): Result<Problem> {
  const refusals = validate(input);
  return refusals.length > 0 ? err(...refusals) : ok(compile(input));
}

function compile(input: ProblemInput): Problem {
  const operations = input.jobs.flatMap((job) => job.operations);
  const jobOf = Int32Array.from(input.jobs.flatMap((job, j) => job.operations.map(() => j)));
  const firstOf = Int32Array.of(0, ...input.jobs.map((job) => job.operations.length));
  for (let j = 1; j < firstOf.length; j++) firstOf[j]! += firstOf[j - 1]!;
  const tracks = tracksOf(input, operations);
  const operationAt = new Map(operations.map((operation, o) => [operation.id, o]));
  const seconds = secondsTable(input, tracks, operations);
  const eligible = operations.map((_, o) =>
    Int32Array.from(tracks.keys()).filter((m) => seconds[o * tracks.length + m]! >= 0),
  );
  /** The same with every machine that is numbered. */
  const numbered = { ...input, machines: tracks.map(({ machine }) => machine) };
  const setups = setupTables(numbered, operations);
  const fronts = new Map(input.machines.map(({ id }) => [id, frontOf(input, id)]));
  const front = tracks.map(({ machine, only }) =>
    Int32Array.from(fronts.get(machine.id)!, (id) => operationAt.get(id)!).filter(
      (o) => only === null || o === only,
    ),
  );
  const pins = pinsOf(numbered, operationAt, front);
  const fixed = new Uint8Array(operations.length);
  for (const o of [...front.flatMap((f) => [...f]), ...pins.flat().map((pin) => pin.operation)]) fixed[o] = 1;
  return {
    input,
    machines: tracks.length,
    tracks,
    jobs: input.jobs.length,
    operations: operations.length,
    machineAt: numbersOf(input, tracks),
    jobAt: new Map(input.jobs.map((job, j) => [job.id, j])),
    operationAt,
    operationIds: operations.map((operation) => operation.id),
    jobOf,
    firstOf,
    seconds,
    eligible,
    open: tracks.map(({ machine }) => workingTime(machine.open)),
    setups,
    initialState: Int32Array.from(tracks, ({ machine }, m) => setups[m]!.state(machine.initial)),
    availableFrom: Float64Array.from(tracks, ({ machine }) =>
      Math.max(input.now, machine.availableFrom ?? input.now),
    ),
    release: Float64Array.from(input.jobs, (job) => Math.max(job.release, input.now)),
    due: Float64Array.from(input.jobs, (job) => job.due ?? Infinity),
    weight: Float64Array.from(input.jobs, (job) => job.weight),
    reference: Float64Array.from(input.jobs, (job) => input.reference?.[job.id] ?? NaN),
    transferShare: Float64Array.from(operations, (operation) => operation.transferShare ?? 1),
    crew: Int32Array.from(operations, (operation) => operation.crew ?? 1),
    ...heldTable(operations, numbered, (at) => seconds[at]! >= 0),
    startedAt: Float64Array.from(operations, (operation) => operation.started?.at ?? NaN),
    front,
    pins,
    fixed,
    machineOrder: orderMachines(tracks.length, firstOf, eligible),
  };
}

const numbersOf = ({ machines }: ProblemInput, tracks: readonly Track[]): Problem['machineAt'] =>
  new Map(
    machines.map((machine) => [machine.id, [...tracks.keys()].filter((m) => tracks[m]!.machine === machine)]),
  );

function secondsTable(
  input: ProblemInput,
  tracks: readonly Track[],
  operations: readonly OperationInput[],
): Int32Array {
  const table = new Int32Array(operations.length * tracks.length).fill(-1);
  operations.forEach((operation, o) => {
    tracks.forEach(({ machine, only }, m) => {
      if ((only ?? o) !== o || !canDo(input, operation, machine.id)) return;
      const own = operation.machines?.find((named) => named.id === machine.id)?.seconds;
      table[o * tracks.length + m] = own ?? operation.seconds;
    });
  });
  return table;
}

/** Machines with the same rules and the same operations share one table, those of one name at once. */
function setupTables(input: ProblemInput, operations: readonly OperationInput[]): SetupTable[] {
  const tables = new Map<string, SetupTable>();
  const named = new Map<string, SetupTable>();
  return input.machines.map((machine) => {
    const known = named.get(machine.id);
    if (known) return known;
    const asked = operations.map((operation) =>
      canDo(input, operation, machine.id) ? attributesOn(operation, machine.id) : null,
    );
    const own = operations.map(({ machines }) => machines?.find(({ id }) => id === machine.id)?.attributes);
    const able = asked.map((one) => Number(one !== null)).join('');
    const key = JSON.stringify([machine.changeover, able, own.some((one) => one) ? own : null]);
    const table = tables.get(key) ?? new SetupTable(machine.changeover, asked);
    tables.set(key, table);
    named.set(machine.id, table);
    return table;
  });
}

function pinsOf(
  input: ProblemInput,
  operationAt: ReadonlyMap<string, number>,
  front: readonly Int32Array[],
): Problem['pins'] {
  return input.machines.map((machine, m) =>
    (input.pins ?? [])
      .filter((pin) => pin.machine === machine.id && !front[m]!.includes(operationAt.get(pin.operation)!))
      .map((pin) => ({ operation: operationAt.get(pin.operation)!, position: pin.position }))
      .sort((a, b) => a.position - b.position),
  );
}

/** Sorts machines so that every routing goes forward, keeping input order where it can; null when routings cross. */
function orderMachines(
  machines: number,
  firstOf: Int32Array,
  eligible: readonly Int32Array[],
): Int32Array | null {
  const before = Array.from({ length: machines }, () => new Set<number>());
  for (let j = 0; j + 1 < firstOf.length; j++)
    for (let o = firstOf[j]! + 1; o < firstOf[j + 1]!; o++)
      for (const later of eligible[o]!) for (const earlier of eligible[o - 1]!) before[later]!.add(earlier);
  const order: number[] = [];
  const placed = new Set<number>();
  while (order.length < machines) {
    const next = before.findIndex((earlier, m) => !placed.has(m) && [...earlier].every((e) => placed.has(e)));
    if (next === -1) return null;
    order.push(next);
    placed.add(next);
  }
  return Int32Array.from(order);
}
