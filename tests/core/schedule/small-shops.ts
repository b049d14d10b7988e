import type {
  JobInput,
  MachineInput,
  ObjectiveWeights,
  OperationInput,
  ProblemInput,
} from '../../../core/schedule/problem.ts';
import type { OpenInterval } from '../../../core/schedule/working-time.ts';
import type { Attributes, Changeover } from '../../../core/schedule/changeover.ts';
import { Rng } from '../../../core/rng.ts';

/**
 * Shops so small that every plan can be tried: at most seven operations on a machine, whole seconds from 1, one shape
 * for each part of the model. The same seed gives the same shop.
 */

const COLOURS = ['moss', 'bone', 'sky'];
const GAUGES = ['22', '24'];
const weights: ObjectiveWeights = {
  weightedTardiness: 1,
  changeover: 0,
  makespan: 0,
  flowTime: 0,
  stability: 0,
};

function attributes(rng: Rng): Attributes {
  return { colour: COLOURS[rng.below(3)]!, ...(rng.next() < 0.8 && { gauge: GAUGES[rng.below(2)]! }) };
}

/** Attributes by sum or by the largest, with an exception; or a full table over the colours. */
function changeover(rng: Rng): Changeover {
  const rules: Changeover = {
    combine: rng.next() < 0.5 ? 'sum' : 'max',
    attributes: { colour: 1 + rng.below(8), gauge: 1 + rng.below(8) },
    exceptions: [{ attribute: 'colour', from: 'moss', to: 'bone', seconds: rng.below(12) }],
  };
  if (rng.next() < 0.6) return rules;
  const row = () => COLOURS.map(() => rng.below(9));
  return {
    ...rules,
    pairs: { attribute: 'colour', values: COLOURS, seconds: COLOURS.map(row), initial: row() },
  };
}

const machine = (rng: Rng, id: string, stage = id): MachineInput => ({
  id,
  stage,
  initial: rng.next() < 0.5 ? { colour: 'moss', gauge: '24' } : null,
  changeover: changeover(rng),
  open: null,
});
const plain = (id: string): MachineInput => ({ id, stage: id, initial: null, changeover: null, open: null });

function hours(rng: Rng): OpenInterval[] {
  const open: OpenInterval[] = [];
  for (let at = rng.below(12); open.length < 20; at = open.at(-1)!.end + 1 + rng.below(15))
    open.push({ start: at, end: at + 5 + rng.below(30) });
  return [...open, { start: open.at(-1)!.end + 5, end: 1_000_000 }];
}

function jobs(
  rng: Rng,
  count: number,
  route: (j: number) => readonly string[],
  own: (stage: string) => Partial<OperationInput> = () => ({}),
): JobInput[] {
  return Array.from({ length: count }, (_, j) => ({
    id: `J${j}`,
    release: rng.next() < 0.6 ? 0 : rng.below(40),
    due: rng.next() < 0.1 ? null : 10 + rng.below(90),
    weight: 1 + rng.below(4),
    operations: route(j).map((stage, k) => ({
      id: `J${j}:${stage}${k}`,
      stage,
      seconds: 1 + rng.below(20),
      attributes: attributes(rng),
      ...own(stage),
    })),
  }));
}

const shop = (
  machines: readonly MachineInput[],
  lines: readonly JobInput[],
  more: Partial<ProblemInput> = {},
): ProblemInput => ({ name: 'small', now: 0, machines, jobs: lines, objective: weights, ...more });

const shearAndBrakes = (rng: Rng, brakes: number): MachineInput[] => [
  machine(rng, 'S1', 'shear'),
  ...Array.from({ length: brakes }, (_, k) => machine(rng, `B${k + 1}`, 'brake')),
];
const through = () => ['shear', 'brake'];

/** Begins, freezes or pins a few operations of a shop with one shear. */
function withFixed(rng: Rng, input: ProblemInput): ProblemInput {
  const [first, second, third] = input.jobs as [JobInput, JobInput, JobInput];
  const begin = rng.next() < 0.5;
  const started = { ...first.operations[0]!, started: { machine: 'S1', at: -1 - rng.below(9) } };
  return {
    ...input,
    jobs: begin
      ? [{ ...first, operations: [started, ...first.operations.slice(1)] }, ...input.jobs.slice(1)]
      : input.jobs,
    frozen: rng.next() < 0.5 ? { S1: [second.operations[0]!.id] } : {},
    pins: [{ operation: third.operations[1]!.id, machine: 'B1', position: rng.below(3) }],
  };
}

