import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutRuns } from '../../../core/planning/cut-run.ts';
import { metalMissing } from '../../../core/planning/metal-missing.ts';
import { type PlanView } from '../../../core/planning/plan-view.ts';
import { purchasesOf, stockRows, takenByDay } from '../../../core/planning/stock-use.ts';
import { toSearchProblem } from '../../../core/planning/to-problem.ts';
import { metalWords } from '../../../core/report/metal-words.ts';
import { improve } from '../../../core/schedule/improve.ts';
import { check } from '../../../core/schedule/check.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aQueue, aShear, aSheet, NOW, someSettings } from '../../support/builders.ts';
import { flat, FRIDAY, planOf, shopOf, startOf, THURSDAY } from '../../support/metal-shop.ts';
import { aDelivery } from '../../support/stock-builders.ts';

const missingOf = (shop: Shop) =>
  metalMissing(shop, planOf(shop), NOW).map(({ is, operation, missing, awaited }) => [
    operation.line.id,
    is,
    missing,
    ...awaited.map(({ deliveryId, sheets }) => `${sheets} of ${deliveryId}`),
  ]);

describe('a line whose metal is on its way', () => {
  it('is not sheared before its delivery; one that is ahead of it in the plan has what lies there', () => {
    const shop = shopOf({ delivery: [aDelivery({ due: THURSDAY, pieces: 3 })] });
    const plan = planOf(shop);
    expect(startOf(plan, '1042/1')).toBeLessThan(THURSDAY);
    expect(startOf(plan, '1042/2')).toBe(THURSDAY);
    expect(check(plan.problem, plan.schedule)).toEqual([]);
    expect(missingOf(shop)).toEqual([['1042/2', 'awaited', 0, '3 of D1']]);
  });

  it('has what lies there once it is moved ahead of the other', () => {
    const shop = shopOf({
      sheet: [aSheet({ onHand: 3 })],
      delivery: [aDelivery({ due: THURSDAY, pieces: 2 })],
      queue: [aQueue({ operations: ['1042/2:shear', '1042/1:shear'] })],
    });
    expect(startOf(planOf(shop), '1042/2')).toBeLessThan(THURSDAY);
    expect(startOf(planOf(shop), '1042/1')).toBe(THURSDAY);
  });

  it('waits for the last of the deliveries that it needs, and for no later one', () => {
    const delivery = [
      aDelivery({ id: 'D2', due: FRIDAY, pieces: 2 }),
      aDelivery({ id: 'D1', due: THURSDAY, pieces: 1 }),
      aDelivery({ id: 'D3', due: FRIDAY + 86400, pieces: 9 }),
    ];
    const shop = shopOf({ delivery });
    expect(startOf(planOf(shop), '1042/2')).toBe(FRIDAY);
    expect(missingOf(shop)).toEqual([['1042/2', 'awaited', 0, '1 of D1', '2 of D2']]);
  });

  it('is planned at once where the shop does not wait for metal, and said to lack it all the same', () => {
    const shop = shopOf({
      settings: someSettings({ awaitMetal: false }),
      delivery: [aDelivery({ due: THURSDAY, pieces: 3 })],
    });
    expect(startOf(planOf(shop), '1042/2')).toBeLessThan(THURSDAY);
    expect(missingOf(shop)).toEqual([['1042/2', 'awaited', 0, '3 of D1']]);
  });

  it('says what it waits for and when that is due', () => {
    const shop = shopOf({ delivery: [aDelivery({ due: THURSDAY, pieces: 3 })] });
    const [row] = metalMissing(shop, planOf(shop), NOW);
    expect(metalWords(shop, row!, NOW)).toEqual([
      'Waits for 3 sheets of 24 ga Moss green, Galvanized, 48 in × 120 in, due Thu 3 Dec (delivery D1).',
    ]);
    expect(metalWords(shop, row!, FRIDAY).at(-1)).toBe(
      'Delivery D1 is overdue: receive what has come, or say when it comes.',
    );
  });
});

describe('a line that nothing has metal for', () => {
  it('is planned as any other and listed as lacking metal, the worst first', () => {
    const shop = shopOf({ delivery: [aDelivery({ due: THURSDAY, pieces: 1 })] });
    expect(missingOf(shop)).toEqual([['1042/2', 'missing', 16, '1 of D1']]);
    expect(missingOf(shopOf({}))).toEqual([['1042/2', 'missing', 24]]);
    expect(startOf(planOf(shopOf({})), '1042/2')).toBeLessThan(THURSDAY);
  });
});

describe('in a shop that tells lots apart', () => {
  it('a line waits for the lot that will be whole, and takes none of another', () => {
    const sheet = [
      aSheet({ onHand: 0 }),
      aSheet({ id: 'moss-A', lot: 'A', onHand: 1 }),
      aSheet({ id: 'moss-B', lot: 'B', onHand: 1 }),
    ];
    const shop = shopOf({
      settings: someSettings({ stockKnows: { lot: true, paint: true, film: true } }),
      line: [flat({ number: 1, quantity: 24 })],
      sheet,
      delivery: [aDelivery({ sheetId: 'moss-B', due: THURSDAY, pieces: 2 })],
    });
    const plan = planOf(shop);
    expect(plan.operations.get('1042/1:shear')!.lot).toMatchObject({ from: 'delivery', lot: { lot: 'B' } });
    expect(startOf(plan, '1042/1')).toBe(THURSDAY);
  });
});

