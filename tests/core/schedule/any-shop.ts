import type { CrewInterval, JobInput, MachineInput, ProblemInput } from '../../../core/schedule/problem.ts';
import { Rng } from '../../../core/rng.ts';
import { attributes, changeover, hours, operation, randomShop, withHolds } from './random-shop.ts';
import { SMALL_SHOPS, smallShop } from './small-shops.ts';
import { TEN_JOBS, tenJobs } from './ten-jobs.ts';

/** A random shop of any kind, small or middling, plain or with everything at once. The same seed gives the same shop. */
export function anyShop(seed: number): ProblemInput {
  const kind = seed % 16;
  const number = Math.floor(seed / 16);
  const pick = (shapes: object) => Object.keys(shapes)[number % Object.keys(shapes).length]!;
  if (kind === 12) return smallShop(pick(SMALL_SHOPS), number);
  if (kind === 13) return number % 5 === 4 ? oneMachine(number) : tenJobs(pick(TEN_JOBS), number);
  if (kind >= 14) return wideShop(seed);
  return randomShop(seed, kind === 11 ? 14 : 6);
}

/** Three stages with up to three machines each, routings of up to five steps that may come back, people by the shift. */
function wideShop(seed: number): ProblemInput {
  const rng = new Rng(seed);
  const stages = ['shear', 'brake', 'pack'];
  const machines = stages.flatMap((stage) =>
    Array.from({ length: 1 + rng.below(3) }, (_, m): MachineInput => ({
      id: `${stage} ${m + 1}`,
      stage,
      initial: rng.next() < 0.4 ? null : attributes(rng, 0.8),
      changeover: rng.next() < 0.2 ? null : changeover(rng),
      open: rng.next() < 0.5 ? null : hours(rng, 0),
      ...(rng.next() < 0.2 && { availableFrom: rng.below(30) }),
    })),
  );
  const jobs = Array.from({ length: 1 + rng.below(10) }, (_, j): JobInput => {
    const operations = Array.from({ length: 1 + rng.below(5) }, (_, k) => {
      const step = operation(rng, machines, `J${j}`, stages[rng.below(3)]!, k);
      return { ...step, id: `J${j}:${k}` };
    });
    const release = rng.next() < 0.5 ? 0 : rng.below(80);
    return { id: `J${j}`, release, due: rng.below(200), weight: rng.below(7) / 2, operations };
  });
  const input: ProblemInput = {
    name: `wide ${seed}`,
    machines,
    jobs,
    now: 0,
    objective: {
      weightedTardiness: rng.below(3),
      changeover: rng.next(),
      makespan: rng.below(2),
      flowTime: rng.next() < 0.5 ? 0 : 0.1,
      stability: 0,
    },
    crew: rng.next() < 0.3 ? shifts(rng) : null,
  };
  return withHolds(rng, input);
}

const shifts = (rng: Rng): CrewInterval[] =>
  Array.from({ length: 6 }, (_, k) => ({ start: 60 * k, end: 60 * k + 50, people: 2 + rng.below(3) }));

/** Twelve lines on one machine for weighted tardiness alone, with changeovers or without. */
function oneMachine(seed: number): ProblemInput {
  const rng = new Rng(seed);
  return {
    name: `one machine ${seed}`,
    machines: [
      {
        id: 'M',
        stage: 'M',
        initial: null,
        changeover: rng.next() < 0.5 ? null : changeover(rng),
        open: null,
      },
    ],
    jobs: Array.from({ length: 12 }, (_, j) => ({
      id: `J${j}`,
      release: 0,
      due: rng.below(150),
      weight: 1 + rng.below(4),
      operations: [{ id: `J${j}:M`, stage: 'M', seconds: rng.below(25), attributes: attributes(rng, 1) }],
    })),
    now: 0,
    objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
  };
}

const operationsOf = (input: ProblemInput) => input.jobs.flatMap((job) => job.operations);
const changeoversOf = (input: ProblemInput) => input.machines.flatMap((m) => m.changeover ?? []);
const perStage = (input: ProblemInput) =>
  input.machines.map(({ stage }) => input.machines.filter((m) => m.stage === stage).length);

