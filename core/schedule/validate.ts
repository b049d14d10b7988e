import { issue, type Issue } from '../result.ts';
import type { JobInput, MachineInput, OperationInput, ProblemInput } from './problem.ts';
import { attributesOn, type Changeover } from './changeover.ts';
import { circleProblems } from './validate-circle.ts';
import { fixedProblems } from './validate-fixed.ts';
import { holdsProblems } from './validate-holds.ts';

/** Longest duration taken, about 30 years: it keeps sums exact in 32-bit tables. */
export const LONGEST = 1_000_000_000;
const whole = (value: number, from: number, to: number) =>
  Number.isInteger(value) && value >= from && value <= to;
const isSeconds = (value: number) => whole(value, 0, LONGEST);
const isInstant = (value: number) => whole(value, -1e11, 1e11);
const isWeight = (value: number) => Number.isFinite(value) && value >= 0;
const fixNumber = 'Give a whole number of seconds, 0 or more.';

/** Everything wrong with a problem as given; empty when it can be scheduled. */
export function validate(input: ProblemInput): Issue[] {
  const operations = input.jobs.flatMap((job) => job.operations);
  const found = [
    ...repeated('machine', input.machines),
    ...repeated('line', input.jobs),
    ...repeated('operation', operations),
    ...input.machines.flatMap(machineProblems),
    ...input.jobs.flatMap((job) => jobProblems(job, input.machines)),
    ...pairsProblems(input.machines, operations),
    ...weightProblems(input),
    ...(input.crew ?? []).flatMap((limit) =>
      whole(limit.people, 0, 10_000) &&
      isInstant(limit.start) &&
      isInstant(limit.end) &&
      limit.start < limit.end
        ? []
        : [
            issue(
              'crew',
              'people',
              `A crew limit of ${limit.people} people is not usable.`,
              'Give a whole number of people over an interval that ends after it starts.',
            ),
          ],
    ),
    ...(ascending(input.crew ?? [])
      ? []
      : [
          issue(
            'crew',
            'intervals',
            'The crew limits overlap or are out of order.',
            'List them ascending and disjoint.',
          ),
        ]),
  ];
  if (found.length > 0) return found;
  const contradictions = fixedProblems(input);
  return contradictions.length > 0 ? contradictions : circleProblems(input);
}

function repeated(noun: string, things: readonly { readonly id: string }[]): Issue[] {
  const seen = new Set<string>();
  const twice = new Set(things.map((thing) => thing.id).filter((id) => seen.size === seen.add(id).size));
  return [...twice].map((id) =>
    issue(`${noun} ${id}`, 'id', `The ${noun} ${id} is listed twice.`, 'Give each its own id.'),
  );
}

const ascending = (intervals: readonly { readonly start: number; readonly end: number }[]) =>
  intervals.every(
    (interval, k) => interval.start < interval.end && (k === 0 || intervals[k - 1]!.end <= interval.start),
  );

function machineProblems(machine: MachineInput): Issue[] {
  const subject = `machine ${machine.id}`;
  const found: Issue[] = [];
  if (machine.open !== null) {
    if (machine.open.length === 0)
      found.push(
        issue(
          subject,
          'open',
          `Machine ${machine.id} has no open hours at all.`,
          'Give it a calendar with open hours, or remove it from the plan.',
        ),
      );
    else if (!machine.open.every((i) => isInstant(i.start) && isInstant(i.end)) || !ascending(machine.open))
      found.push(
        issue(
          subject,
          'open',
          `The open hours of machine ${machine.id} overlap or are out of order.`,
          'List them ascending and disjoint, in whole seconds.',
        ),
      );
  }
  if (machine.availableFrom !== undefined && !isInstant(machine.availableFrom))
    found.push(
      issue(
        subject,
        'availableFrom',
        `Machine ${machine.id} is available from ${machine.availableFrom}, which is no instant.`,
        'Give whole seconds.',
      ),
    );
  if (machine.changeover !== null) found.push(...changeoverProblems(subject, machine.changeover));
  if (machine.unlimited && machine.changeover !== null)
    found.push(
      issue(
        subject,
        'changeover',
        `Machine ${machine.id} takes any number of operations at once, so nothing is changed over between them.`,
        'Leave its changeover out.',
      ),
    );
  return found;
}

function changeoverProblems(subject: string, changeover: Changeover): Issue[] {
  const { pairs, exceptions = [] } = changeover;
  const figures = [
    ...Object.values(changeover.attributes),
    ...exceptions.map((e) => e.seconds),
    ...(pairs?.seconds.flat() ?? []),
    ...(pairs?.initial ?? []),
  ];
  const found = figures
    .filter((seconds) => !isSeconds(seconds))
    .map((seconds) =>
      issue(
        subject,
        'changeover',
        `A changeover of ${seconds} seconds on ${subject} is not usable.`,
        fixNumber,
      ),
    );
  for (const e of exceptions)
    if (e.from === e.to)
      found.push(
        issue(
          subject,
          'changeover',
          `An exception on ${subject} goes from ${e.from} to itself.`,
          'Name two different values; equal values need no changeover.',
        ),
      );
  const size = pairs?.values.length ?? 0;
  if (
    pairs !== undefined &&
    (pairs.seconds.length !== size ||
      pairs.seconds.some((row) => row.length !== size) ||
      (pairs.initial?.length ?? size) !== size ||
      new Set(pairs.values).size !== size)
  )
    found.push(
      issue(
        subject,
        'changeover',
        `The changeover table of ${subject} does not fit its ${size} values.`,
        'Give one row and one column for each value, every value once.',
      ),
    );
  return found;
}

