import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { Problem, Queues } from '../../../core/schedule/problem.ts';
import { repair, type RepairOptions, type Repairs } from '../../../core/schedule/repair.ts';
import { movedIn, movedOperations } from '../../../core/schedule/repair/moved.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { familyRule } from '../../../core/schedule/rules/family.ts';
import { aJob, aMachine, aProblem, startedBefore, must, queued, refusal, seeds, timed } from './hand-shop.ts';
import { randomShop } from './random-shop.ts';

/** The first so many plans. */
function repairs(
  problem: Problem,
  queues: Queues,
  yields: number,
  options: Partial<RepairOptions> = {},
): Repairs[] {
  const found: Repairs[] = [];
  for (const each of must(repair(problem, queues, { seed: 1, most: 25, ...options })))
    if (found.push(each) >= yields) break;
  return found;
}

describe('after a breakdown (worked by hand)', () => {
  // B1 is down until 1,000. A (due 250) was first on it, B alone on B2; both were to end at 100.
  const down = [{ start: 1000, end: 9000 }];
  const problem = aProblem({
    machines: [aMachine('B1', { open: down }), aMachine('B2')],
    jobs: [aJob('A', [null, 100], 250), aJob('B', [null, 100], 150), aJob('C', [null, 50], 2000)],
    reference: { A: 100, B: 100, C: 150 },
  });
  const published = queued(problem, { B1: 'A C', B2: 'B' });

  it('first keeps the published order and lets everything wait', () => {
    const [first] = repairs(problem, published, 1);
    expect(first!.few).toMatchObject({
      queues: published,
      movedOperations: 0,
      late: ['A'],
      saved: [],
      madeLate: [],
    });
    expect(first!.best).toBe(first!.few);
    expect(first!.few.schedule.ends).toEqual({ A: 1100, B: 100, C: 1150 });
  });

  it('then moves the line that would be late to the brake that works, behind the one it must not delay', () => {
    const { few } = repairs(problem, published, 20).at(-1)!;
    expect(few).toMatchObject({
      queues: { B1: ['C:brake'], B2: ['B:brake', 'A:brake'] },
      movedOperations: 1,
      saved: ['A'],
      late: [],
      madeLate: [],
    });
  });

  it('moves nothing when the trouble delays nobody', () => {
    const calm = aProblem({ ...problem.input, reference: { A: 1100, B: 100, C: 1150 } });
    expect(repairs(calm, published, 20).at(-1)!.few.movedOperations).toBe(0);
  });

  it('moves late work of a plan that nobody was promised an end in, too', () => {
    const unpromised = aProblem({ ...problem.input, reference: {} });
    expect(repairs(unpromised, published, 20).at(-1)!.few).toMatchObject({
      movedOperations: 1,
      saved: ['A'],
    });
  });

  // B1 is down until 1,000 and had A, C and D, all due by 500; B2 is free. Each moved over is in time, A counts most.
  const many = aProblem({
    machines: [aMachine('B1', { open: down }), aMachine('B2')],
    jobs: [
      aJob('D', [null, 100], 500),
      aJob('C', [null, 100], 500, { weight: 2 }),
      aJob('A', [null, 100], 500, { weight: 3 }),
    ],
    reference: { D: 100, C: 200, A: 300 },
  });

  it('moves no more than it may, and those first that gain most', () => {
    const few = (most: number) =>
      repairs(many, queued(many, { B1: 'D C A', B2: '' }), 60, { most }).at(-1)!.few;
    expect(few(1)).toMatchObject({ movedOperations: 1, queues: { B2: ['A:brake'] }, saved: ['A'] });
    expect(few(2)).toMatchObject({ movedOperations: 2, saved: ['C', 'A'] });
    expect(few(3)).toMatchObject({ movedOperations: 3, late: [] });
  });

  // The shear begins 50 s late: A ends at 150 (was 100), B at 250 (was 200), 30 s after its date. B first would end B at
  // 150 and A at 250, both in time: 30 s of lateness gained for 100 s more of shifted ends (200 s instead of 100 s).
  const lateStart = (stability: number) =>
    aProblem({
      machines: [aMachine('S1', { availableFrom: 50 })],
      jobs: [aJob('A', [100, null], 300), aJob('B', [100, null], 220)],
      objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability },
      reference: { A: 100, B: 200 },
    });

  it('changes the order when the lateness saved is worth more than the stability lost, and not otherwise', () => {
    const order = (stability: number) =>
      repairs(lateStart(stability), { S1: ['A:shear', 'B:shear'] }, 30).at(-1)!.best.queues.S1;
    expect(order(0.1)).toEqual(['B:shear', 'A:shear']);
    expect(order(1)).toEqual(['A:shear', 'B:shear']);
  });

  it('refuses a machine that is not in the shop and an order that leaves an operation out', () => {
    expect(refusal(repair(problem, published, { seed: 1, most: 25, machines: ['B9'] }))).toContain(
      'B9 is not in the shop',
    );
    expect(refusal(repair(problem, { B1: [], B2: [] }, { seed: 1, most: 25 }))).toContain('is in no queue');
  });
});

