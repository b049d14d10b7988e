import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { promisesOf } from '../../../core/report/promises.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { instant } from '../../../core/units/brand.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { aLine, anOrder, aQueue, aShop, at } from '../../support/builders.ts';
import type { Shop } from '../../../core/shop/state.ts';

const NOW = instant(Date.parse('2026-11-30T12:10:00Z') / 1000);
const shop = loadDemo(join(import.meta.dirname, '../../../demo-data/shop'), NOW);
const view = viewPlan(shop, NOW);
if (!view.ok) throw new Error(view.issues[0]?.message);
const { problem, schedule } = view.value;

const asked = (of: Shop, orderId: string, quantity?: number) => {
  const order = of.order.find(({ id }) => id === orderId)!;
  const lines = of.line
    .filter((line) => line.orderId === orderId && line.status === 'open')
    .map((line) => ({ ...line, quantity: quantity ?? line.quantity }));
  const found = promisesOf(of, order, lines, NOW);
  if (!found.ok) throw new Error(found.issues[0]?.message);
  return [...found.value];
};
/** Some orders whose lines nobody has begun. */
const orders = shop.order
  .filter(({ id, status }) => status === 'open' && !shop.record.some((r) => r.id.startsWith(`${id}/`)))
  .map(({ id }) => id)
  .filter((_, k) => k % 9 === 0);

const answers = orders.flatMap((id) => asked(shop, id));

describe('the date promised for a line that is in the plan already', () => {
  it('is never later than the plan says itself: it may stay where it is', () => {
    expect(answers.length).toBeGreaterThan(5);
    for (const { lineId, safe } of answers)
      expect(safe?.end ?? Infinity, lineId).toBeLessThanOrEqual(schedule.ends[lineId]!);
  });

  it('comes with a plan that keeps it and every rule', () => {
    for (const { lineId, safe } of answers) {
      const made = decode(problem, safe!.queues);
      if (!made.ok) throw new Error(made.issues[0]?.message);
      expect(check(problem, made.value)).toEqual([]);
      expect(made.value.ends[lineId]).toBe(safe!.end);
    }
  });

  it('offers only dates before it as earlier ones', () => {
    for (const { safe, earlier } of answers)
      for (const { end } of earlier) expect(end).toBeLessThan(safe!.end);
  });

  it('is not its place in the plan where what was typed makes another late there', () => {
    const flat = { partId: 'flat-strip', lengthMm: 2540 };
    const small = aShop({
      order: [anOrder({ due: at('2026-12-11') }), anOrder({ id: '1043', due: at('2026-11-30', '12:00') })],
      line: [aLine({ ...flat, quantity: 20 }), aLine({ ...flat, orderId: '1043', quantity: 20 })],
      queue: [aQueue({ operations: ['1042/1:shear', '1043/1:shear'] })],
    });
    const [short] = asked(small, '1042');
    expect(short?.safe?.queues.S1).toEqual(['1042/1:shear', '1043/1:shear']);
    const [long] = asked(small, '1042', 5000);
    expect(long?.safe?.queues.S1).toEqual(['1043/1:shear', '1042/1:shear']);
  });
});

describe('the date promised while another desk has saved the same order', () => {
  it('is that of what is typed, on top of what stands now: a question saves nothing', () => {
    const now = aShop({ order: [anOrder({ revision: 3 })], line: [aLine({ revision: 5 })] });
    const typed = promisesOf(now, anOrder({ revision: 2 }), [aLine({ revision: 4, quantity: 24 })], NOW);
    const fresh = promisesOf(now, anOrder({ revision: 3 }), [aLine({ revision: 5, quantity: 24 })], NOW);
    if (!typed.ok || !fresh.ok)
      throw new Error([typed, fresh].map((one) => !one.ok && one.issues[0]?.message).join());
    expect([...typed.value]).toEqual([...fresh.value]);
  });

  it('is that of a line too that was removed there', () => {
    const now = aShop({ order: [anOrder({ revision: 3 })], line: [aLine({ revision: 5 })] });
    const gone = aLine({ number: 2, revision: 4 });
    const typed = promisesOf(now, anOrder({ revision: 2 }), [gone], NOW);
    expect(typed.ok && [...typed.value]).toMatchObject([{ lineId: '1042/2', message: null }]);
  });
});
