import { describe, expect, it } from 'vitest';
import { check } from '../../../core/schedule/check.ts';
import { buildProblem } from '../../../core/schedule/build.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { JobInput, MachineInput, ProblemInput } from '../../../core/schedule/problem.ts';
import { aJob, aMachine, aProblem, must, refusal, timed } from './hand-shop.ts';

/** A place that takes any number of operations at once. */
const elsewhere = (own: Partial<MachineInput> = {}): MachineInput =>
  aMachine('E1', { stage: 'elsewhere', unlimited: true, ...own });
/** Sheared, away for so long, bent. */
const away = (id: string, [shear, out, brake]: readonly [number, number, number]): JobInput => {
  const job = aJob(id, [shear, brake], 0);
  return {
    ...job,
    operations: job.operations.toSpliced(1, 0, { id: `${id}:out`, stage: 'elsewhere', seconds: out }),
  };
};
const shop = (own: Partial<ProblemInput> = {}) =>
  aProblem({
    machines: [aMachine('S1'), elsewhere(), aMachine('B1')],
    jobs: [away('A', [10, 100, 5]), away('B', [10, 60, 5])],
    ...own,
  });
const queues = { S1: ['A:shear', 'B:shear'], E1: ['A:out', 'B:out'], B1: ['B:brake', 'A:brake'] };

describe('work elsewhere', () => {
  it('is away side by side: the second is back before the first, worked by hand', () => {
    const schedule = timed(shop(), queues);
    const times = Object.fromEntries(schedule.operations.map((o) => [o.operation, [o.start, o.end]]));
    expect(times).toMatchObject({ 'A:out': [10, 110], 'B:out': [20, 80] });
    expect(times).toMatchObject({ 'B:brake': [80, 85], 'A:brake': [110, 115] });
    expect(check(shop(), schedule)).toEqual([]);
  });

  it('would overlap on a machine that does one thing at a time: the checker says so', () => {
    const schedule = timed(shop(), queues);
    const narrow = shop({ machines: [aMachine('S1'), elsewhere({ unlimited: false }), aMachine('B1')] });
    expect(check(narrow, schedule).map(({ rule }) => rule)).toContain('one at a time');
  });

  it('stands under the name of its place, whatever its order there', () => {
    const schedule = timed(shop(), { ...queues, E1: ['B:out', 'A:out'] });
    expect(schedule).toEqual(timed(shop(), queues));
    expect(Object.keys(schedule.queues)).toEqual(['S1', 'E1', 'B1']);
  });

  it('counts the days on which its place is open', () => {
    const open = [
      { start: 0, end: 50 },
      { start: 80, end: 500 },
    ];
    const schedule = timed(shop({ machines: [aMachine('S1'), elsewhere({ open }), aMachine('B1')] }), queues);
    expect(schedule.operations.filter((o) => o.machine === 'E1').map((o) => o.end)).toEqual([140, 110]);
  });

  it('may be out already, several at once', () => {
    const out = (job: JobInput, at: number): JobInput => ({
      ...job,
      operations: job.operations
        .slice(1)
        .map((o) => (o.stage === 'elsewhere' ? { ...o, started: { machine: 'E1', at } } : o)),
    });
    const problem = shop({ jobs: [out(away('A', [10, 100, 5]), -20), out(away('B', [10, 60, 5]), -30)] });
    const schedule = timed(problem, { ...queues, S1: [] });
    expect(schedule.operations.map((o) => o.end)).toEqual([30, 80, 35, 85]);
    expect(check(problem, schedule)).toEqual([]);
  });

  it('may go to one of two places: the search takes the faster', () => {
    const jobs = [away('A', [10, 100, 5])].map((job) => ({
      ...job,
      operations: job.operations.map((o) =>
        o.stage === 'elsewhere'
          ? {
              ...o,
              machines: [
                { id: 'E1', seconds: 100 },
                { id: 'E2', seconds: 40 },
              ],
            }
          : o,
      ),
    }));
    const problem = shop({
      machines: [aMachine('S1'), elsewhere(), elsewhere({ id: 'E2' }), aMachine('B1')],
      jobs,
    });
    const best = [...improve(problem, { seed: 1 })].at(-1)!;
    expect(best.queues['E2']).toEqual(['A:out']);
    expect(best.status).toBe('optimal');
  });
});

describe('a place without limit is refused', () => {
  const told = (own: Partial<ProblemInput>) => refusal(buildProblem({ ...shop().input, ...own }));
  it('changeovers, since nothing is changed over', () => {
    const changeover = { combine: 'sum', attributes: { colour: 60 } } as const;
    expect(told({ machines: [aMachine('S1'), elsewhere({ changeover }), aMachine('B1')] })).toContain(
      'Machine E1 takes any number of operations at once',
    );
  });
  it('pins and a frozen order, since there is none', () => {
    expect(told({ pins: [{ operation: 'A:out', machine: 'E1', position: 0 }] })).toContain(
      'Operation A:out is pinned on E1, where operations have no order.',
    );
    expect(told({ frozen: { E1: ['A:out'] } })).toContain(
      'Operation A:out is frozen on E1, where operations have no order.',
    );
  });
  it('one job order on all machines', () =>
    expect(told({ sameOrder: true })).toContain('machines without limit'));
  it('an operation that is not its own, by its place’s name', () =>
    expect(
      refusal(decode(shop(), { ...queues, E1: ['A:out', 'B:out', 'B:brake'], B1: ['A:brake'] })),
    ).toContain('Machine E1 cannot do operation B:brake.'));
  it('nothing else', () => expect(must(buildProblem(shop().input)).machines).toBe(4));
});
