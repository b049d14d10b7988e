import { describe, expect, it } from 'vitest';
import { cutListOf } from '../../../core/edit/cutting-steps.ts';
import { standard } from '../../../core/estimate/standards.ts';
import { cutRuns } from '../../../core/planning/cut-run.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aShop, at, NOW } from '../../support/builders.ts';

/** Strips of 150 mm in one run: 16 due soon, 8 later, and corners of 24 gauge in bone. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });
const shop = aShop({
  order: [anOrder({ due: at('2026-12-01') }), anOrder({ id: '1043', due: at('2026-12-08') })],
  line: [
    flat({ number: 1, quantity: 16 }),
    flat({ orderId: '1043', number: 1, quantity: 8, lengthMm: 2000 }),
    flat({ orderId: '1043', number: 2, quantity: 8, colourId: 'bone' }),
  ],
  queue: [aQueue({ operations: ['1042/1:shear', '1043/1:shear', '1043/2:shear'] })],
});
const planOf = (of: Shop) => {
  const plan = viewPlan(of, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
/** The list as planned for the first run, kept. */
function kept() {
  const [cut] = [...cutRuns(shop, planOf(shop))];
  if (!cut?.plan.ok) throw new Error('not planned');
  const { groups, steps, counts } = cut.plan.value;
  const list = cutListOf(cut.run.id, ['1042/1', '1043/1'], groups, steps, 0);
  return { list, counts };
}
const withList = (list: Shop['cutList'][number]): Shop => ({ ...shop, cutList: [list] });
const timeOf = (of: Shop, id: string) => planOf(of).operations.get(id)!.machines[0]!;

describe('the time of shearing', () => {
  it('is the estimate of the line alone where no list is kept', () => {
    const labels = timeOf(shop, '1042/1:shear').estimate.reasons.map(({ label }) => label);
    expect(labels).toContain('feed and cut');
    expect(planOf(shop).operations.get('1042/1:shear')?.lotShare).toBeNull();
  });

  it('is that of the kept list: loads, moves, strokes and stacking of its lines add up to what the list counts', () => {
    const { list, counts } = kept();
    const machine = shop.machine.find((m) => m.id === 'S1')!;
    const each = (key: string) => standard(machine, key);
    const reasons = ['1042/1:shear', '1043/1:shear'].flatMap(
      (id) => timeOf(withList(list), id).estimate.reasons,
    );
    const count = (label: string) =>
      reasons.filter((r) => r.label === label).reduce((sum, r) => sum + r.count, 0);
    expect(count('load and square a sheet')).toBeCloseTo(counts.sheets, 9);
    expect(count('feed a panel or strip again')).toBeCloseTo(counts.feedsAgain, 9);
    expect(count('move the back gauge')).toBeCloseTo(counts.backGaugeMoves, 9);
    expect(count('feed and cut, single strokes')).toBeCloseTo(counts.singleStrokes, 9);
    expect(count('stack a blank')).toBe(24);
    const work =
      counts.sheets * each('sheetLoad') +
      counts.feedsAgain * each('feedAgain') +
      counts.backGaugeMoves * each('backGaugeMove') +
      counts.singleStrokes * each('cut') +
      24 * each('stack') +
      2 * each('bundle');
    const total = ['1042/1:shear', '1043/1:shear'].reduce(
      (sum, id) => sum + timeOf(withList(list), id).seconds,
      0,
    );
    // Each element of each line is rounded to the second.
    expect(Math.abs(total - work * (1 + each('allowance')))).toBeLessThan(10);
  });

  it('lets the brake have the first lot when the steps have cut it: sooner where a line is cut first', () => {
    const { list } = kept();
    const half: Shop = { ...withList(list), settings: { ...shop.settings, transferShare: 0.5 } };
    const share = (of: Shop) => planOf(of).operations.get('1042/1:shear')!.lotShare!;
    expect(share(half)).toBeGreaterThan(0);
    expect(share(half)).toBeLessThan(share(withList(list)));
    const input = planOf(half).problem.input.jobs.find((j) => j.id === '1042/1')!.operations[0]!;
    expect(input.transferShare).toBe(share(half));
  });

  it('is the estimate again when a line of the list waits in another run, or asks for more than the list cuts', () => {
    const { list } = kept();
    const apart = {
      ...withList(list),
      queue: [aQueue({ operations: shop.queue[0]!.operations.toReversed() })],
    };
    const between = [
      apart.queue[0]!.operations[1]!,
      apart.queue[0]!.operations[0]!,
      apart.queue[0]!.operations[2]!,
    ];
    expect(
      planOf({ ...apart, queue: [aQueue({ operations: between })] }).operations.get('1042/1:shear')?.lotShare,
    ).toBeNull();
    const more = { ...withList(list), line: shop.line.map((l) => ({ ...l, quantity: l.quantity + 1 })) };
    expect(planOf(more).operations.get('1042/1:shear')?.lotShare).toBeNull();
  });

  it('leaves all other work as it was', () => {
    const { list } = kept();
    expect(timeOf(withList(list), '1043/2:shear')).toEqual(timeOf(shop, '1043/2:shear'));
  });

  it('grows with the weight of the sheets where the shop says so, and strokes run on only where it allows it', () => {
    const { list } = kept();
    const set = (standards: Record<string, number>): Shop => ({
      ...withList(list),
      machine: shop.machine.map((m) => (m.id === 'S1' ? { ...m, standards } : m)),
    });
    const plain = timeOf(set({}), '1042/1:shear').seconds;
    expect(timeOf(set({ sheetLoadPerKg: 2 }), '1042/1:shear').seconds).toBeGreaterThan(plain);
    const free = cutRuns(set({ continuousFrom: 4 }), planOf(shop)).next().value!;
    const never = cutRuns(set({}), planOf(shop)).next().value!;
    expect(never.plan.ok && never.plan.value.counts.continuousStrokes).toBe(0);
    expect(free.input.shear.continuousFrom).toBe(4);
  });
});
