import { viewPlan, type PlanView } from '../../../core/planning/plan-view.ts';
import { lanesOf, type Bar, type Lane } from '../../../renderer/gantt/lanes.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import {
  aBrake,
  aColour,
  aLine,
  anOrder,
  aQueue,
  aShear,
  aSheet,
  aShop,
  NOW,
} from '../../support/builders.ts';

/**
 * One shear and two brakes; lines 1 and 2 in moss, line 3 in bone. Everything is sheared in that order; the first brake
 * bends 1 and 3, the second, shorter one bends 2.
 */
export function aBoardShop(own: Partial<Shop> = {}): Shop {
  return aShop({
    machine: [aBrake(), aBrake({ id: 'B2', name: 'Short brake', maxLengthMm: 2600 }), aShear()],
    colour: [aColour(), aColour({ id: 'bone', name: 'Bone', hex: '#dfd5c2' })],
    sheet: [aSheet(), aSheet({ id: 'galv-24-bone', colourId: 'bone' })],
    order: [anOrder()],
    line: [aLine(), aLine({ number: 2 }), aLine({ number: 3, colourId: 'bone' })],
    queue: [
      aQueue({ id: 'S1', operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] }),
      aQueue({ id: 'B1', operations: ['1042/1:brake', '1042/3:brake'] }),
      aQueue({ id: 'B2', operations: ['1042/2:brake'] }),
    ],
    pin: [],
    record: [],
    ...own,
  });
}

export function planOf(shop: Shop, now: Instant = NOW): PlanView {
  const plan = viewPlan(shop, now);
  if (!plan.ok) throw new Error(plan.issues.map((p) => p.message).join(' '));
  return plan.value;
}

export function aBoard(own: Partial<Shop> = {}): { shop: Shop; plan: PlanView; lanes: Lane[] } {
  const shop = aBoardShop(own);
  const plan = planOf(shop);
  return { shop, plan, lanes: lanesOf(shop, plan) };
}

export function barOf(lanes: readonly Lane[], operation: string): Bar {
  const bar = lanes.flatMap((lane) => lane.bars).find((one) => one.operation === operation);
  if (!bar) throw new Error(`${operation} is not on the board`);
  return bar;
}