/** What each shape covers, and how to draw one. */
export const SMALL_SHOPS: Readonly<Record<string, (rng: Rng) => ProblemInput>> = {
  'one machine with changeovers': (rng) =>
    shop(
      [machine(rng, 'M')],
      jobs(rng, 7, () => ['M']),
      { objective: { ...weights, changeover: rng.below(3) } },
    ),
  'one machine, weighted tardiness alone': (rng) =>
    shop(
      [plain('M')],
      jobs(rng, 7, () => ['M']).map((job) => ({ ...job, release: 0 })),
    ),
  'one machine with shifts and breaks': (rng) =>
    shop(
      [{ ...machine(rng, 'M'), open: hours(rng), availableFrom: rng.below(20) }],
      jobs(rng, 6, () => ['M']),
      { objective: { ...weights, changeover: 0.5, flowTime: 0.25 } },
    ),
  'machines side by side with speeds of their own': (rng) => {
    const speeds = () => ({
      machines: [
        { id: 'B1', seconds: 1 + rng.below(20) },
        ...(rng.next() < 0.8 ? [{ id: 'B2', seconds: 1 + rng.below(20) }] : []),
      ],
    });
    return shop(
      [machine(rng, 'B1', 'brake'), machine(rng, 'B2', 'brake')],
      jobs(rng, 7, () => ['brake'], speeds),
      { objective: { ...weights, changeover: 1 } },
    );
  },
  'a shear, then a brake': (rng) =>
    shop(shearAndBrakes(rng, 1), jobs(rng, 5 + Number(rng.next() < 0.1), through), {
      objective: { ...weights, changeover: 1, makespan: rng.below(2) },
    }),
  'a shear, then two brakes, with transfer lots and shifts': (rng) =>
    shop(
      shearAndBrakes(rng, 2).map((each) => (rng.next() < 0.5 ? { ...each, open: hours(rng) } : each)),
      jobs(rng, 4 + Number(rng.next() < 0.3), through, (stage) =>
        stage === 'shear' ? { transferShare: (1 + rng.below(4)) / 4 } : {},
      ),
      { objective: { ...weights, weightedTardiness: 2, changeover: 1, flowTime: 1 } },
    ),
  'short of people': (rng) =>
    shop(
      shearAndBrakes(rng, 2),
      jobs(rng, 4, through, () => ({ crew: 1 + Number(rng.next() < 0.3) })),
      {
        crew: [
          { start: 0, end: 60, people: 2 },
          { start: 70, end: 500, people: 2 + rng.below(2) },
        ],
      },
    ),
  'a shear, then two brakes that share tools': (rng) =>
    shop(
      shearAndBrakes(rng, 2).map((each) => (rng.next() < 0.3 ? { ...each, open: hours(rng) } : each)),
      jobs(rng, 4, through, (stage) =>
        stage === 'brake' ? { holds: ['T1', 'T2'].filter(() => rng.next() < 0.5) } : {},
      ),
      { objective: { ...weights, changeover: 1 }, partOf: { T1: ['colour'], T2: ['colour', 'gauge'] } },
    ),
  'started, frozen and pinned': (rng) =>
    withFixed(
      rng,
      shop(shearAndBrakes(rng, 2), jobs(rng, 5, through), { objective: { ...weights, changeover: 1 } }),
    ),
  'a job shop': (rng) => {
    const names = ['A', 'B', 'C', 'D'].slice(0, 3 + rng.below(2));
    const routes = Array.from({ length: 4 }, () => shuffled(rng, names));
    return shop(
      names.map(plain),
      jobs(rng, 4, (j) => routes[j]!).map((job) => ({ ...job, release: 0 })),
      {
        objective: { ...weights, weightedTardiness: 0, makespan: 1 },
      },
    );
  },
  'routings that cross, with changeovers': (rng) => {
    const names = ['A', 'B', 'C'];
    const routes = Array.from({ length: 4 }, () => shuffled(rng, names));
    return shop(
      names.map((id) => machine(rng, id)),
      jobs(rng, 4, (j) => routes[j]!),
      {
        objective: { ...weights, changeover: 1 },
      },
    );
  },
  'a routing that comes back': (rng) =>
    shop(
      shearAndBrakes(rng, 1),
      jobs(rng, 3, (j) => (j < 2 ? ['brake', 'shear', 'brake'] : through())),
    ),
  'one order on all machines': (rng) => {
    const names = ['A', 'B', 'C'].slice(0, 2 + rng.below(2));
    const tardy = rng.below(2);
    return shop(
      names.map((id) => machine(rng, id)),
      jobs(rng, 6, () => names).map((job) => ({ ...job, release: 0 })),
      { sameOrder: true, objective: { ...weights, weightedTardiness: tardy, makespan: 1 } },
    );
  },
  'stability against the plan as it is': (rng) => {
    const lines = jobs(rng, 5, through);
    return shop(shearAndBrakes(rng, 1), lines, {
      reference: Object.fromEntries(lines.slice(1).map((job) => [job.id, 20 + rng.below(100)])),
      objective: { ...weights, stability: 0.5 },
    });
  },
};

function shuffled<T>(rng: Rng, items: readonly T[]): T[] {
  const left = [...items];
  return items.map(() => left.splice(rng.below(left.length), 1)[0]!);
}

/** The small shop of this shape and seed. */
export const smallShop = (shape: string, seed: number): ProblemInput => ({
  ...SMALL_SHOPS[shape]!(new Rng(seed)),
  name: `${shape}, ${seed}`,
});
