import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { Problem, Queues } from '../../../core/schedule/problem.ts';
import { repair, type Repair, type RepairOptions } from '../../../core/schedule/repair.ts';
import { movedOperations } from '../../../core/schedule/repair/moved.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { familyRule } from '../../../core/schedule/rules/family.ts';
import { aJob, aMachine, aProblem, startedBefore, must, queued, refusal, seeds, timed } from './hand-shop.ts';
import { randomShop } from './random-shop.ts';

/** The first so many plans. */
function repairs(
  problem: Problem,
  queues: Queues,
  yields: number,
  options: RepairOptions = { seed: 1 },
): Repair[] {
  const found: Repair[] = [];
  for (const each of must(repair(problem, queues, options))) if (found.push(each) >= yields) break;
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
    expect(repairs(problem, published, 1)).toMatchObject([
      { reach: 'published', queues: published, movedOperations: 0, late: ['A'], saved: [], madeLate: [] },
    ]);
    expect(repairs(problem, published, 1)[0]!.schedule.ends).toEqual({ A: 1100, B: 100, C: 1150 });
  });

  it('then moves the line that would be late to the brake that works, behind the one it must not delay', () => {
    const best = repairs(problem, published, 20).at(-1)!;
    expect(best).toMatchObject({
      reach: 'near',
      queues: { B1: ['C:brake'], B2: ['B:brake', 'A:brake'] },
      movedOperations: 1,
      saved: ['A'],
      late: [],
      madeLate: [],
    });
  });

  it('at first leaves alone what the trouble does not delay, and machines it was not told of', () => {
    const elsewhere = repairs(problem, published, 2, { seed: 1, machines: ['B2'] });
    expect(elsewhere.map(({ reach }) => reach)).not.toContain('near');
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
      repairs(lateStart(stability), { S1: ['A:shear', 'B:shear'] }, 30).at(-1)!.queues.S1;
    expect(order(0.1)).toEqual(['B:shear', 'A:shear']);
    expect(order(1)).toEqual(['A:shear', 'B:shear']);
  });

  it('refuses a machine that is not in the shop and an order that leaves an operation out', () => {
    expect(refusal(repair(problem, published, { seed: 1, machines: ['B9'] }))).toContain(
      'B9 is not in the shop',
    );
    expect(refusal(repair(problem, { B1: [], B2: [] }, { seed: 1 }))).toContain('is in no queue');
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
});

describe('repairs in random shops', () => {
  it('no plan breaks a rule or is worse than the one before; the first is the published order; same seed, same plans', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const problem = must(buildProblem(startedBefore(randomShop(seed, 7))));
        const published = dispatch(problem, familyRule(problem));
        const plan = decode(problem, published);
        fc.pre(plan.ok && check(problem, plan.value).length === 0);
        const found = repairs(problem, published, 14, { seed });
        expect(found[0]!.schedule).toEqual(timed(problem, found[0]!.queues));
        expect(found[0]).toMatchObject({ reach: 'published', movedOperations: 0, saved: [], madeLate: [] });
        found.forEach((each, k) => {
          expect(check(problem, each.schedule)).toEqual([]);
          const before = found[Math.max(0, k - 1)]!;
          if (each !== before) expect(each.objective).toBeLessThan(before.objective);
          expect(each.saved.every((id) => found[0]!.late.includes(id) && !each.late.includes(id))).toBe(true);
          expect(each.late.length).toBe(found[0]!.late.length - each.saved.length + each.madeLate.length);
        });
        expect(repairs(problem, published, 14, { seed })).toEqual(found);
      }),
      { numRuns: 40 },
    );
  });
});
