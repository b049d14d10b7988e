import type { Violation } from './violation.ts';
import type { OperationInput, ProblemInput, Schedule } from './problem.ts';

/** Who is where: every operation once, on a machine that can do it, queues as listed, fixed things where they belong. */
export function checkQueues(input: ProblemInput, schedule: Schedule): Violation[] {
  return [
    ...presence(input, schedule),
    ...queueOrder(schedule),
    ...fixedPositions(input, schedule),
    ...sameOrder(input, schedule),
  ];
}

function presence(input: ProblemInput, schedule: Schedule): Violation[] {
  const found: Violation[] = [];
  const count = new Map<string, number>();
  const known = new Map<string, OperationInput>();
  for (const job of input.jobs)
    job.operations.forEach((operation, index) =>
      known.set(`${job.id}\n${index}\n${operation.id}`, operation),
    );
  for (const line of schedule.operations) {
    const key = `${line.job}\n${line.index}\n${line.operation}`;
    const operation = known.get(key);
    count.set(key, (count.get(key) ?? 0) + 1);
    if (operation === undefined) {
      found.push({
        rule: 'every operation once',
        operation: line.operation,
        message: `Operation ${line.operation} is not in the problem.`,
      });
      continue;
    }
    const machine = input.machines.find((each) => each.id === line.machine);
    const able =
      machine !== undefined &&
      (operation.machines?.some((m) => m.id === machine.id) ?? machine.stage === operation.stage);
    if (!able)
      found.push({
        rule: 'able machine',
        operation: line.operation,
        message: `Machine ${line.machine} cannot do operation ${line.operation}.`,
      });
  }
  for (const [key, operation] of known)
    if (count.get(key) !== 1)
      found.push({
        rule: 'every operation once',
        operation: operation.id,
        message: `Operation ${operation.id} is scheduled ${count.get(key) ?? 0} times.`,
      });
  return found;
}

function queueOrder(schedule: Schedule): Violation[] {
  const listed = Object.entries(schedule.queues).flatMap(([machine, ids]) =>
    ids.map((id, position) => [id, `${machine}, position ${position + 1}`] as const),
  );
  const positions = new Map<string, number>();
  const actual = new Map(
    schedule.operations.map((line) => {
      const position = positions.get(line.machine) ?? 0;
      positions.set(line.machine, position + 1);
      return [line.operation, `${line.machine}, position ${position + 1}`] as const;
    }),
  );
  const found = listed
    .filter(([id, where]) => actual.get(id) !== where)
    .map(([id, where]): Violation => ({
      rule: 'queue order',
      operation: id,
      message: `Operation ${id} is queued on ${where}, but is scheduled on ${actual.get(id) ?? 'no machine'}.`,
    }));
  if (listed.length !== schedule.operations.length)
    found.push({
      rule: 'queue order',
      operation: '',
      message: `The queues hold ${listed.length} operations, the schedule ${schedule.operations.length}.`,
    });
  return found;
}

function fixedPositions(input: ProblemInput, schedule: Schedule): Violation[] {
  const found: Violation[] = [];
  for (const machine of input.machines) {
    if (machine.unlimited) continue;
    const queue = schedule.queues[machine.id] ?? [];
    const running = input.jobs
      .flatMap((job) => job.operations)
      .filter((o) => o.started?.machine === machine.id);
    for (const operation of running)
      if (queue[0] !== operation.id)
        found.push({
          rule: 'started',
          operation: operation.id,
          message: `Operation ${operation.id} is running on ${machine.id} but does not come first there.`,
        });
    const frozen = (input.frozen?.[machine.id] ?? []).filter((id) => !running.some((o) => o.id === id));
    frozen.forEach((id, k) => {
      if (queue[running.length + k] !== id)
        found.push({
          rule: 'frozen',
          operation: id,
          message: `Operation ${id} is frozen at position ${running.length + k + 1} on ${machine.id} but was moved.`,
        });
    });
    const pins = (input.pins ?? []).filter((pin) => pin.machine === machine.id);
    for (const pin of pins) {
      const at = queue.indexOf(pin.operation);
      const later = queue.slice(at + 1);
      // A position beyond the end of a queue means last; of several such pins, the higher position comes later.
      const last =
        at < pin.position &&
        later.every((id) => pins.some((other) => other.operation === id && other.position > pin.position));
      if (at === -1 || (at !== pin.position && !last))
        found.push({
          rule: 'pin',
          operation: pin.operation,
          message: `Operation ${pin.operation} is pinned at position ${pin.position + 1} on ${machine.id} but was moved.`,
        });
    }
  }
  return found;
}

function sameOrder(input: ProblemInput, schedule: Schedule): Violation[] {
  if (!input.sameOrder) return [];
  const jobOf = new Map(schedule.operations.map((line) => [line.operation, line.job]));
  const position = new Map<string, number>();
  const found: Violation[] = [];
  const orders = Object.values(schedule.queues).map((ids) => ids.map((id) => jobOf.get(id)!));
  const longest = orders.reduce((a, b) => (b.length > a.length ? b : a), []);
  longest.forEach((job, k) => position.set(job, k));
  for (const order of orders)
    order.forEach((job, k) => {
      if (k > 0 && position.get(order[k - 1]!)! > position.get(job)!)
        found.push({
          rule: 'same order',
          operation: job,
          message: `Line ${job} does not keep the same order on all machines.`,
        });
    });
  return found;
}
