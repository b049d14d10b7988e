import { openSeconds } from './check-hours.ts';
import type { Violation } from './violation.ts';
import type { MachineInput, ProblemInput, Schedule, ScheduledOperation } from './problem.ts';

/** Between machines: releases, the order of a job's steps with transfer lots, and people at work. */
export function checkRouting(input: ProblemInput, schedule: Schedule): Violation[] {
  const lineOf = new Map(schedule.operations.map((line) => [line.operation, line]));
  const machineOf = new Map(input.machines.map((machine) => [machine.id, machine]));
  const found: Violation[] = [];
  for (const job of input.jobs)
    job.operations.forEach((operation, k) => {
      const line = lineOf.get(operation.id)!;
      const machine = machineOf.get(line.machine)!;
      const say = (rule: Violation['rule'], message: string) =>
        found.push({ rule, operation: operation.id, message });
      if (operation.started === undefined) {
        const earliest = Math.max(job.release, input.now);
        if (line.start < earliest)
          say(
            'release',
            `Operation ${operation.id} starts ${earliest - line.start} s before its release or the present.`,
          );
      }
      if (k === 0) return;
      const share = job.operations[k - 1]!.transferShare ?? 1;
      const before = lineOf.get(job.operations[k - 1]!.id)!;
      const first = machineOf.get(before.machine)!;
      if (operation.started === undefined && !lotDone(input, first, before, share, line.start))
        say('routing', `Operation ${operation.id} starts before ${before.operation} has passed on enough.`);
      const own = operation.machines?.find((m) => m.id === machine.id)?.seconds ?? operation.seconds;
      if (share < 1 && openSeconds(machine, before.end, line.end) < Math.ceil(share * own))
        say('routing', `Operation ${operation.id} ends too soon after the last lot of ${before.operation}.`);
    });
  return [...found, ...checkCrew(input, schedule)];
}

/** Has the step before worked off its transfer share (all of it: has it ended) by this instant? */
function lotDone(
  input: ProblemInput,
  machine: MachineInput,
  before: ScheduledOperation,
  share: number,
  instant: number,
): boolean {
  if (share === 1) return instant >= before.end;
  const operation = input.jobs.find((job) => job.id === before.job)!.operations[before.index]!;
  const seconds = operation.machines?.find((m) => m.id === machine.id)?.seconds ?? operation.seconds;
  return instant >= before.start && openSeconds(machine, before.start, instant) >= Math.ceil(share * seconds);
}

/** Sweeps over all starts and ends of working time and counts people. */
function checkCrew(input: ProblemInput, schedule: Schedule): Violation[] {
  if (input.crew == null) return [];
  const people = new Map(input.jobs.flatMap((job) => job.operations).map((o) => [o.id, o.crew ?? 1]));
  const running = new Set(
    input.jobs
      .flatMap((job) => job.operations)
      .filter((o) => o.started)
      .map((o) => o.id),
  );
  const steps: { at: number; add: number; line: ScheduledOperation }[] = [];
  for (const line of schedule.operations) {
    const machine = input.machines.find((each) => each.id === line.machine)!;
    for (const open of machine.open ?? [{ start: -Infinity, end: Infinity }]) {
      const from = Math.max(open.start, line.changeoverStart);
      const to = Math.min(open.end, line.end);
      if (from >= to) continue;
      steps.push(
        { at: from, add: people.get(line.operation)!, line },
        { at: to, add: -people.get(line.operation)!, line },
      );
    }
  }
  steps.sort((a, b) => a.at - b.at || a.add - b.add);
  const found = new Map<string, Violation>();
  for (const limit of input.crew) {
    let busy = 0;
    let least = 0;
    steps.forEach((step, k) => {
      busy += step.add;
      least = running.has(step.line.operation) ? least + step.add : least;
      const until = steps[k + 1]?.at ?? Infinity;
      const inside = Math.max(step.at, limit.start) < Math.min(until, limit.end);
      // People on operations already running cannot be planned away.
      if (inside && busy > Math.max(limit.people, least))
        found.set(step.line.operation, {
          rule: 'crew',
          operation: step.line.operation,
          message: `${busy} people are at work at once, with only ${limit.people} there.`,
        });
    });
  }
  return [...found.values()];
}