/** A full changeover table must know every value that can reach its machine. */
function pairsProblems(machines: readonly MachineInput[], operations: readonly OperationInput[]): Issue[] {
  return machines.flatMap((machine) => {
    const pairs = machine.changeover?.pairs;
    if (pairs === undefined) return [];
    const asked = operations
      .filter((o) => o.machines?.some((m) => m.id === machine.id) ?? o.stage === machine.stage)
      .map((o) => attributesOn(o, machine.id)[pairs.attribute]);
    const values = new Set<string | undefined>(pairs.values);
    const unknown = new Set(
      [machine.initial?.[pairs.attribute], ...asked].filter((v) => v !== undefined && !values.has(v)),
    );
    return [...unknown].map((value) =>
      issue(
        `machine ${machine.id}`,
        'changeover',
        `The changeover table of machine ${machine.id} does not list ${pairs.attribute} ${value}.`,
        'Add a row and a column for it.',
      ),
    );
  });
}

function jobProblems(job: JobInput, machines: readonly MachineInput[]): Issue[] {
  const subject = `line ${job.id}`;
  const found: Issue[] = [];
  if (!isInstant(job.release))
    found.push(
      issue(
        subject,
        'release',
        `Line ${job.id} is released at ${job.release}, which is no instant.`,
        'Give whole seconds.',
      ),
    );
  if (job.due !== null && !isInstant(job.due))
    found.push(
      issue(
        subject,
        'due',
        `Line ${job.id} is due at ${job.due}, which is no instant.`,
        'Give whole seconds, or null for no due date.',
      ),
    );
  if (!isWeight(job.weight))
    found.push(issue(subject, 'weight', `Line ${job.id} has a weight of ${job.weight}.`, 'Give 0 or more.'));
  if (job.operations.length === 0)
    found.push(
      issue(subject, 'operations', `Line ${job.id} has no operations.`, 'Leave it out, or give it a step.'),
    );
  return [...found, ...job.operations.flatMap((operation) => operationProblems(operation, machines))];
}

function operationProblems(operation: OperationInput, machines: readonly MachineInput[]): Issue[] {
  const subject = `operation ${operation.id}`;
  const found: Issue[] = [];
  const times = [operation.seconds, ...(operation.machines ?? []).map((m) => m.seconds ?? 0)];
  for (const seconds of times.filter((t) => !isSeconds(t)))
    found.push(
      issue(
        subject,
        'seconds',
        `Operation ${operation.id} takes ${seconds} seconds, which is no duration.`,
        fixNumber,
      ),
    );
  const share = operation.transferShare ?? 1;
  if (!(share > 0 && share <= 1))
    found.push(
      issue(
        subject,
        'transferShare',
        `Operation ${operation.id} passes on a share of ${share}.`,
        'Give a share above 0, up to 1.',
      ),
    );
  if (!whole(operation.crew ?? 1, 0, 1000))
    found.push(
      issue(
        subject,
        'crew',
        `Operation ${operation.id} needs ${operation.crew} people.`,
        'Give a whole number of people.',
      ),
    );
  found.push(...holdsProblems(operation));
  const known = new Set(machines.map((machine) => machine.id));
  const unknown = (operation.machines ?? []).filter((m) => !known.has(m.id));
  for (const m of unknown)
    found.push(
      issue(
        subject,
        'machines',
        `Operation ${operation.id} names machine ${m.id}, which is not in the shop.`,
        'Name a machine of the shop.',
      ),
    );
  const able =
    operation.machines?.length ?? machines.filter((machine) => machine.stage === operation.stage).length;
  if (able === 0)
    found.push(
      issue(
        subject,
        'machines',
        `No machine can do operation ${operation.id}.`,
        `Add a machine for ${operation.stage} that takes it, or change the part.`,
      ),
    );
  return found;
}

function weightProblems(input: ProblemInput): Issue[] {
  const names = ['weightedTardiness', 'changeover', 'makespan', 'flowTime', 'stability'] as const;
  const found = names
    .filter((name) => !isWeight(input.objective[name]))
    .map((name) =>
      issue(
        'objective',
        name,
        `The objective weighs ${name} by ${input.objective[name]}.`,
        'Give 0 or more.',
      ),
    );
  if (!isInstant(input.now))
    found.push(issue('problem', 'now', `The present is given as ${input.now}.`, 'Give whole seconds.'));
  for (const [id, end] of Object.entries(input.reference ?? {}))
    if (!isInstant(end))
      found.push(
        issue(`line ${id}`, 'reference', `The reference end of line ${id} is ${end}.`, 'Give whole seconds.'),
      );
  return found;
}
