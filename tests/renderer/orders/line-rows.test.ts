import { describe, expect, it } from 'vitest';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import {
  countFacets,
  endOfWeek,
  everything,
  filterLines,
  type LineFilter,
} from '../../../renderer/screens/orders/line-filter.ts';
import { lineRows } from '../../../renderer/screens/orders/line-rows.ts';
import { aLine, anOrder, aQueue, aShop, at, NOW, ZONE } from '../../support/builders.ts';

const planOf = (shop: ReturnType<typeof aShop>) => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error('the test shop cannot be planned');
  return plan.value;
};
const ids = (rows: readonly { id: string }[]) => rows.map((row) => row.id);
const weekEnd = endOfWeek(NOW, ZONE);

describe('a row of the orders table', () => {
  it('says by how much the line ends after its due date, as the plan has it', () => {
    const shop = aShop();
    const plan = planOf(shop);
    for (const row of lineRows(shop, plan)) {
      expect(row.end).toBe(plan.schedule.ends[row.id]);
      expect(row.lateness).toBe(plan.schedule.ends[row.id]! - row.order.due);
    }
  });

  it('says why its line cannot be planned, and has no end then', () => {
    const shop = aShop({ line: [aLine({ lengthMm: 9000 })], order: [anOrder()] });
    const [row] = lineRows(shop, planOf(shop));
    expect(row?.end).toBeNull();
    expect(row?.trouble).toMatch(/9000|does not fit|longer/);
    expect(row?.notQueued).toBe(false);
  });

  it('is not queued yet until a stored queue names its line', () => {
    const shop = aShop({ queue: [aQueue({ operations: ['1042/1:shear'] })] });
    const rows = lineRows(shop, planOf(shop));
    expect(rows.filter((row) => row.notQueued).map((row) => row.id)).toEqual(['1042/2', '1043/1']);
  });

  it('has its line’s own terms, and is found by either note', () => {
    const due = at('2026-11-30', '07:30');
    const shop = aShop({
      order: [anOrder({ note: 'Deliver to the yard' })],
      line: [aLine({ due, note: 'Film side out' }), aLine({ number: 2 })],
    });
    const plan = planOf(shop);
    const [own, usual] = lineRows(shop, plan);
    expect(own).toMatchObject({ terms: { due }, lateness: plan.schedule.ends['1042/1']! - due });
    expect(usual!.terms.due).toBe(shop.order[0]!.due);
    const found = (text: string) => ids(filterLines(lineRows(shop, plan), { ...everything, text }, weekEnd));
    expect(found('film')).toEqual(['1042/1']);
    expect(found('yard')).toEqual(['1042/1', '1042/2']);
  });

  it('is held, done or cancelled when either its order or its line is', () => {
    const shop = aShop({
      order: [anOrder({ status: 'held' }), anOrder({ id: '1043', status: 'cancelled' })],
      line: [aLine(), aLine({ number: 2, status: 'done' }), aLine({ orderId: '1043' })],
    });
    expect(lineRows(shop, null).map((row) => row.current)).toEqual(['held', 'done', 'cancelled']);
  });
});

describe('the filter of the orders table', () => {
  const shop = aShop({
    order: [
      anOrder({ due: at('2026-11-25') }),
      anOrder({ id: '1043', customer: 'Copper Kettle Eaves', due: at('2026-12-08'), rush: true }),
      anOrder({ id: '1044', due: at('2026-12-02'), status: 'done' }),
    ],
    line: [
      aLine(),
      aLine({ number: 2, gauge: '26' }),
      aLine({ orderId: '1043', colourId: 'bone' }),
      aLine({ orderId: '1044' }),
    ],
  });
  const rows = lineRows(shop, planOf(shop));
  const shown = (patch: Partial<LineFilter>) => ids(filterLines(rows, { ...everything, ...patch }, weekEnd));

  it('shows open lines only, until done and cancelled ones are asked for', () => {
    expect(shown({})).toEqual(['1042/1', '1042/2', '1043/1']);
    expect(shown({ on: ['closed'] })).toEqual(['1042/1', '1042/2', '1043/1', '1044/1']);
  });

  it('finds lines by every word, wherever it stands', () => {
    expect(shown({ text: 'kettle BONE' })).toEqual(['1043/1']);
    expect(shown({ text: 'kettle moss' })).toEqual([]);
  });

  it('keeps lines that fit all that is switched on', () => {
    expect(shown({ on: ['late'] })).toEqual(['1042/1', '1042/2']);
    expect(shown({ on: ['late', 'rush'] })).toEqual([]);
    expect(shown({ on: ['rush'] })).toEqual(['1043/1']);
    expect(shown({ colourId: 'moss', gauge: '26' })).toEqual(['1042/2']);
  });

  it('counts what is overdue as due this week, and nothing of next Monday', () => {
    expect(shown({ on: ['thisWeek'] })).toEqual(['1042/1', '1042/2']);
    expect(weekEnd).toBe(at('2026-12-07', '00:00'));
  });

  it('tells before a click how many lines each switch would show', () => {
    const counts = countFacets(rows, weekEnd);
    expect(counts).toEqual({ late: 2, rush: 1, unplannable: 0, notQueued: 3, thisWeek: 2, closed: 1 });
  });
});