/** Every part of the model, and whether a shop has it. */
export const FEATURES: Readonly<Record<string, (input: ProblemInput) => boolean>> = {
  'several machines a stage': (input) => Math.max(...perStage(input)) > 1,
  'three machines a stage': (input) => Math.max(...perStage(input)) > 2,
  'a choice of named machines': (input) => operationsOf(input).some((o) => (o.machines?.length ?? 0) > 1),
  'speeds of their own': (input) =>
    operationsOf(input).some((o) => new Set(o.machines?.map((m) => m.seconds ?? o.seconds)).size > 1),
  'routings that cross': (input) =>
    new Set(input.jobs.map((job) => job.operations.map((o) => o.stage).join())).size > 1,
  'a routing that comes back': (input) =>
    input.jobs.some((job) => new Set(job.operations.map((o) => o.stage)).size < job.operations.length),
  'three steps or more': (input) => input.jobs.some((job) => job.operations.length > 2),
  'one order on all machines': (input) => input.sameOrder === true,
  'changeovers by sum': (input) => changeoversOf(input).some((c) => c.combine === 'sum'),
  'changeovers by the largest': (input) => changeoversOf(input).some((c) => c.combine === 'max'),
  'changeover exceptions': (input) => changeoversOf(input).some((c) => (c.exceptions?.length ?? 0) > 0),
  'changeovers from a table': (input) => changeoversOf(input).some((c) => c.pairs !== undefined),
  'a table for an empty machine': (input) => changeoversOf(input).some((c) => c.pairs?.initial !== undefined),
  'a machine that is set up': (input) => input.machines.some((m) => m.initial !== null),
  'attributes left out': (input) =>
    operationsOf(input).some((o) => Object.keys(o.attributes ?? {}).length < 2),
  releases: (input) => input.jobs.some((job) => job.release > input.now),
  'lines without a due date': (input) => input.jobs.some((job) => job.due === null),
  'weights that differ': (input) => new Set(input.jobs.map((job) => job.weight)).size > 1,
  'open hours': (input) => input.machines.some((m) => m.open !== null),
  'a machine still busy': (input) => input.machines.some((m) => (m.availableFrom ?? input.now) > input.now),
  'transfer lots': (input) => operationsOf(input).some((o) => (o.transferShare ?? 1) < 1),
  'work of no time': (input) => operationsOf(input).some((o) => o.seconds === 0),
  pins: (input) => (input.pins?.length ?? 0) > 0,
  'frozen operations': (input) => Object.keys(input.frozen ?? {}).length > 0,
  'started operations': (input) => operationsOf(input).some((o) => o.started !== undefined),
  'a limited crew': (input) => (input.crew?.length ?? 0) > 0,
  'a crew by shifts': (input) => (input.crew?.length ?? 0) > 2,
  'operations for two people': (input) => operationsOf(input).some((o) => o.crew === 2),
  'things that machines share': (input) => operationsOf(input).some((o) => (o.holds?.length ?? 0) > 0),
  'things held on one machine only': (input) =>
    operationsOf(input).some((o) => o.machines?.some((m) => (m.holds?.length ?? 0) > 0)),
  'things to fetch for a changeover': (input) =>
    operationsOf(input).some((o) => o.holds?.some((thing) => input.partOf?.[thing] !== undefined)),
  'work done elsewhere, any number at once': (input) => input.machines.some((m) => m.unlimited),
  'work elsewhere that is out already': (input) =>
    operationsOf(input).some((o) => o.stage === 'elsewhere' && o.started !== undefined),
  'a plan to stay near': (input) =>
    input.objective.stability > 0 && Object.keys(input.reference ?? {}).length > 0,
  'a present later than 0': (input) => input.now > 0,
  'no lines at all': (input) => input.jobs.length === 0,
  'ten lines or more': (input) => input.jobs.length >= 10,
};
