import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { explain } from '../../../core/schedule/explain.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { OperationInput, Problem, ProblemInput } from '../../../core/schedule/problem.ts';
import type { OpenInterval } from '../../../core/schedule/working-time.ts';
import { readShopProblem } from '../../../core/schedule/shop-problem.ts';
import { Rng } from '../../../core/rng.ts';
import { built } from './exact.ts';
import { aJob, aMachine, aProblem, must, queued, refusal, seeds, timed } from './hand-shop.ts';
import { randomQueues, randomShop, uncontended, withHolds } from './random-shop.ts';

/** Two brakes, a changeover of 60 s between profiles, and lines A, B, C of which A and B hold the hemming tools H. */
const tools = (
  own: Partial<Omit<ProblemInput, 'machines'>> = {},
  open: Readonly<Record<string, readonly OpenInterval[]>> = {},
): Problem => {
  const brake = (id: string) =>
    aMachine(id, {
      initial: { profile: 'none' },
      changeover: { combine: 'sum', attributes: { profile: 60 } },
      open: open[id] ?? null,
    });
  const holding: Partial<OperationInput> = { holds: ['H'] };
  return aProblem({
    jobs: [
      aJob('A', [null, 300], null, { brake: holding, attributes: { profile: 'hem' } }),
      aJob('B', [null, 200], null, { brake: holding, attributes: { profile: 'hem' } }),
      aJob('C', [null, 100]),
    ],
    ...own,
    machines: [brake('B1'), brake('B2')],
  });
};
const times = (problem: Problem, words: Record<string, string>) =>
  Object.fromEntries(
    timed(problem, queued(problem, words)).operations.map((o) => [
      o.job,
      `${o.machine} ${o.changeoverStart} ${o.start} ${o.end}`,
    ]),
  );

describe('a thing of which there is one', () => {
  it('is at one machine: the other begins its changeover when it is free, and does other work before if that comes first', () => {
    const problem = tools();
    // A: 60 s of changeover, 300 s of work; B changes over from 360 on.
    expect(times(problem, { B1: 'A', B2: 'C B' })).toEqual({
      A: 'B1 0 60 360',
      C: 'B2 0 0 100',
      B: 'B2 360 420 620',
    });
    expect(times(problem, { B1: 'A', B2: 'B C' })).toEqual({
      A: 'B1 0 60 360',
      B: 'B2 360 420 620',
      C: 'B2 620 620 720',
    });
  });

  it('changes nothing on one machine', () => {
    expect(times(tools(), { B1: 'A B', B2: 'C' })).toMatchObject({ B: 'B1 360 360 560', C: 'B2 0 0 100' });
  });

  it('stays where it is while that machine is closed in the middle of the work', () => {
    const night = [
      { start: 0, end: 200 },
      { start: 1000, end: 5000 },
    ];
    const problem = tools({}, { B1: night });
    // A has worked 140 s by 200 and ends at 1160; B2, open all night, waits.
    expect(times(problem, { B1: 'A', B2: 'B C' })).toMatchObject({
      A: 'B1 0 60 1160',
      B: 'B2 1160 1220 1420',
    });
  });

  it('is used in a gap that is long enough, by what is ready for it', () => {
    const problem = tools(
      {
        jobs: [
          // Ready at 10, but its brake is closed until 1000: it holds H from 1000 on.
          aJob('A', [null, 300], null, { release: 10, brake: { holds: ['H'] } }),
          aJob('B', [null, 200], null, { release: 20, brake: { holds: ['H'] } }),
        ],
      },
      { B1: [{ start: 1000, end: 5000 }] },
    );
    expect(times(problem, { B1: 'A', B2: 'B' })).toEqual({ A: 'B1 1000 1000 1300', B: 'B2 20 20 220' });
  });

  it('is held from now on by what has started, wherever that ends; two that have started are left as they are', () => {
    const started = (machine: string, at: number) => ({ holds: ['H'], started: { machine, at } });
    const problem = tools({
      now: 100,
      jobs: [
        aJob('A', [null, 300], null, { brake: started('B1', 50) }),
        aJob('B', [null, 200], null, { brake: started('B2', 80) }),
        aJob('C', [null, 100], null, { brake: { holds: ['H'] } }),
      ],
    });
    expect(times(problem, { B1: 'A', B2: 'B C' })).toEqual({
      A: 'B1 50 50 350',
      B: 'B2 80 80 280',
      C: 'B2 350 350 450',
    });
    expect(check(problem, timed(problem, queued(problem, { B1: 'A', B2: 'B C' })))).toEqual([]);
  });

  it('may be wanted on one machine and not on another, which has its own', () => {
    const own: Partial<OperationInput> = { machines: [{ id: 'B1', holds: ['H'] }, { id: 'B2' }] };
    const problem = tools({
      jobs: [
        aJob('A', [null, 300], null, { brake: { holds: ['H'] } }),
        aJob('B', [null, 200], null, { brake: own }),
      ],
    });
    expect(times(problem, { B1: 'A', B2: 'B' })).toEqual({ A: 'B1 0 0 300', B: 'B2 0 0 200' });
    expect(times(problem, { B1: 'B', B2: 'A' })).toEqual({ B: 'B1 0 0 200', A: 'B2 200 200 500' });
  });

  it('is told of when a line asks why it ends so late: what it waits for, where, and until when', () => {
    const problem = tools();
    const schedule = timed(problem, queued(problem, { B1: 'A', B2: 'C B' }));
    const { causes } = must(explain(problem, schedule, 'B'));
    expect(causes.map(({ kind, from, to, blockedBy }) => [kind, from, to, ...blockedBy])).toEqual([
      ['waiting-for-machine', 0, 100, 'C:brake'],
      ['held-elsewhere', 100, 360, 'A:brake'],
      ['changeover', 360, 420],
      ['work', 420, 620],
    ]);
    expect(causes[1]!.held).toEqual([{ thing: 'H', machine: 'B1', until: 360 }]);
  });
});

