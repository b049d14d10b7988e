import type {
  JobInput,
  MachineInput,
  ObjectiveWeights,
  ProblemInput,
} from '../../../core/schedule/problem.ts';
import { Rng } from '../../../core/rng.ts';

/** Ten random lines in four kinds of shop; whole seconds, and small numbers so that a MIP solver gets through them. */

const LINES = 10;
const COLOURS = ['moss', 'bone', 'sky'];
const none: ObjectiveWeights = {
  weightedTardiness: 0,
  changeover: 0,
  makespan: 0,
  flowTime: 0,
  stability: 0,
};

const plain = (id: string): MachineInput => ({ id, stage: id, initial: null, changeover: null, open: null });
const painted = (id: string, stage: string, seconds: number): MachineInput => ({
  ...plain(id),
  stage,
  initial: { colour: 'moss' },
  changeover: { combine: 'sum', attributes: { colour: seconds } },
});

/** @param slack what the shop can do in these seconds is spread over the due dates */
function lines(rng: Rng, route: (j: number) => readonly string[], slack: number): JobInput[] {
  return Array.from({ length: LINES }, (_, j) => ({
    id: `J${j}`,
    release: 0,
    due: 10 + rng.below(slack),
    weight: 1 + rng.below(3),
    operations: route(j).map((stage, k) => ({
      id: `J${j}:${k}`,
      stage,
      seconds: 1 + rng.below(10),
      attributes: { colour: COLOURS[rng.below(3)]! },
    })),
  }));
}

const shop = (
  machines: readonly MachineInput[],
  jobs: readonly JobInput[],
  objective: Partial<ObjectiveWeights>,
): ProblemInput => ({ name: '', now: 0, machines, jobs, objective: { ...none, ...objective } });

export const TEN_JOBS: Readonly<Record<string, (rng: Rng) => ProblemInput>> = {
  'one machine with changeovers': (rng) =>
    shop(
      [painted('M', 'M', 1 + rng.below(5))],
      lines(rng, () => ['M'], 80).map((job) => ({ ...job, weight: 1 })),
      { weightedTardiness: 1, changeover: 1 },
    ),
  'a shear, then a brake': (rng) =>
    shop(
      ['shear', 'brake'].map(plain),
      lines(rng, () => ['shear', 'brake'], 80),
      { weightedTardiness: 1 },
    ),
  'two brakes side by side': (rng) => {
    const jobs = lines(rng, () => ['brake'], 40).map((job) => {
      const machines = ['B1', 'B2'].map((id) => ({ id, seconds: 1 + rng.below(10) }));
      return { ...job, operations: job.operations.map((o) => ({ ...o, machines })) };
    });
    return shop([painted('B1', 'brake', 2), painted('B2', 'brake', 3)], jobs, {
      weightedTardiness: 1,
      changeover: 1,
    });
  },
  'a job shop': (rng) => {
    const names = ['A', 'B', 'C'];
    const routes = Array.from({ length: LINES }, () => shuffled(rng, names));
    return shop(
      names.map(plain),
      lines(rng, (j) => routes[j]!, 100),
      { makespan: 1 },
    );
  },
};

function shuffled<T>(rng: Rng, items: readonly T[]): T[] {
  const left = [...items];
  return items.map(() => left.splice(rng.below(left.length), 1)[0]!);
}

export const tenJobs = (kind: string, seed: number): ProblemInput => ({
  ...TEN_JOBS[kind]!(new Rng(seed)),
  name: `${kind}, ${seed}`,
});
