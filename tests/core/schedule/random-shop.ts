import type { JobInput, MachineInput, OperationInput, ProblemInput } from '../../../core/schedule/problem.ts';
import type { OpenInterval } from '../../../core/schedule/working-time.ts';
import type { Attributes, Changeover } from '../../../core/schedule/changeover.ts';
import { Rng } from '../../../core/rng.ts';

const COLOURS = ['moss', 'bone', 'sky'];
const GAUGES = ['22', '24', '26'];

/**
 * A small random shop that uses every feature of the engine now and then: calendars, changeovers of every kind, missing
 * attributes, releases, transfer lots, machines that differ, started, frozen and pinned operations, limited crews, things
 * that machines share and routings that cross. Whole seconds, and small numbers so that ties and touching intervals are frequent.
 */
export function randomShop(seed: number, most = 6): ProblemInput {
  const rng = new Rng(seed);
  const maybe = (share: number) => rng.next() < share;
  const now = maybe(0.5) ? 0 : rng.below(40);
  const crossing = maybe(0.15);
  const shears = 1 + rng.below(2);
  const brakes = 1 + rng.below(2);
  const machines: MachineInput[] = Array.from({ length: shears + brakes }, (_, m) => ({
    id: m < shears ? `S${m + 1}` : `B${m - shears + 1}`,
    stage: m < shears ? 'shear' : 'brake',
    initial: maybe(0.4) ? null : attributes(rng, 0.8),
    changeover: maybe(0.2) ? null : changeover(rng),
    open: maybe(0.5) ? null : hours(rng, now),
    ...(maybe(0.2) && { availableFrom: now + rng.below(30) }),
  }));
  const stages = ['shear', 'brake'];
  const jobs: JobInput[] = Array.from({ length: rng.below(most + 1) }, (_, j) => {
    const route =
      crossing && maybe(0.5)
        ? ['brake', 'shear', ...(maybe(0.3) ? ['brake'] : [])]
        : maybe(0.7)
          ? stages
          : [stages[rng.below(2)]!];
    return {
      id: `J${j + 1}`,
      release: maybe(0.6) ? 0 : rng.below(80),
      due: maybe(0.2) ? null : now + rng.below(150),
      weight: 1 + rng.below(3),
      operations: route.map((stage, k) => operation(rng, machines, `J${j + 1}`, stage, k)),
    };
  });
  const weight = (most: number) => (maybe(0.5) ? rng.below(most + 1) : 0);
  const input: ProblemInput = {
    name: `random ${seed}`,
    machines,
    jobs,
    now,
    objective: {
      weightedTardiness: weight(3),
      changeover: weight(3),
      makespan: weight(2),
      flowTime: weight(1),
      stability: weight(1),
    },
    crew: maybe(0.2)
      ? [
          { start: now, end: now + 60, people: 1 + rng.below(2) },
          { start: now + 80, end: now + 400, people: 2 },
        ]
      : null,
    reference: Object.fromEntries(jobs.filter(() => maybe(0.5)).map((job) => [job.id, now + rng.below(200)])),
  };
  const whole = withHolds(new Rng(seed + 1), crossing ? input : withFixed(rng, input));
  return withWorkElsewhere(new Rng(seed + 2), whole);
}

/**
 * Sends some jobs away between two of their steps or at the end, in one shop of four: to places that take any number at
 * once. Some are on their way already. The rest of the shop stays as it was.
 */
function withWorkElsewhere(rng: Rng, input: ProblemInput): ProblemInput {
  if (rng.next() < 0.75) return input;
  const places = Array.from({ length: 1 + rng.below(2) }, (_, m): MachineInput => ({
    id: `E${m + 1}`,
    stage: 'elsewhere',
    initial: null,
    changeover: null,
    open: rng.next() < 0.5 ? null : hours(rng, input.now),
    unlimited: true,
  }));
  const jobs = input.jobs.map((job): JobInput => {
    if (rng.next() < 0.4) return job;
    const at = 1 + rng.below(job.operations.length);
    const isOut = job.operations[at - 1]!.started !== undefined && rng.next() < 0.5;
    const away: OperationInput = {
      id: `${job.id}:elsewhere`,
      stage: 'elsewhere',
      seconds: rng.below(40),
      crew: rng.below(2),
      ...(rng.next() < 0.3 && { machines: [{ id: 'E1', seconds: rng.below(40) }] }),
      ...(isOut && { started: { machine: 'E1', at: input.now - rng.below(5) } }),
    };
    return { ...job, operations: job.operations.toSpliced(at, 0, away) };
  });
  return { ...input, machines: [...input.machines, ...places], jobs };
}

const THINGS = ['T1', 'T2'];

/**
 * Lets operations hold things, everywhere or on one machine, in one shop of four; some are part of what is changed over. The rest of the shop stays as it was.
 */
export function withHolds(rng: Rng, input: ProblemInput): ProblemInput {
  if (rng.next() < 0.75) return input;
  const share = 0.2 + 0.8 * rng.next();
  const some = () => THINGS.filter(() => rng.next() < share / 2);
  const holding = (o: OperationInput): OperationInput => ({
    ...o,
    ...(rng.next() < 0.7 && { holds: some() }),
    ...(o.machines && {
      machines: o.machines.map((m) => ({ ...m, ...(rng.next() < 0.5 && { holds: some() }) })),
    }),
  });
  const jobs = input.jobs.map((job) => ({ ...job, operations: job.operations.map(holding) }));
  const parts = THINGS.filter(() => rng.next() < 0.6);
  const partOf = parts.map((thing) => [thing, rng.next() < 0.5 ? ['gauge'] : ['colour', 'gauge']] as const);
  return { ...input, jobs, partOf: Object.fromEntries(partOf) };
}

