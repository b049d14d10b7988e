import { describe, expect, it } from 'vitest';
import { weighRush } from '../../../core/planning/weigh-rush.ts';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import { promisesOf } from '../../../core/report/promises.ts';
import { whyOf } from '../../../core/report/why.ts';
import { whyWords } from '../../../core/report/why-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aQueue, aSheet, anOrder, at, NOW } from '../../support/builders.ts';
import { flat, FRIDAY, line, planOf, shopOf, startOf, THURSDAY } from '../../support/metal-shop.ts';
import { aDelivery } from '../../support/stock-builders.ts';

describe('a rush', () => {
  it('is given what is here before those that the plan gave it to, and they are said to wait', () => {
    const shop = shopOf({
      sheet: [aSheet({ onHand: 3 })],
      delivery: [aDelivery({ due: THURSDAY, pieces: 3 })],
      order: [anOrder({ due: at('2026-12-02', '15:00') })],
    });
    expect(startOf(planOf(shop), '1042/2')).toBe(THURSDAY);
    const weighed = weighRush(shop, NOW, ['1042/2']);
    if (!weighed.ok) throw new Error(weighed.issues[0]?.message);
    const front = weighed.value.ways[0]!;
    expect(front.ready).toBeLessThan(THURSDAY);
    expect(front.later.map(({ job, after }) => [job, after > THURSDAY])).toEqual([['1042/1', true]]);
    // As told, so it is once it is taken.
    const queue = Object.entries(front.queues).map(([id, operations]) => aQueue({ id, operations }));
    const taken = planOf({ ...shop, queue });
    expect(taken.schedule.ends['1042/2']).toBe(front.ready);
    expect(taken.schedule.ends['1042/1']).toBe(front.later[0]!.after);
  });
});

describe('a date that can be promised', () => {
  it('counts on metal only when it comes, behind those who have what is here', () => {
    const shop = shopOf({ line: [line[0]!], delivery: [aDelivery({ due: THURSDAY, pieces: 3 })] });
    const typed = anOrder({ id: '1050', due: FRIDAY });
    const found = promisesOf(shop, typed, [flat({ orderId: '1050', number: 1, quantity: 24 })], NOW);
    if (!found.ok) throw new Error(found.issues[0]?.message);
    const [promised] = [...found.value];
    expect(promised!.safe!.end).toBeGreaterThan(THURSDAY);
    expect(promised!.earlier).toEqual([]);
  });
});

describe('the list of the shear', () => {
  it('says at a line what it waits for, before what was noted', () => {
    const shop = shopOf({
      delivery: [aDelivery({ due: THURSDAY, pieces: 3 })],
      order: [anOrder({ note: 'for the north side' })],
    });
    const rows = dispatchLists(shop, planOf(shop), NOW, at('2026-12-10', '00:00'))
      .filter(({ machine }) => machine.id === 'S1')
      .flatMap(({ runs }) => runs.flatMap((run) => run.rows));
    expect(rows.map(({ notes }) => notes.length)).toEqual([1, 2]);
    expect(rows[1]!.notes[0]).toMatch(/^Waits for 3 sheets of .*, due Thu 3 Dec/);
  });
});

describe('why a line is not sooner', () => {
  const whyIn = (shop: Shop): string[] => {
    const why = whyOf(shop, '1042/2', NOW);
    if (!why.ok) throw new Error(why.issues[0]?.message);
    return whyWords(shop, why.value).causes.map(({ words }) => words);
  };

  it('is told by its delivery, unless its work order holds it back longer', () => {
    const delivery = [aDelivery({ due: THURSDAY, pieces: 3 })];
    expect(whyIn(shopOf({ delivery }))[0]).toBe(
      'Waits for 3 sheets of 24 ga Moss green, Galvanized, 48 in × 120 in, due Thu 3 Dec (delivery D1)',
    );
    const later = shopOf({ delivery, order: [anOrder({ release: FRIDAY, due: FRIDAY + 86400 })] });
    expect(whyIn(later)[0]).toMatch(/^Its work order says not before Fri/);
  });
});
