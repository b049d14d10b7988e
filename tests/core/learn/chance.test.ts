import { describe, expect, it } from 'vitest';
import { spreadOf, type RatioSpread, type Spread, type Timed } from '../../../core/learn/spread.ts';
import { buildProblem } from '../../../core/schedule/build.ts';
import { chances, promiseAt, type Chances } from '../../../core/learn/chance.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { JobInput, MachineInput, Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import { Rng } from '../../../core/rng.ts';
import { sentence, type Result } from '../../../core/result.ts';
import { normal } from './invented.ts';

const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};
const refusal = (result: Result<unknown>): string => (result.ok ? 'accepted' : sentence(result.issues));
const of = (ratios: number[], days = [1], standardError = 0): RatioSpread => ({
  observations: ratios.length,
  median: 1,
  logSpread: 0,
  ratios,
  days,
  standardError,
});
const everywhere = (pooled: RatioSpread): Spread => ({ machines: {}, pooled });
const aMachine = (changes: Partial<MachineInput> = {}): MachineInput => ({
  id: 'S1',
  stage: 'shear',
  initial: null,
  changeover: null,
  open: null,
  ...changes,
});
const aJob = (id: string, seconds: number, due: number | null = null, changes = {}): JobInput => ({
  id,
  release: 0,
  due,
  weight: 1,
  operations: [{ id: `${id}:shear`, stage: 'shear', seconds, ...changes }],
});
const aProblem = (changes: Partial<ProblemInput>): Problem =>
  must(
    buildProblem({
      name: 'invented',
      machines: [aMachine()],
      jobs: [],
      now: 0,
      objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
      ...changes,
    }),
  );
const play = (problem: Problem, queues: Record<string, string[]>, spread: Spread, runs = 2000): Chances =>
  must(chances(problem, queues, spread, { runs, seed: 1 }));

describe('the chance of being on time', () => {
  it('of two jobs in turn that take once or twice their 100 s is 1/4 by 200 s, 3/4 by 300, certain by 400', () => {
    // Two fair coins, worked by hand.
    for (const [due, share] of [
      [199, 0],
      [200, 0.25],
      [300, 0.75],
      [400, 1],
    ] as const) {
      const problem = aProblem({ jobs: [aJob('A', 100), aJob('B', 100, due)] });
      const { B } = play(problem, { S1: ['A:shear', 'B:shear'] }, everywhere(of([1, 2])));
      expect(Math.abs(B!.onTime - share)).toBeLessThan(0.03);
      expect([B!.p10, B!.p50, B!.p80, B!.p90]).toEqual([200, 300, 400, 400]);
    }
  });

  it('is certain where nothing ever varied, at the time the plan says', () => {
    const problem = aProblem({ jobs: [aJob('A', 100, 100), aJob('B', 50)] });
    const played = play(problem, { S1: ['A:shear', 'B:shear'] }, everywhere(of([1])), 10);
    expect(played).toMatchObject({ A: { onTime: 1, p50: 100 }, B: { onTime: 1, p90: 150 } });
  });

  it('uses a machine’s own spread before the shop’s', () => {
    const problem = aProblem({ jobs: [aJob('A', 100)] });
    const spread = { machines: { S1: of([3]) }, pooled: of([1]) };
    expect(play(problem, { S1: ['A:shear'] }, spread, 10)['A']!.p50).toBe(300);
  });

  it('pauses over a night, and a slow day slows all of the day but not the next', () => {
    const open = [
      { start: 0, end: 1000 },
      { start: 50_000, end: 60_000 },
    ];
    const jobs = ['A', 'B', 'C'].map((id) => aJob(id, id === 'A' ? 100 : 450));
    const problem = aProblem({ machines: [aMachine({ open })], jobs });
    const queues = { S1: ['A:shear', 'B:shear', 'C:shear'] };
    const { A, B } = play(problem, queues, everywhere(of([1], [1, 2])));
    // Good day: 100, 550; slow day: 200, then 900 of which 800 fit before the night.
    expect(new Set(A!.ends)).toEqual(new Set([100, 200]));
    expect(new Set(B!.ends)).toEqual(new Set([550, 50_100]));
  });

  it('of a begun operation knows that it has not ended yet', () => {
    const started = { started: { machine: 'S1', at: 0 } };
    const problem = aProblem({ now: 150, jobs: [aJob('A', 100, 250, started)] });
    const { A } = play(problem, { S1: ['A:shear'] }, everywhere(of([1, 2, 3, 4])));
    expect(new Set(A!.ends)).toEqual(new Set([200, 300, 400]));
    expect(Math.abs(A!.onTime - 1 / 3)).toBeLessThan(0.04);
  });

  it('is the same for the same seed, and another for another', () => {
    const problem = aProblem({ jobs: [aJob('A', 1000)] });
    const ends = (seed: number) =>
      must(chances(problem, { S1: ['A:shear'] }, everywhere(of([0.5, 1, 1.7])), { runs: 50, seed }))[
        'A'
      ]!.ends.join();
    expect(ends(1)).toBe(ends(1));
    expect(ends(1)).not.toBe(ends(2));
  });
});

