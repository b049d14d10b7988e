import { describe, expect, it } from 'vitest';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { toSearchProblem } from '../../../core/planning/to-problem.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aShop, NOW, someSettings } from '../../support/builders.ts';

const orders = ['1042', '1043', '1044'];
const A = '1042/1:shear';
const B = '1043/1:shear';
const C = '1044/1:shear';
const published = [A, B, C];

/** Three flat lines on the shear, and a queue for them. */
const queued = (operations: string[], own: Partial<Shop> = {}): Shop =>
  aShop({
    settings: someSettings({ publishing: 'byHand' }),
    order: orders.map((id) => anOrder({ id })),
    line: orders.map((orderId) => aLine({ orderId, partId: 'flat-strip' })),
    queue: [aQueue({ operations })],
    published: [{ id: 'S1', operations: published, revision: 1 }],
    ...own,
  });

const always = { settings: someSettings({ publishing: 'always' }), published: [] };

function measuredFrom(shop: Shop) {
  const asked = toSearchProblem(shop, NOW);
  if (!asked.ok) throw new Error(asked.issues[0]?.message);
  return asked.value.problem.input.reference;
}

function endsOf(shop: Shop) {
  const view = viewPlan(shop, NOW);
  return view.ok ? view.value.schedule.ends : {};
}

describe('stability is measured', () => {
  it('from the plan published last, however the draft was changed since', () => {
    const told = endsOf(queued(published));
    expect(endsOf(queued([C, A, B]))).not.toEqual(told);
    expect(measuredFrom(queued([C, A, B]))).toEqual(told);
  });

  it('of no line that was not published yet', () => {
    const drafted = queued([C, A, B], { published: [{ id: 'S1', operations: [A, B], revision: 1 }] });
    expect(Object.keys(measuredFrom(drafted) ?? {})).toEqual(['1042/1', '1043/1']);
    expect(measuredFrom(drafted)).toEqual(
      measuredFrom(queued([A, B, C], { ...always, queue: [aQueue({ operations: [A, B] })] })),
    );
  });

  it('from the plan as it is where every change is published at once', () => {
    const moved = queued([C, A, B], always);
    expect(measuredFrom(moved)).toEqual(endsOf(moved));
  });
});
