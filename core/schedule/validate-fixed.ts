import { issue, type Issue } from '../result.ts';
import type { OperationInput, ProblemInput } from './problem.ts';

interface Known {
  readonly input: ProblemInput;
  readonly operations: ReadonlyMap<string, OperationInput>;
}

/** Can this machine do the operation? */
export function canDo(input: ProblemInput, operation: OperationInput, machine: string): boolean {
  if (operation.machines !== undefined) return operation.machines.some((m) => m.id === machine);
  return input.machines.some((m) => m.id === machine && m.stage === operation.stage);
}

const isUnlimited = (input: ProblemInput, machine: string): boolean =>
  input.machines.some(({ id, unlimited }) => id === machine && unlimited);

const withoutOrder = (machine: string): string => `on ${machine}, where operations have no order.`;

/** Contradictions among started, frozen and pinned operations, and with one order on all machines. */
export function fixedProblems(input: ProblemInput): Issue[] {
  const operations = new Map(input.jobs.flatMap((job) => job.operations).map((o) => [o.id, o]));
  const known = { input, operations };
  return [
    ...startedProblems(input),
    ...frozenProblems(known),
    ...pinProblems(known),
    ...sameOrderProblems(input),
  ];
}

function startedProblems(input: ProblemInput): Issue[] {
  const found: Issue[] = [];
  const running = new Map<string, string>();
  for (const job of input.jobs)
    job.operations.forEach((operation, k) => {
      if (operation.started === undefined) return;
      const { machine, at } = operation.started;
      const refuse = (message: string, advice: string) =>
        found.push(issue(`operation ${operation.id}`, 'started', message, advice));
      if (!Number.isInteger(at) || at > input.now)
        refuse(
          `Operation ${operation.id} is recorded as started after the present.`,
          'Correct the start, or the clock of this computer.',
        );
      if (!canDo(input, operation, machine))
        refuse(
          `Operation ${operation.id} is recorded as started on ${machine}, which cannot do it.`,
          'Correct the record.',
        );
      if (running.has(machine) && !isUnlimited(input, machine))
        refuse(
          `Operations ${running.get(machine)} and ${operation.id} are both recorded as running on ${machine}.`,
          'Finish one of them, or undo its start.',
        );
      if (k > 0 && job.operations[k - 1]!.started === undefined)
        refuse(
          `Operation ${operation.id} was started before operation ${job.operations[k - 1]!.id}.`,
          'Record the earlier step first.',
        );
      running.set(machine, operation.id);
    });
  return found;
}

function frozenProblems({ input, operations }: Known): Issue[] {
  const found: Issue[] = [];
  const seen = new Set<string>();
  for (const [machine, ids] of Object.entries(input.frozen ?? {}))
    ids.forEach((id, k) => {
      const operation = operations.get(id);
      const refuse = (message: string, advice: string) =>
        found.push(issue(`operation ${id}`, 'frozen', message, advice));
      if (operation === undefined)
        return refuse(`The frozen operation ${id} is not in the plan.`, 'Remove it from the frozen part.');
      if (seen.has(id)) refuse(`Operation ${id} is frozen twice.`, 'Freeze it once.');
      if (!canDo(input, operation, machine))
        refuse(
          `Operation ${id} is frozen on ${machine}, which cannot do it.`,
          'Move it to a machine that can.',
        );
      if (isUnlimited(input, machine))
        refuse(`Operation ${id} is frozen ${withoutOrder(machine)}`, 'Leave it out.');
      const started = operation.started;
      if (started !== undefined && (started.machine !== machine || k > 0))
        refuse(
          `Operation ${id} is running on ${started.machine} but frozen elsewhere in the queue.`,
          'Put it first on the machine that runs it.',
        );
      seen.add(id);
    });
  return found;
}

function pinProblems({ input, operations }: Known): Issue[] {
  const found: Issue[] = [];
  const positions = new Map<string, string>();
  const seen = new Set<string>();
  for (const pin of input.pins ?? []) {
    const operation = operations.get(pin.operation);
    const refuse = (message: string, advice: string) =>
      found.push(issue(`operation ${pin.operation}`, 'pin', message, advice));
    if (operation === undefined || !canDo(input, operation, pin.machine)) {
      refuse(
        `Operation ${pin.operation} is pinned on ${pin.machine}, which cannot do it.`,
        'Remove the pin, or move the operation.',
      );
      continue;
    }
    if (isUnlimited(input, pin.machine))
      refuse(`Operation ${pin.operation} is pinned ${withoutOrder(pin.machine)}`, 'Remove the pin.');
    if (!Number.isInteger(pin.position) || pin.position < 0)
      refuse(
        `Operation ${pin.operation} is pinned at position ${pin.position}.`,
        'Give a whole number from 0.',
      );
    if (seen.has(pin.operation)) refuse(`Operation ${pin.operation} is pinned twice.`, 'Pin it once.');
    const position = `${pin.machine} ${pin.position}`;
    if (positions.has(position))
      refuse(
        `Operations ${positions.get(position)} and ${pin.operation} are pinned at the same position on ${pin.machine}.`,
        'Remove one of the pins.',
      );
    positions.set(position, pin.operation);
    seen.add(pin.operation);
    const front = frontOf(input, pin.machine);
    const at = front.indexOf(pin.operation);
    const elsewhere = at === -1 && input.machines.some((m) => frontOf(input, m.id).includes(pin.operation));
    if (elsewhere || (at !== -1 ? at !== pin.position : pin.position < front.length))
      refuse(
        `Operation ${pin.operation} is pinned at position ${pin.position + 1} on ${pin.machine}, against what is started or frozen there.`,
        'Remove the pin.',
      );
  }
  return found;
}

/** What stays at the front of a machine's queue: the operation started there, then the frozen ones. */
export function frontOf(input: ProblemInput, machine: string): string[] {
  const started = input.jobs.flatMap((job) => job.operations).filter((o) => o.started?.machine === machine);
  return [...new Set([...started.map((o) => o.id), ...(input.frozen?.[machine] ?? [])])];
}

function sameOrderProblems(input: ProblemInput): Issue[] {
  if (!input.sameOrder) return [];
  const fixed = (input.pins?.length ?? 0) + Object.values(input.frozen ?? {}).flat().length;
  const started = input.jobs.some((job) => job.operations.some((o) => o.started !== undefined));
  const found: Issue[] = [];
  const holding = input.jobs.some((job) =>
    job.operations.some((o) => o.holds?.length || o.machines?.some((m) => m.holds?.length)),
  );
  const without = input.machines.some(({ unlimited }) => unlimited);
  if (fixed > 0 || started || holding || without || (input.crew?.length ?? 0) > 0)
    found.push(
      issue(
        'problem',
        'sameOrder',
        'One job order on all machines does not go together with pins, frozen or started operations, a crew limit, things that machines share or machines without limit.',
        'Leave one of them out.',
      ),
    );
  for (const job of input.jobs) {
    const positions = job.operations.map(
      (o) =>
        o.machines?.map((m) => m.id) ?? input.machines.filter((m) => m.stage === o.stage).map((m) => m.id),
    );
    if (positions.some((ids) => ids.length !== 1) || new Set(positions.flat()).size !== positions.length)
      found.push(
        issue(
          `line ${job.id}`,
          'operations',
          `Line ${job.id} has a choice of machines or visits one twice, against one job order on all machines.`,
          'Name one machine for each step.',
        ),
      );
  }
  return found;
}