describe('the sheets of a delivery', () => {
  const shop = shopOf({ delivery: [aDelivery({ due: THURSDAY, pieces: 4 })] });
  const cuts = [...cutRuns(shop, planOf(shop))];

  it('are cut by a run of their own, which begins when they come, and nothing is bought for it', () => {
    expect(cuts.map(({ run, takings }) => [run.id, takings])).toEqual([
      ['1042/1', [{ sheetId: 'galv-24-moss', pieces: 2, short: 0 }]],
      ['1042/2', [{ sheetId: 'galv-24-moss', pieces: 3, short: 0 }]],
    ]);
    expect(purchasesOf(stockRows(shop, cuts))).toEqual([]);
  });

  it('are counted with the stock, on the day that they come', () => {
    const row = stockRows(shop, cuts)[0]!;
    expect(row.left).toBe(1);
    expect(
      takenByDay(row, shop.settings.timeZone).map(({ came, pieces, left }) => [came, pieces, left]),
    ).toEqual([
      [0, 2, 0],
      [4, 3, 1],
    ]);
  });

  it('that are not enough are bought in addition', () => {
    const few = shopOf({ delivery: [aDelivery({ due: THURSDAY, pieces: 1 })] });
    expect(purchasesOf(stockRows(few, [...cutRuns(few, planOf(few))]))).toMatchObject([{ pieces: 2 }]);
  });
});

/** Sheets that a line of whole sheets takes, eight strips each. */
const needOf = ({ quantity }: { quantity: number }): number => quantity / 8;

/**
 * Counted anew, by nothing but sheets: whoever is sheared first takes first, and nobody takes what has not come.
 * @returns lines that start before there are enough sheets for them and all ahead of them; those that lack metal anyway are not asked
 */
function tooEarly(shop: Shop, plan: PlanView): string[] {
  const supply = (until: number): number =>
    shop.sheet.reduce((sum, { onHand }) => sum + onHand, 0) +
    shop.delivery.reduce((sum, { due, pieces }) => sum + (due <= until ? pieces : 0), 0);
  const sheared = plan.schedule.operations
    .filter(({ operation }) => operation.endsWith(':shear'))
    .sort((a, b) => a.start - b.start);
  let taken = 0;
  return sheared.flatMap(({ job, start }) => {
    taken += needOf(shop.line.find(({ id }) => id === job)!);
    return taken <= supply(Infinity) && taken > supply(start) ? [job] : [];
  });
}

/** The last of so many at most. */
function lastOf<T>(all: Iterable<T>, most: number): T | null {
  let last: T | null = null;
  for (const one of all) {
    last = one;
    most -= 1;
    if (most === 0) break;
  }
  return last;
}

const someShop = fc
  .record({
    needs: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 2, maxLength: 6 }),
    onHand: fc.integer({ min: 0, max: 8 }),
    coming: fc.array(
      fc.record({ hours: fc.integer({ min: 1, max: 90 }), pieces: fc.integer({ min: 1, max: 6 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
    seed: fc.nat(),
  })
  .chain(({ needs, ...rest }) =>
    fc.record({
      rest: fc.constant(rest),
      // Due dates of their own, so that the search has a reason for another order.
      lines: fc.constant(
        needs.map((sheets, i) =>
          flat({ number: i + 1, quantity: 8 * sheets, due: NOW + 3600 * (4 + ((i * 37) % 60)) }),
        ),
      ),
      order: fc.shuffledSubarray(
        needs.map((_, i) => `1042/${i + 1}:shear`),
        { minLength: needs.length },
      ),
    }),
  )
  .map(({ rest: { onHand, coming, seed }, lines, order }) => ({
    seed,
    shop: shopOf({
      line: lines,
      sheet: [aSheet({ onHand })],
      delivery: coming.map(({ hours, pieces }, i) =>
        aDelivery({ id: `D${i + 1}`, due: NOW + hours * 3600, pieces }),
      ),
      queue: [aQueue({ operations: order })],
    }),
  }));

describe('in any shop that expects deliveries', () => {
  it('no line is sheared before there are sheets for it and those ahead of it, as planned and as searched', () => {
    fc.assert(
      fc.property(someShop, ({ shop, seed }) => {
        const plan = planOf(shop);
        expect(check(plan.problem, plan.schedule)).toEqual([]);
        expect(tooEarly(shop, plan)).toEqual([]);
        const asked = toSearchProblem(shop, NOW);
        if (!asked.ok) throw new Error(asked.issues[0]?.message);
        const { problem, queues: start } = asked.value;
        const found = lastOf(improve(problem, { seed, start }), 20)!;
        expect(check(problem, found.schedule)).toEqual([]);
        const queue = Object.entries(found.queues).map(([id, operations]) => aQueue({ id, operations }));
        const after = planOf({ ...shop, queue });
        expect(tooEarly(shop, after)).toEqual([]);
        // What was found holds when metal is given out in its order, where there is enough of it for all.
        if (metalMissing(shop, plan, NOW).some(({ is }) => is === 'missing')) return;
        const startNow = new Map(after.schedule.operations.map((o) => [o.operation, o.start]));
        for (const o of found.schedule.operations)
          expect(startNow.get(o.operation)).toBeLessThanOrEqual(o.start);
      }),
      { numRuns: 60 },
    );
  });

  it('two shears take nothing that was given to the other', () => {
    fc.assert(
      fc.property(someShop, ({ shop: alone }) => {
        const all = alone.queue[0]!.operations;
        const onS2 = all.filter((_, i) => i % 3 === 1);
        const shop: Shop = {
          ...alone,
          machine: [...alone.machine, aShear({ id: 'S2' })],
          queue: [
            aQueue({ operations: all.filter((id) => !onS2.includes(id)) }),
            aQueue({ id: 'S2', operations: onS2 }),
          ],
        };
        const plan = planOf(shop);
        fc.pre(metalMissing(shop, plan, NOW).every(({ is }) => is !== 'missing'));
        expect(check(plan.problem, plan.schedule)).toEqual([]);
        expect(tooEarly(shop, plan)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});