describe('a thing that is part of what is set up', () => {
  const hemmed = (id: string, seconds: number, own: Partial<OperationInput> = {}, release = 0) =>
    aJob(id, [null, seconds], null, {
      release,
      brake: { holds: ['H'], ...own },
      attributes: { profile: 'hem' },
    });
  const shared = { partOf: { H: ['profile'] } };

  it('is fetched back by a changeover when another machine had it meanwhile, though the machine stands as asked', () => {
    const jobs = [hemmed('A', 300), hemmed('B', 200), hemmed('D', 100)];
    const words = { B1: 'A D', B2: 'B' };
    // A has H until 360, B until 620; B1 stands for hems all the time.
    expect(times(tools({ jobs, ...shared }), words)).toEqual({
      A: 'B1 0 60 360',
      B: 'B2 360 420 620',
      D: 'B1 620 680 780',
    });
    expect(times(tools({ jobs }), words)).toMatchObject({ D: 'B1 620 620 720' });
  });

  it('costs nothing more where the machine has to change over anyway, or had it last itself', () => {
    const jobs = [
      hemmed('A', 300),
      aJob('C', [null, 100], null, { attributes: { profile: 'cap' } }),
      hemmed('D', 100),
    ];
    expect(times(tools({ jobs, ...shared }), { B1: 'A C D', B2: '' })).toEqual({
      A: 'B1 0 60 360',
      C: 'B1 360 420 520',
      D: 'B1 520 580 680',
    });
  });

  it('stays on the machine that stands ready with it until that has used it', () => {
    const problem = tools({
      jobs: [
        hemmed('A', 100),
        // Somebody else works from 160 to 500, so that D, ready at 165 and for two people, waits.
        aJob('C', [null, 340], null, { release: 160 }),
        hemmed('D', 100, { crew: 2 }, 165),
        hemmed('B', 50, {}, 170),
      ],
      crew: [{ start: 0, end: 5000, people: 2 }],
      ...shared,
    });
    const three = built({ ...problem.input, machines: [...problem.input.machines, aMachine('B3')] });
    expect(times(three, { B1: 'A D', B2: 'B', B3: 'C' })).toEqual({
      A: 'B1 0 60 160',
      C: 'B3 160 160 500',
      D: 'B1 500 500 600',
      B: 'B2 600 660 710',
    });
  });

  it('is missed by the checker where a plan leaves its changeover out', () => {
    const jobs = [hemmed('A', 300), hemmed('B', 200), hemmed('D', 100)];
    const free = tools({ jobs });
    const schedule = timed(free, queued(free, { B1: 'A D', B2: 'B' }));
    expect(check(free, schedule)).toEqual([]);
    expect(check(tools({ jobs, ...shared }), schedule)).toEqual([
      {
        rule: 'changeover',
        operation: 'D:brake',
        message: 'The changeover before D:brake takes 60 s, not 0 s.',
      },
      {
        rule: 'changeover',
        operation: 'D:brake',
        message: 'The changeover before D:brake has not exactly the 60 open seconds that it takes.',
      },
    ]);
  });
});

