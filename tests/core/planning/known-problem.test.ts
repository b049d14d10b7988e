import { describe, expect, it } from 'vitest';
import { viewPlan, type PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBoardShop } from '../../renderer/gantt/a-board.ts';
import { NOW } from '../../support/builders.ts';
import { after, aMove } from '../../support/edits.ts';

const viewed = (shop: Shop, known?: Parameters<typeof viewPlan>[2]): PlanView => {
  const view = viewPlan(shop, NOW, known);
  if (!view.ok) throw new Error('no plan');
  return view.value;
};

describe('a plan viewed with what is known of the shop before', () => {
  const shop = aBoardShop();
  const known = { shop, now: NOW, problem: viewed(shop) };

  it('is the plan viewed anew, and takes over the problem, where only queues and pins differ', () => {
    const moved = after(shop, aMove('1042/3:shear', 'S1', 0), {
      do: 'operation.pin',
      operations: ['1042/1:shear'],
    });
    const view = viewed(moved, known);
    expect(view.problem).toBe(known.problem.problem);
    expect(view.queues.S1).toEqual(['1042/3:shear', '1042/1:shear', '1042/2:shear']);
    expect(view.schedule).toEqual(viewed(moved).schedule);
    expect(view.figures).toEqual(viewed(moved).figures);
  });

  it.each([
    ['a line', { line: shop.line.map((line) => ({ ...line, quantity: line.quantity + 1 })) }],
    ['a machine', { machine: shop.machine.map((machine) => ({ ...machine, people: 2 })) }],
  ])('is made of a new problem where %s differs', (_, changed) => {
    expect(viewed({ ...shop, ...changed }, known).problem).not.toBe(known.problem.problem);
  });

  it('is made of a new problem a minute later', () => {
    const later = viewPlan(shop, (NOW + 60) as typeof NOW, known);
    expect(later.ok && later.value.problem).not.toBe(known.problem.problem);
  });
});
