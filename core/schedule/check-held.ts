import type { OperationInput, ProblemInput, Schedule, ScheduledOperation } from './problem.ts';
import type { Violation } from './violation.ts';

/**
 * A thing is on one machine at a time, from the start of a changeover to the end of the operation, closed hours and all.
 * Two operations that have both started are facts: it is not for a plan to part them.
 */
export function checkHeld(input: ProblemInput, schedule: Schedule): Violation[] {
  const operations = new Map(input.jobs.flatMap((job) => job.operations).map((o) => [o.id, o]));
  const holders = new Map<string, ScheduledOperation[]>();
  for (const line of schedule.operations)
    for (const thing of thingsOf(operations.get(line.operation)!, line.machine))
      holders.set(thing, [...(holders.get(thing) ?? []), line]);
  const started = (line: ScheduledOperation) => operations.get(line.operation)!.started !== undefined;
  const from = (line: ScheduledOperation) =>
    started(line) ? Math.max(input.now, line.start) : line.changeoverStart;
  return [...holders].flatMap(([thing, lines]) =>
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

const thingsOf = (operation: OperationInput, machine: string): Set<string> =>
  new Set([
    ...(operation.holds ?? []),
    ...(operation.machines ?? []).flatMap((m) => (m.id === machine ? (m.holds ?? []) : [])),
  ]);
