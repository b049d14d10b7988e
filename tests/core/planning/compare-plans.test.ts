import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedQueues, type QueueChange } from '../../../core/planning/changed-queues.ts';
import { comparePlans } from '../../../core/planning/compare-plans.ts';
import { withPlan } from '../../../core/planning/followed-plan.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBrake, aLine, anOrder, aShear, aShop, at, NOW } from '../../support/builders.ts';

const view = (shop: Shop) => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error('no plan');
  return plan.value;
};
const compared = (shop: Shop, a: Record<string, string[]>, b: Record<string, string[]>) =>
  comparePlans(shop, view(withPlan(shop, a)), view(withPlan(shop, b)));

describe('two plans', () => {
  // Shearing 20 strips takes minutes; a colour takes 4 min, a gauge 10 (aShear). The first is due within the hour.
  const shop = aShop({
    machine: [aBrake(), aShear({ state: { material: 'galv', gauge: '24', colour: 'moss' } })],
    order: [anOrder({ due: at('2026-11-30', '07:45') }), anOrder({ id: '1043' }), anOrder({ id: '1044' })],
    line: [
      aLine({ partId: 'flat-strip' }),
      aLine({ orderId: '1043', partId: 'flat-strip', colourId: 'bone', quantity: 200 }),
      aLine({ orderId: '1044', partId: 'flat-strip' }),
    ],
  });
  const [moss, bone, mossToo] = ['1042/1:shear', '1043/1:shear', '1044/1:shear'] as const;
  const grouped = { S1: [moss, mossToo, bone] };
  const split = { S1: [bone, moss, mossToo] };

  it('name lines earlier, later, newly late, and the changeovers of both', () => {
    const found = compared(shop, grouped, split);
    const ids = (rows: readonly { lineId: string }[]) => rows.map(({ lineId }) => lineId).sort();
    expect(ids(found.earlier)).toEqual(['1043/1']);
    expect(ids(found.later)).toEqual(['1042/1', '1044/1']);
    expect(ids(found.newlyLate)).toEqual(['1042/1']);
    expect(found.noLongerLate).toEqual([]);
    expect(found.before).toMatchObject({
      lateLines: 0,
      lateSeconds: 0,
      changeovers: 1,
      changeoverSeconds: 240,
    });
    expect(found.after).toMatchObject({ lateLines: 1, changeovers: 2, changeoverSeconds: 480 });
    const [late] = found.newlyLate;
    expect(found.after.lateSeconds).toBe(late!.after - at('2026-11-30', '07:45'));
  });

  it('name what is on another machine', () => {
    const two = { ...shop, machine: [...shop.machine, aShear({ id: 'S2', name: 'Second shear' })] };
    expect(compared(two, grouped, { S1: [moss, bone], S2: [mossToo] }).otherMachine).toEqual([
      { operation: mossToo, from: 'S1', to: 'S2' },
    ]);
  });

  it('are the same as themselves, and mirror one another', () => {
    const order = fc.shuffledSubarray([moss, bone, mossToo], { minLength: 3 });
    const where = fc.array(fc.constantFrom('S1', 'S2'), { minLength: 3, maxLength: 3 });
    const plan = fc.tuple(order, where).map(([ids, machines]) => ({
      S1: ids.filter((_, i) => machines[i] === 'S1'),
      S2: ids.filter((_, i) => machines[i] === 'S2'),
    }));
    const two = { ...shop, machine: [...shop.machine, aShear({ id: 'S2', name: 'Second shear' })] };
    fc.assert(
      fc.property(plan, plan, (a, b) => {
        const same = compared(two, a, a);
        expect([same.earlier, same.later, same.newlyLate, same.noLongerLate, same.otherMachine]).toEqual(
          Array.from({ length: 5 }, () => []),
        );
        expect(same.before).toEqual(same.after);
        const [there, back] = [compared(two, a, b), compared(two, b, a)];
        const turned = (moves: typeof there.earlier) =>
          moves.map((move) => ({ ...move, before: move.after, after: move.before }));
        expect(back.earlier).toEqual(turned(there.later));
        expect(back.later).toEqual(turned(there.earlier));
        expect(back.newlyLate).toEqual(turned(there.noLongerLate));
        expect(back.noLongerLate).toEqual(turned(there.newlyLate));
        expect(back.before).toEqual(there.after);
        expect(back.otherMachine).toEqual(
          there.otherMachine.map(({ operation, from, to }) => ({ operation, from: to, to: from })),
        );
      }),
      { numRuns: 30 },
    );
  });
});

describe('what changed in the queues', () => {
  const told = (before: Record<string, string[]>, after: Record<string, string[]>) =>
    [...changedQueues(before, after)].flatMap(([machine, changes]) =>
      changes.map((c) => `${machine} ${c.operation} ${c.what} ${c.machineId ?? ''} ${c.before}→${c.after}`),
    );

  it('says of as few as possible that they moved', () => {
    expect(told({ S: ['a', 'b', 'c', 'd'] }, { S: ['d', 'a', 'b', 'c'] })).toEqual(['S d earlier  3→0']);
    expect(told({ S: ['a', 'b', 'c', 'd'] }, { S: ['b', 'c', 'd', 'a'] })).toEqual(['S a later  0→3']);
    expect(told({ S: ['a', 'b'] }, { S: ['a', 'b'] })).toEqual([]);
  });

  it('says what came, went, is new and is gone', () => {
    expect(told({ S: ['a', 'b'], T: ['c', 'x'] }, { S: ['a', 'c', 'n'], T: ['b'] })).toEqual([
      'S c came T null→1',
      'S n added  null→2',
      'S b went T 1→null',
      'T b came S null→0',
      'T c went S 0→null',
      'T x removed  1→null',
    ]);
  });

  it('mirrors the way back', () => {
    const ids = ['a', 'b', 'c', 'd', 'e', 'f', 'g'];
    const some = fc
      .shuffledSubarray(ids)
      .chain((chosen) =>
        fc.nat({ max: chosen.length }).map((n) => ({ S: chosen.slice(0, n), T: chosen.slice(n) })),
      );
    const opposite: Record<QueueChange['what'], QueueChange['what']> = {
      ...{
        added: 'removed',
        removed: 'added',
        came: 'went',
        went: 'came',
        earlier: 'later',
        later: 'earlier',
      },
    };
    const flat = (changes: ReturnType<typeof changedQueues>, turn: boolean) =>
      [...changes]
        .flatMap(([machine, rows]) =>
          rows.map((row) =>
            turn
              ? { machine, ...row, what: opposite[row.what], before: row.after, after: row.before }
              : { machine, ...row },
          ),
        )
        .map(
          (row) => `${row.machine} ${row.operation} ${row.what} ${row.machineId} ${row.before} ${row.after}`,
        )
        .sort();
    fc.assert(
      fc.property(some, some, (a, b) => {
        expect(flat(changedQueues(b, a), false)).toEqual(flat(changedQueues(a, b), true));
        expect(changedQueues(a, a).size).toBe(0);
      }),
    );
  });
});
