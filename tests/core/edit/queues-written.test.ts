import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBrake, aLine, anOrder, aRecord, aShear, aShop } from '../../support/builders.ts';
import { aMove, after, editOf, madeFrom } from '../../support/edits.ts';

/** Which machines' queues a change of the plan writes down: those alone that it changes. */

const orders = ['1042', '1043', '1044', '1045'];
const shearing = (order: string) => `${order}/1:shear`;
const bending = (order: string) => `${order}/1:brake`;
const shop = aShop({
  machine: [aBrake(), aBrake({ id: 'B2', name: 'Second brake' }), aShear()],
  order: orders.map((id) => anOrder({ id })),
  line: orders.map((orderId) => aLine({ orderId })),
  queue: [
    { id: 'S1', operations: orders.map(shearing), revision: 1 },
    { id: 'B1', operations: orders.slice(0, 2).map(bending), revision: 1 },
    { id: 'B2', operations: orders.slice(2).map(bending), revision: 1 },
  ],
});
/** 1042/1 is sheared and bent: no queue needs it any more, and no row was written by that. */
const finished: Shop = {
  ...shop,
  record: [aRecord(), aRecord({ id: bending('1042'), machineId: 'B1' })],
};
const arrived = after(
  finished,
  ...['1046', '1047'].map(
    (id) =>
      ({
        do: 'order.save',
        order: anOrder({ id, revision: 0 }),
        lines: [aLine({ orderId: id, revision: 0 })],
        removed: [],
        at: 0,
      }) as const,
  ),
);
const written = (before: Shop, command: Parameters<typeof editOf>[1]): string[] =>
  editOf(before, command).changes.flatMap(({ kind, id }) => (kind === 'queue' ? [id] : []));
const planOf = (of: Shop) => completeQueues(of, operationsOf(of).operations);

const move = (operation: string, machineId: string, position: number) =>
  aMove(operation, machineId, position);

describe('after work was finished', () => {
  it.each([
    ['a move inside a queue', move(shearing('1045'), 'S1', 0), ['S1']],
    ['a move to another machine', move(bending('1045'), 'B1', 0), ['B1', 'B2']],
    ['a pin', { do: 'operation.pin', operations: [bending('1045')] } as const, []],
    ['a move to where it stands', move(bending('1044'), 'B2', 0), []],
  ])('%s leaves the queues that it does not change', (_, command, machines) => {
    expect(written(finished, command)).toEqual(machines);
  });

  it('a whole plan leaves the queues that stand so already', () => {
    const queues = { ...planOf(finished), S1: ['1045', '1043', '1044'].map(shearing) };
    expect(written(finished, { do: 'plan.replace', queues, label: 'Plan the week' })).toEqual(['S1']);
  });

  it('two desks each change the queue of their own machine', () => {
    const shear = after(finished, move(shearing('1045'), 'S1', 0));
    const brake = madeFrom(finished, move(bending('1045'), 'B2', 0));
    expect(() => after(shear, brake)).not.toThrow();
  });
});

describe('after orders came in that no queue names', () => {
  it('a pin names what stands on its machine, so that nothing that comes later takes its position', () => {
    const [machineId] = Object.entries(planOf(arrived)).find(([, ids]) => ids.includes(bending('1046')))!;
    expect(written(arrived, { do: 'operation.pin', operations: [bending('1046')] })).toEqual([machineId]);
  });

  it('nothing jumps: after a move the plan is what it was but for that move', () => {
    const open = operationsOf(arrived).operations;
    fc.assert(
      fc.property(fc.constantFrom(...open), fc.nat(1), fc.nat(4), ({ id, machines }, which, at) => {
        const machineId = machines[which % machines.length]!.id;
        const before = planOf(arrived);
        const others = before[machineId]!.filter((other) => other !== id);
        const position = Math.min(at, others.length);
        const wanted = Object.fromEntries(
          Object.entries(before).map(([m, ids]) => [m, ids.filter((other) => other !== id)]),
        );
        wanted[machineId] = [...others.slice(0, position), id, ...others.slice(position)];
        expect(planOf(after(arrived, move(id, machineId, position)))).toEqual(wanted);
      }),
    );
  });

  it('a move of bending never writes the queue of the shear, nor the other way round', () => {
    expect(written(arrived, move(shearing('1047'), 'S1', 0))).toEqual(['S1']);
    for (const machineId of ['B1', 'B2'])
      expect(written(arrived, move(bending('1047'), machineId, 0))).not.toContain('S1');
  });
});