describe('a promise', () => {
  const problem = aProblem({ jobs: [aJob('A', 100), aJob('B', 100)] });
  const played = play(problem, { S1: ['A:shear', 'B:shear'] }, everywhere(of([1, 2])));

  it('is kept in at least the wished share of runs, and no earlier end would be', () => {
    for (const confidence of [0.05, 0.5, 0.7, 0.8, 0.99]) {
      const promise = must(promiseAt(played, 'B', confidence));
      const kept = (end: number) => played['B']!.ends.filter((e) => e <= end).length / 2000;
      expect(kept(promise)).toBeGreaterThanOrEqual(confidence);
      expect(kept(promise - 1)).toBeLessThan(confidence);
    }
  });

  it('is refused for an unknown job and for a confidence that is none', () => {
    expect(refusal(promiseAt(played, 'C', 0.8))).toContain('Job C is not in the plan');
    for (const confidence of [0, 1, NaN, 80])
      expect(refusal(promiseAt(played, 'B', confidence))).toContain('confidence');
  });

  it('is refused where the open hours run out first', () => {
    const short = aProblem({
      machines: [aMachine({ open: [{ start: 0, end: 150 }] })],
      jobs: [aJob('A', 100, 150)],
    });
    const runs = play(short, { S1: ['A:shear'] }, everywhere(of([1, 2])));
    expect(runs['A']!.p90).toBeNull();
    expect(Math.abs(runs['A']!.onTime - 0.5)).toBeLessThan(0.04);
    expect(refusal(promiseAt(runs, 'A', 0.9))).toContain('open hours end');
  });
});

describe('chances are refused', () => {
  const problem = aProblem({ jobs: [aJob('A', 100)] });
  it.each([0, -1, 0.5, NaN, 1e9])('for %s runs', (runs) => {
    expect(refusal(chances(problem, { S1: ['A:shear'] }, everywhere(of([1])), { runs, seed: 1 }))).toContain(
      'whole number',
    );
  });
  it('for queues that have no times', () => {
    expect(refusal(chances(problem, { S1: [] }, everywhere(of([1])), { runs: 9, seed: 1 }))).toContain(
      'is in no queue',
    );
  });
});

describe('ends promised at 80 % by the spread of earlier work', () => {
  const DAY_S = 86_400;
  const days = Array.from({ length: 60 }, (_, d) => ({ start: d * DAY_S, end: d * DAY_S + 28_800 }));

  /** Invented floors: their records, then one week of 25 jobs of an hour each; the share of ends within the promise. */
  function shareKept(floors: number, records: number, daySpread: number): number {
    const rng = new Rng(42);
    let [kept, all] = [0, 0];
    const ratio = () => Math.exp(0.1 + 0.25 * normal(rng)) * (rng.next() < 0.03 ? 2.5 : 1);
    for (let floor = 0; floor < floors; floor++) {
      const timed: Timed[] = [];
      for (let k = 0, day = 1; k < records; k++) {
        if (k % 7 === 0) day = Math.exp(daySpread * normal(rng));
        const actualSeconds = 3600 * day * ratio();
        timed.push({
          machineId: 'S1',
          day: String(Math.floor(k / 7)),
          estimatedSeconds: 3600,
          actualSeconds,
        });
      }
      const jobs = Array.from({ length: 25 }, (_, k) => aJob(`J${k}`, 3600));
      const machines = [aMachine({ open: days })];
      const queues = { S1: jobs.map((job) => `${job.id}:shear`) };
      const played = must(
        chances(aProblem({ machines, jobs }), queues, must(spreadOf(timed)), { runs: 200, seed: floor }),
      );
      const factors = days.map(() => Math.exp(daySpread * normal(rng)));
      let worked = 0;
      for (const job of jobs) {
        worked += 3600 * factors[Math.floor(worked / 28_800)]! * ratio();
        const end = Math.floor(worked / 28_800) * DAY_S + (worked % 28_800);
        all += 1;
        if (end <= must(promiseAt(played, job.id, 0.8))) kept += 1;
      }
    }
    return kept / all;
  }

  // A floor's 25 ends are early or late together, so 500 floors leave a standard error of about 1.4 %; few records have
  // seldom seen the tails.
  it.each([
    ['77 to 83 %, after 300 records', 300, 0, 0.77],
    ['77 to 83 %, after 300 records of good and bad days', 300, 0.25, 0.77],
    ['74 to 83 %, after 30 records', 30, 0, 0.74],
  ])('are kept by %s', (_, records, daySpread, least) => {
    const share = shareKept(500, records, daySpread);
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(0.83);
  });
});

describe('a plan of 300 lines', () => {
  const machines = [
    aMachine(),
    ...['B1', 'B2'].map((id) =>
      aMachine({ id, stage: 'brake', changeover: { combine: 'sum', attributes: { profile: 300 } } }),
    ),
  ];
  const jobs = Array.from({ length: 300 }, (_, k): JobInput => {
    const brake = { id: `J${k}:brake`, stage: 'brake', seconds: 1800, attributes: { profile: `p${k % 24}` } };
    const job = aJob(`J${k}`, 900, 900 * k);
    return { ...job, operations: [...job.operations, brake] };
  });
  const queues = {
    S1: jobs.map((job) => `${job.id}:shear`),
    B1: jobs.filter((_, k) => k % 2 === 0).map((job) => `${job.id}:brake`),
    B2: jobs.filter((_, k) => k % 2 === 1).map((job) => `${job.id}:brake`),
  };

  it('is played through 500 times within a second, and its median lies about the plan’s end', () => {
    const problem = aProblem({ machines, jobs });
    const started = performance.now();
    const played = play(problem, queues, everywhere(of([0.8, 1, 1.2])), 500);
    expect(performance.now() - started).toBeLessThan(1000);
    const planned = must(decode(problem, queues)).ends['J299']!;
    expect(played['J299']!.p50! / planned).toBeCloseTo(1, 1);
  });
});