export function attributes(rng: Rng, share: number): Attributes {
  return {
    ...(rng.next() < share && { gauge: GAUGES[rng.below(3)]! }),
    ...(rng.next() < share && { colour: COLOURS[rng.below(3)]! }),
  };
}

export function changeover(rng: Rng): Changeover {
  const seconds = () => rng.below(9);
  const rules: Changeover = {
    combine: rng.next() < 0.5 ? 'sum' : 'max',
    attributes: { gauge: seconds(), colour: seconds() },
    exceptions:
      rng.next() < 0.5 ? [] : [{ attribute: 'colour', from: 'moss', to: 'bone', seconds: seconds() }],
  };
  if (rng.next() < 0.7) return rules;
  const row = () => GAUGES.map(seconds);
  return {
    ...rules,
    pairs: {
      attribute: 'gauge',
      values: GAUGES,
      seconds: GAUGES.map(row),
      ...(rng.next() < 0.5 && { initial: row() }),
    },
  };
}

export function hours(rng: Rng, now: number): OpenInterval[] {
  const open: OpenInterval[] = [];
  for (let at = now - 10 + rng.below(30); open.length < 60;) {
    const end = at + 1 + rng.below(40);
    open.push({ start: at, end });
    at = end + rng.below(25);
  }
  return [...open, { start: open.at(-1)!.end + 5, end: 1_000_000 }];
}

export function operation(
  rng: Rng,
  machines: readonly MachineInput[],
  job: string,
  stage: string,
  k: number,
): OperationInput {
  const able = machines.filter((machine) => machine.stage === stage);
  const named = able.filter(() => rng.next() < 0.7);
  return {
    id: `${job}:${stage}${k > 1 ? k : ''}`,
    stage,
    seconds: rng.below(25),
    attributes: rng.next() < 0.1 ? undefined : attributes(rng, rng.next() < 0.5 ? 1 : 0.7),
    ...(named.length > 0 &&
      rng.next() < 0.3 && {
        machines: named.map((machine) => ({
          id: machine.id,
          ...(rng.next() < 0.5 && { seconds: rng.below(30) }),
        })),
      }),
    ...(rng.next() < 0.2 && { transferShare: (1 + rng.below(4)) / 4 }),
    ...(rng.next() < 0.2 && { crew: rng.below(3) }),
  };
}

/** The shop with people enough and nothing held: no machine waits for another. */
export const uncontended = (input: ProblemInput): ProblemInput => ({
  ...input,
  crew: null,
  jobs: input.jobs.map((job) => ({
    ...job,
    operations: job.operations.map((o) => ({
      ...o,
      holds: [],
      ...(o.machines && { machines: o.machines.map((m) => ({ ...m, holds: [] })) }),
    })),
  })),
});

const machinesOf = (input: ProblemInput, o: OperationInput) =>
  o.machines?.map((m) => m.id) ?? input.machines.filter((m) => m.stage === o.stage).map((m) => m.id);

/** Starts, freezes and pins a few operations without contradiction. */
function withFixed(rng: Rng, input: ProblemInput): ProblemInput {
  let jobs = input.jobs;
  const frozen: Record<string, string[]> = {};
  const pins: { operation: string; machine: string; position: number }[] = [];
  const taken = new Set<string>();
  const firsts = input.jobs.map((job) => job.operations[0]!);
  for (const machine of input.machines) {
    const able = firsts.filter((o) => !taken.has(o.id) && machinesOf(input, o).includes(machine.id));
    let position = 0;
    if (able.length > 0 && rng.next() < 0.15) {
      const running = able.shift()!;
      taken.add(running.id);
      position = 1;
      const started = { machine: machine.id, at: input.now - rng.below(20) };
      jobs = jobs.map((job) => ({
        ...job,
        operations: job.operations.map((o) => (o.id === running.id ? { ...o, started } : o)),
      }));
    }
    if (able.length > 0 && rng.next() < 0.15) {
      const id = able.shift()!.id;
      taken.add(id);
      frozen[machine.id] = [id];
      position += 1;
    }
    const loose = jobs
      .flatMap((job) => job.operations)
      .filter((o) => !taken.has(o.id) && machinesOf(input, o).includes(machine.id));
    if (loose.length > 0 && rng.next() < 0.2) {
      const pinned = loose[rng.below(loose.length)]!;
      taken.add(pinned.id);
      pins.push({ operation: pinned.id, machine: machine.id, position: position + rng.below(3) });
    }
  }
  return { ...input, jobs, frozen, pins };
}

/** Random queues: every operation on a machine that can do it, in an order in which no circle of waits can arise. */
export function randomQueues(seed: number, input: ProblemInput): Record<string, string[]> {
  const rng = new Rng(seed);
  const queues: Record<string, string[]> = Object.fromEntries(
    input.machines.map((machine) => [machine.id, []]),
  );
  const left = input.jobs.map((job) => [...job.operations]);
  for (const operations of left)
    while (operations[0]?.started !== undefined)
      queues[operations[0].started.machine]!.push(operations.shift()!.id);
  while (left.some((operations) => operations.length > 0)) {
    const open = left.filter((operations) => operations.length > 0);
    const next = open[rng.below(open.length)]!.shift()!;
    const able = machinesOf(input, next);
    queues[able[rng.below(able.length)]!]!.push(next.id);
  }
  return queues;
}
