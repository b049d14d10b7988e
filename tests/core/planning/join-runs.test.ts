import { describe, expect, it } from 'vitest';
import { shearRuns } from '../../../core/planning/runs.ts';
import { cutRuns } from '../../../core/planning/cut-run.ts';
import { joinOf } from '../../../core/planning/join-runs.ts';
import { worthyJoins, type Joins } from '../../../core/planning/join-search.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { defaultWeights } from '../../../core/shop/settings.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { toSearchProblem } from '../../../core/planning/to-problem.ts';
import { aLine, anOrder, aPin, aQueue, aSheet, aShop, NOW } from '../../support/builders.ts';

/** Flat strips of 150 mm, eight to a sheet: four of 24 gauge, four of 26, four of 24 again, in one queue. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', quantity: 4, ...own });
const QUEUE = ['1042/1:shear', '1043/1:shear', '1042/2:shear'];
const SHEET = 3000;
function shopWith(material: number, own: Partial<Shop> = {}): Shop {
  const plain = aShop({
    order: [anOrder(), anOrder({ id: '1043', importance: 10 })],
    line: [flat({ number: 1 }), flat({ number: 2 }), flat({ orderId: '1043', gauge: '26' })],
    sheet: [aSheet({ costCents: SHEET }), aSheet({ id: 'galv-26-moss', gauge: '26', costCents: SHEET })],
    queue: [aQueue({ operations: QUEUE })],
    ...own,
  });
  const weights = { ...plain.settings.weights, changeover: 0, flow: 0, material };
  const shop = { ...plain, settings: { ...plain.settings, weights } };
  // The 26 gauge ends just in time as planned: whatever comes before it makes it late.
  const end = planOf(shop).schedule.ends['1043/1']!;
  return { ...shop, order: shop.order.map((o) => (o.id === '1043' ? { ...o, due: end } : o)) };
}
function planOf(shop: Shop) {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
}
function firstJoin(shop: Shop) {
  const plan = planOf(shop);
  const cuts = [...cutRuns(shop, plan)];
  return joinOf(shop, plan, cuts, cuts[0]!);
}
function joinsOf(shop: Shop): Joins {
  const made = toSearchProblem(shop, NOW);
  if (!made.ok) throw new Error(made.issues[0]?.message);
  const last = [...worthyJoins(shop, made.value, made.value.queues)].at(-1)!;
  const plan = decode(made.value.problem, last.queues);
  expect(plan.ok && check(made.value.problem, plan.value)).toEqual([]);
  return last;
}

describe('joining a run and the next of its metal', () => {
  it('saves the sheet that two half used ones make, and makes late what it passes', () => {
    const join = firstJoin(shopWith(10));
    expect(join?.queues.S1).toEqual(['1042/1:shear', '1042/2:shear', '1043/1:shear']);
    expect(join?.savedCents).toBe(SHEET);
    expect(join?.latenessSeconds).toBeGreaterThan(0);
    expect(join?.lateLines).toBe(1);
  });

  it('is worth it when the stock weighs more than the lateness: to the second where they are equal', () => {
    // The only line it makes late has an importance of ten.
    const lateness = 10 * firstJoin(shopWith(10))!.latenessSeconds;
    const even = (lateness * 10_000) / (3600 * SHEET);
    expect(firstJoin(shopWith(even))?.gain).toBeCloseTo(0, 6);
    expect(firstJoin(shopWith(even * 1.01))?.gain).toBeGreaterThan(0);
    expect(firstJoin(shopWith(even * 0.99))?.gain).toBeLessThan(0);
  });

  it('counts a remnant once: what an earlier run has taken, the joined run cannot take again', () => {
    // One remnant takes four strips and costs nothing; each run by itself would fit on it.
    const remnant = aSheet({
      ...{ id: 'r', form: 'remnant', widthMm: 609.6, costCents: 0, onHand: 1 },
    });
    const shop = shopWith(10);
    const join = firstJoin({ ...shop, sheet: [remnant, ...shop.sheet] });
    // Apart: the remnant and a sheet. Joined: the remnant and a sheet. Nothing is saved.
    expect(join?.savedCents).toBe(0);
  });

  it('is not offered where no later run is of the metal', () => {
    const shop = shopWith(10);
    const plan = planOf(shop);
    const cuts = [...cutRuns(shop, plan)];
    expect(joinOf(shop, plan, cuts, cuts[1]!)).toBeNull();
  });
});

/** The first run may not be put off: the later one can only pass the 26 gauge. */
const first = { pin: [aPin({ id: '1042/1:shear' })] };

describe('joins after the search', () => {
  it('are made where the stock is worth the lateness', () => {
    const joins = joinsOf(shopWith(1000, first));
    expect(joins).toMatchObject({ count: 1, savedCents: SHEET });
    expect(joins.objectiveAdded).toBeGreaterThan(0);
    expect(joins.queues.S1!.indexOf('1042/2:shear')).toBe(joins.queues.S1!.indexOf('1042/1:shear') + 1);
  });

  it('are left where it is not, and where stock does not count', () => {
    expect(joinsOf(shopWith(0.001, first))).toMatchObject({ count: 0, savedCents: 0, objectiveAdded: 0 });
    expect(joinsOf(shopWith(0, first)).queues.S1).toEqual(QUEUE);
  });

  it('put the earlier run off where that makes nothing late', () => {
    const joins = joinsOf(shopWith(0.001));
    expect(joins).toMatchObject({ count: 1, savedCents: SHEET, objectiveAdded: 0 });
    expect(joins.queues.S1).toEqual(['1043/1:shear', '1042/1:shear', '1042/2:shear']);
  });

  it('break no pin', () => {
    const pins = [aPin({ id: '1043/1:shear' }), aPin({ id: '1042/1:shear' })];
    expect(joinsOf(shopWith(1000, { pin: pins })).queues.S1).toEqual(QUEUE);
  });

  it('never make the plan worse, stock and time together', () => {
    for (const material of [0, 1, defaultWeights.material, 1000]) {
      const shop = shopWith(material);
      const { savedCents, objectiveAdded } = joinsOf(shop);
      expect((material * 3600 * savedCents) / 10_000).toBeGreaterThanOrEqual(objectiveAdded);
    }
    expect(shearRuns(shopWith(1), planOf(shopWith(1)))).toHaveLength(3);
  });
});
