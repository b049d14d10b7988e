import type { MachineInput, OperationInput, ProblemInput, Schedule, ScheduledOperation } from './problem.ts';
import type { Violation } from './violation.ts';

/**
 * A thing is on one machine at a time, from the start of a changeover to the end of the operation, closed hours and all.
 * Two operations that have both started are facts: it is not for a plan to part them.
 */
export function checkHeld(input: ProblemInput, schedule: Schedule): Violation[] {
  const operations = operationsById(input);
  const started = (line: ScheduledOperation) => operations.get(line.operation)!.started !== undefined;
  const from = (line: ScheduledOperation) => heldFrom(input, operations, line);
  return [...holdersOf(operations, schedule)].flatMap(([thing, lines]) =>
    lines.flatMap((line, k) =>
      lines.slice(k + 1).flatMap((other): Violation[] => {
        const together = Math.min(line.end, other.end) - Math.max(from(line), from(other));
        if (line.machine === other.machine || together <= 0 || (started(line) && started(other))) return [];
        const message = `Operations ${line.operation} on ${line.machine} and ${other.operation} on ${other.machine} both hold ${thing} for ${together} s.`;
        return [{ rule: 'held elsewhere', operation: other.operation, message }];
      }),
    ),
  );
}

type Operations = ReadonlyMap<string, OperationInput>;

const operationsById = (input: ProblemInput): Operations =>
  new Map(input.jobs.flatMap((job) => job.operations).map((o) => [o.id, o]));

/** Per thing, the scheduled operations that hold it. */
function holdersOf(operations: Operations, schedule: Schedule): Map<string, ScheduledOperation[]> {
  const holders = new Map<string, ScheduledOperation[]>();
  for (const line of schedule.operations)
    for (const thing of thingsOf(operations.get(line.operation)!, line.machine))
      holders.set(thing, [...(holders.get(thing) ?? []), line]);
  return holders;
}

const heldFrom = (input: ProblemInput, operations: Operations, line: ScheduledOperation): number =>
  operations.get(line.operation)!.started ? Math.max(input.now, line.start) : line.changeoverStart;

/**
 * The least that a line's changeover has to count of each attribute for what it fetches: a thing that was on another machine
 * last, by the times of the schedule, costs the attributes that it is part of. Of two that ended together the own one counts.
 * @returns per scheduled operation, seconds by attribute; nothing for work of no seconds
 */
export function fetchedFor(
  input: ProblemInput,
  schedule: Schedule,
): (line: ScheduledOperation, machine: MachineInput) => Readonly<Record<string, number>> {
  const operations = operationsById(input);
  const holders = holdersOf(operations, schedule);
  return (line, machine) => {
    const operation = operations.get(line.operation)!;
    const least: Record<string, number> = {};
    if (secondsOn(operation, machine) === 0) return least;
    for (const thing of thingsOf(operation, machine.id)) {
      const attributes = input.partOf?.[thing] ?? [];
      if (attributes.length === 0) continue;
      const earlier = holders
        .get(thing)!
        .filter((o) => o !== line && o.end <= line.changeoverStart && heldFrom(input, operations, o) < o.end);
      const last = Math.max(...earlier.map(({ end }) => end));
      const there = earlier.filter(({ end }) => end === last);
      if (there.length > 0 && !there.some((o) => o.machine === machine.id))
        for (const name of attributes) least[name] = machine.changeover?.attributes[name] ?? 0;
    }
    return least;
  };
}

const secondsOn = (operation: OperationInput, machine: MachineInput): number =>
  operation.machines?.find(({ id }) => id === machine.id)?.seconds ?? operation.seconds;

const thingsOf = (operation: OperationInput, machine: string): Set<string> =>
  new Set([
    ...(operation.holds ?? []),
    ...(operation.machines ?? []).flatMap((m) => (m.id === machine ? (m.holds ?? []) : [])),
  ]);
