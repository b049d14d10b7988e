import { fetchedFor } from './check-held.ts';
import type { Violation } from './violation.ts';
import type { MachineInput, OperationInput, ProblemInput, Schedule, ScheduledOperation } from './problem.ts';
import type { Attributes, Changeover } from './changeover.ts';

/** Seconds in [from, to) during which the machine is open. */
export function openSeconds(machine: MachineInput, from: number, to: number): number {
  if (machine.open === null) return to - from;
  let total = 0;
  for (const { start, end } of machine.open) {
    if (start >= to) break;
    total += Math.max(0, Math.min(end, to) - Math.max(start, from));
  }
  return total;
}

/**
 * One machine at a time: changeovers as the setups need, work in open hours, durations exact, nothing overlaps but on a
 * machine that takes any number at once.
 */
export function checkHours(input: ProblemInput, schedule: Schedule): Violation[] {
  const operations = new Map(input.jobs.flatMap((job) => job.operations).map((o) => [o.id, o]));
  const fetched = fetchedFor(input, schedule);
  const lineOf = new Map(schedule.operations.map((line) => [line.operation, line]));
  return input.machines.flatMap((machine) => {
    const found: Violation[] = [];
    const state: Record<string, string> = { ...machine.initial };
    let free = Math.max(input.now, machine.availableFrom ?? input.now);
    for (const line of schedule.operations.filter((each) => each.machine === machine.id)) {
      const operation = operations.get(line.operation)!;
      const before = lineOf.get(stepBefore(input, line) ?? '');
      found.push(
        ...(operation.started
          ? checkStarted(line, operation)
          : checkLine(machine, line, operation, state, free, fetched(line, machine))),
      );
      found.push(...checkDuration(input, machine, line, operation, before));
      Object.assign(state, askedOn(operation, machine));
      if (!machine.unlimited) free = Math.max(free, line.end);
    }
    return found;
  });
}

/** What it asks for everywhere and on this machine. */
const askedOn = (operation: OperationInput, machine: MachineInput): Attributes => ({
  ...operation.attributes,
  ...operation.machines?.find(({ id }) => id === machine.id)?.attributes,
});

const stepBefore = (input: ProblemInput, line: ScheduledOperation) =>
  input.jobs.find((job) => job.id === line.job)?.operations[line.index - 1]?.id;

function checkStarted(line: ScheduledOperation, operation: OperationInput): Violation[] {
  const kept =
    line.start === operation.started!.at &&
    line.changeoverStart === line.start &&
    line.changeoverSeconds === 0;
  return kept
    ? []
    : [
        {
          rule: 'started',
          operation: line.operation,
          message: `Operation ${line.operation} has started, but is scheduled ${line.changeoverStart - operation.started!.at} s from its start.`,
        },
      ];
}

function checkLine(
  machine: MachineInput,
  line: ScheduledOperation,
  operation: OperationInput,
  state: Attributes,
  free: number,
  fetched: Readonly<Record<string, number>>,
): Violation[] {
  const found: Violation[] = [];
  const say = (rule: Violation['rule'], message: string) =>
    found.push({ rule, operation: line.operation, message });
  const needed = changeoverSeconds(machine.changeover, state, askedOn(operation, machine), fetched);
  if (line.changeoverSeconds !== needed)
    say(
      'changeover',
      `The changeover before ${line.operation} takes ${needed} s, not ${line.changeoverSeconds} s.`,
    );
  if (line.changeoverStart < free)
    say(
      'one at a time',
      `Operation ${line.operation} begins ${free - line.changeoverStart} s before ${machine.id} is free.`,
    );
  if (line.start < line.changeoverStart || openSeconds(machine, line.changeoverStart, line.start) !== needed)
    say(
      'changeover',
      `The changeover before ${line.operation} has not exactly the ${needed} open seconds that it takes.`,
    );
  if (needed === 0 && line.changeoverStart !== line.start)
    say('changeover', `Operation ${line.operation} needs no changeover, but one is shown.`);
  if (!isOpen(machine, line.start) || (needed > 0 && !isOpen(machine, line.changeoverStart)))
    say('open hours', `Operation ${line.operation} begins while ${machine.id} is closed.`);
  return found;
}

const isOpen = (machine: MachineInput, instant: number) =>
  machine.open === null || machine.open.some(({ start, end }) => start <= instant && instant < end);

function checkDuration(
  input: ProblemInput,
  machine: MachineInput,
  line: ScheduledOperation,
  operation: OperationInput,
  before: ScheduledOperation | undefined,
): Violation[] {
  const seconds = operation.machines?.find((m) => m.id === machine.id)?.seconds ?? operation.seconds;
  const worked = openSeconds(machine, line.start, line.end);
  const share = before === undefined ? 1 : shareOf(input, line);
  const lot = Math.ceil(share * seconds);
  const waitsForLot = share < 1 && before !== undefined && openSeconds(machine, before.end, line.end) === lot;
  const withLastLot = waitsForLot && lot === 0 && line.end === before.end;
  const overrun = operation.started !== undefined && line.end === input.now;
  const right = worked === seconds || (worked > seconds && (waitsForLot || overrun));
  const found: Violation[] = [];
  if (!right || line.end < line.start)
    found.push({
      rule: 'duration',
      operation: line.operation,
      message: `Operation ${line.operation} takes ${seconds} s on ${machine.id}, but has ${worked} s.`,
    });
  // Ending while closed is only right on the closing instant itself, and there the last second before is worked.
  else if (line.end > line.start && !overrun && !withLastLot && !isOpen(machine, line.end - 1))
    found.push({
      rule: 'open hours',
      operation: line.operation,
      message: `Operation ${line.operation} ends while ${machine.id} is closed.`,
    });
  return found;
}

const shareOf = (input: ProblemInput, line: ScheduledOperation) =>
  input.jobs.find((job) => job.id === line.job)!.operations[line.index - 1]!.transferShare ?? 1;

/**
 * Seconds to change over from a state to what an operation asks for, straight from the rules as given.
 * @param least of each attribute, no less than this
 */
export function changeoverSeconds(
  rules: Changeover | null,
  state: Attributes,
  asked: Attributes,
  least: Readonly<Record<string, number>> = {},
): number {
  if (rules === null) return 0;
  const change = (attribute: string): number => {
    const from = state[attribute];
    const to = asked[attribute]!;
    if (rules.pairs?.attribute === attribute) {
      const at = rules.pairs.values.indexOf(to);
      return from === undefined
        ? (rules.pairs.initial?.[at] ?? 0)
        : rules.pairs.seconds[rules.pairs.values.indexOf(from)]![at]!;
    }
    if (from === undefined || from === to) return 0;
    const exception = rules.exceptions?.find(
      (e) => e.attribute === attribute && e.from === from && e.to === to,
    );
    return exception?.seconds ?? rules.attributes[attribute] ?? 0;
  };
  const costs = Object.keys(asked).map((attribute) => Math.max(change(attribute), least[attribute] ?? 0));
  return rules.combine === 'sum' ? costs.reduce((a, b) => a + b, 0) : Math.max(0, ...costs);
}