describe('the checker', () => {
  it('finds a thing at two places, with the seconds', () => {
    const free = tools({ jobs: [aJob('A', [null, 300]), aJob('B', [null, 200])] });
    const schedule = timed(free, queued(free, { B1: 'A', B2: 'B' }));
    expect(check(free, schedule)).toEqual([]);
    const held = { brake: { holds: ['H'] } };
    const problem = tools({ jobs: [aJob('A', [null, 300], null, held), aJob('B', [null, 200], null, held)] });
    expect(check(problem, schedule)).toEqual([
      {
        rule: 'held elsewhere',
        operation: 'B:brake',
        message: 'Operations A:brake on B1 and B:brake on B2 both hold H for 200 s.',
      },
    ]);
  });

  it('passes every plan of the decoder and the search in random shops whose operations hold things', () => {
    let waited = 0;
    let fetched = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const input = withHolds(new Rng(seed), { ...randomShop(seed), frozen: {}, pins: [] });
        const problem = built(input);
        fc.pre(problem.held !== null);
        const schedule = must(decode(problem, randomQueues(seed, input)));
        expect(check(problem, schedule)).toEqual([]);
        const alone = built({ ...uncontended(input), crew: input.crew ?? null });
        const without = timed(alone, schedule.queues);
        if (without.operations.some((o, k) => o.start < schedule.operations[k]!.start)) waited += 1;
        const still = timed(built({ ...input, partOf: {} }), schedule.queues);
        if (still.terms.changeover < schedule.terms.changeover) fetched += 1;
        for (const found of improve(problem, { seed })) {
          expect(check(problem, found.schedule)).toEqual([]);
          if (found.bound !== null) expect(found.objective).toBeGreaterThanOrEqual(found.bound - 1e-6);
          if (found.step >= 1) break;
        }
      }),
      // The example: a step that began before the one ahead of it ended, and the line ended with it.
      { numRuns: 300, examples: [[152274536]] },
    );
    expect(waited).toBeGreaterThan(30);
    expect(fetched).toBeGreaterThan(30);
  });
});

describe('what is held', () => {
  it.each([
    [['H', 'H'], 'Operation A:brake holds H twice, and there is one. Name each thing that it holds once.'],
    [[''], 'Operation A:brake holds something without a name. Name each thing that it holds once.'],
  ])('is refused as %j', (holds, words) => {
    const job = aJob('A', [null, 300], null, { brake: { holds } });
    expect(refusal(buildProblem({ ...tools().input, jobs: [job] }))).toBe(words);
  });

  it('does not go together with one job order on all machines', () => {
    const job = aJob('A', [10, 300], null, { brake: { holds: ['H'] } });
    const machines = [aMachine('S1'), aMachine('B1')];
    expect(refusal(buildProblem({ ...tools().input, machines, jobs: [job], sameOrder: true }))).toMatch(
      /^One job order on all machines does not go together with .*things that machines share/,
    );
  });

  it('comes from a problem file', () => {
    const file = must(
      readShopProblem({
        format: 'shop-problem/1',
        name: 'two brakes',
        machines: [
          { id: 'B1', stage: 'brake' },
          { id: 'B2', stage: 'brake' },
        ],
        jobs: [{ id: 'A', operations: [{ stage: 'brake', seconds: 5, holds: ['H'] }] }],
        objective: {},
        partOf: { H: ['tools'] },
      }),
    );
    expect(file.input.partOf).toEqual({ H: ['tools'] });
    expect(file.input.jobs[0]!.operations[0]!.holds).toEqual(['H']);
    expect(built(file.input).held).toEqual([[0], [0]]);
  });
});