describe('what was moved', () => {
  it('one operation taken from the front to the end is one move, though every rank changed', () => {
    expect(movedOperations({ S1: ['a', 'b', 'c', 'd'] }, { S1: ['b', 'c', 'd', 'a'] })).toEqual(['a']);
  });

  it('an exchange of two is two moves, a change of machine one, and nothing none', () => {
    expect(movedOperations({ S1: ['a', 'b', 'c', 'd'] }, { S1: ['d', 'b', 'c', 'a'] })).toEqual(['d', 'a']);
    expect(movedOperations({ B1: ['a', 'b'], B2: ['c'] }, { B1: ['b'], B2: ['c', 'a'] })).toEqual(['a']);
    expect(movedOperations({ B1: ['a', 'b'] }, { B1: ['a', 'b'] })).toEqual([]);
  });

  it('where any number go on at once nothing moves by going in another order', () => {
    const problem = aProblem({
      machines: [aMachine('B1'), aMachine('X', { stage: 'brake', unlimited: true })],
      jobs: [aJob('A', [null, 10]), aJob('B', [null, 10]), aJob('C', [null, 10])],
    });
    const before = { B1: ['C:brake'], X: ['A:brake', 'B:brake'] };
    expect(movedIn(problem, before, { B1: ['C:brake'], X: ['B:brake', 'A:brake'] })).toEqual([]);
    expect(movedIn(problem, before, { B1: [], X: ['C:brake', 'B:brake', 'A:brake'] })).toEqual(['C:brake']);
  });
});

describe('repairs in random shops', () => {
  it('no plan breaks a rule or is worse than the one before; few moves are never more than may be; same seed, same plans', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = must(buildProblem(startedBefore(randomShop(seed, 7))));
        const published = dispatch(problem, familyRule(problem));
        const plan = decode(problem, published);
        fc.pre(plan.ok && check(problem, plan.value).length === 0);
        const most = 1 + (seed % 3);
        const found = repairs(problem, published, 30, { seed, most });
        const kept = found[0]!.few;
        expect(kept.schedule).toEqual(timed(problem, kept.queues));
        expect(kept).toMatchObject({ movedOperations: 0, saved: [], madeLate: [] });
        found.forEach((each, k) => {
          const before = found[Math.max(0, k - 1)]!;
          expect(each.few.movedOperations).toBeLessThanOrEqual(most);
          expect(each.few.objective).toBeLessThanOrEqual(before.few.objective);
          expect(each.best.objective).toBeLessThanOrEqual(
            Math.min(before.best.objective, each.few.objective),
          );
          for (const plan of new Set([each.few, each.best])) {
            expect(check(problem, plan.schedule)).toEqual([]);
            expect(plan.saved.every((id) => kept.late.includes(id) && !plan.late.includes(id))).toBe(true);
            expect(plan.late.length).toBe(kept.late.length - plan.saved.length + plan.madeLate.length);
          }
        });
        expect(repairs(problem, published, 30, { seed, most })).toEqual(found);
      }),
      { numRuns: 40 },
    );
  });
});
