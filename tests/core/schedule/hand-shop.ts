import fc from 'fast-check';
import { buildProblem } from '../../../core/schedule/build.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type {
  JobInput,
  MachineInput,
  OperationInput,
  Problem,
  ProblemInput,
  Queues,
  Schedule,
} from '../../../core/schedule/problem.ts';
import type { Attributes } from '../../../core/schedule/changeover.ts';
import { sentence, type Result } from '../../../core/result.ts';

/** Builders for shops of a few operations whose plan can be followed by eye, always open and from 0 unless said. */

export const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};
export const refusal = (result: Result<unknown>): string =>
  result.ok ? 'accepted' : sentence(result.issues);

export const seeds = fc.integer({ min: 0, max: 1_000_000_000 });

export const aMachine = (id: string, own: Partial<MachineInput> = {}): MachineInput => ({
  id,
  stage: id.startsWith('S') ? 'shear' : 'brake',
  initial: null,
  changeover: null,
  open: null,
  ...own,
});

/** Seconds on the shear, then on the brake; null leaves that step out. */
export function aJob(
  id: string,
  [shear, brake]: readonly [number | null, number | null],
  due: number | null = null,
  own: {
    attributes?: Attributes;
    shear?: Partial<OperationInput>;
    brake?: Partial<OperationInput>;
  } & Partial<Omit<JobInput, 'operations'>> = {},
): JobInput {
  const { attributes, shear: onShear, brake: onBrake, ...job } = own;
  const step = (stage: string, seconds: number | null, more?: Partial<OperationInput>): OperationInput[] =>
    seconds === null
      ? []
      : [{ id: `${id}:${stage}`, stage, seconds, ...(attributes && { attributes }), ...more }];
  return {
    id,
    release: 0,
    due,
    weight: 1,
    operations: [...step('shear', shear, onShear), ...step('brake', brake, onBrake)],
    ...job,
  };
}

export const aProblem = (own: Partial<ProblemInput>): Problem =>
  must(
    buildProblem({
      name: 'by hand',
      machines: [aMachine('S1'), aMachine('B1')],
      jobs: [],
      now: 0,
      objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
      ...own,
    }),
  );

/** Queues written as words: `{ S1: 'A B' }` puts A's and B's shearing on S1. */
export const queued = (problem: Problem, words: Readonly<Record<string, string>>): Queues =>
  Object.fromEntries(
    problem.input.machines.map(({ id, stage }) => [
      id,
      (words[id] ?? '')
        .split(' ')
        .filter(Boolean)
        .map((job) => `${job}:${stage}`),
    ]),
  );

export const timed = (problem: Problem, queues: Queues): Schedule => must(decode(problem, queues));

/** The same shop with started operations started at least a second before now. */
export const startedBefore = (input: ProblemInput): ProblemInput => ({
  ...input,
  jobs: input.jobs.map((job) => ({
    ...job,
    operations: job.operations.map((o) =>
      o.started ? { ...o, started: { ...o.started, at: Math.min(o.started.at, input.now - 1) } } : o,
    ),
  })),
});
