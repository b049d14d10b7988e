import { describe, expect, it } from 'vitest';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Command } from '../../../core/edit/command.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShop, NOW, someSettings } from '../../support/builders.ts';
import { aMove, after, issuesOf, madeFrom, refusalOf } from '../../support/edits.ts';

/** Two desks read the same shop; one acts first, the other on what it read. */

const lines = ['1042', '1043', '1044'].map((orderId) => aLine({ orderId, partId: 'flat-strip' }));
const [A, B, C] = ['1042/1:shear', '1043/1:shear', '1044/1:shear'] as const;
const read = aShop({
  settings: someSettings({ publishing: 'byHand' }),
  order: lines.map(({ orderId }) => anOrder({ id: orderId })),
  line: lines,
  queue: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
  published: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
});
const move = (shop: Shop, operation: string, position: number) =>
  madeFrom(shop, aMove(operation, 'S1', position));
const replace = (shop: Shop) => {
  const queues = completeQueues(shop, operationsOf(shop).operations);
  return madeFrom(shop, { do: 'plan.replace', queues, label: 'Plan the week' });
};
const pin = (shop: Shop, operation: string) =>
  madeFrom(shop, { do: 'operation.pin', operations: [operation] });
const unpin = (shop: Shop, operation: string) =>
  madeFrom(shop, { do: 'operation.unpin', operations: [operation] });
const goBack = (shop: Shop) =>
  madeFrom(shop, { do: 'plan.goBack', name: '“Calm”', queues: { S1: [B, A, C] }, pins: [] });
const publish = (shop: Shop) => madeFrom(shop, { do: 'plan.publish', note: '' });
const changedMeanwhile = /The queue of Shear was changed meanwhile/;

describe('a queue that someone else put in another order meanwhile', () => {
  const pinned = { ...read, pin: [{ id: A, revision: 1 }] };
  const moved = after(pinned, move(pinned, C, 0));

  it.each([
    ['a move', move(read, B, 0)],
    ['a whole plan', replace(read)],
    ['publishing', publish(read)],
    ['a pin', pin(read, B)],
    ['taking a pin away', unpin(pinned, A)],
    ['going back to a kept plan', goBack(read)],
  ])('refuses %s that was made from the order before', (_, command) => {
    expect(refusalOf(moved, command)).toMatch(changedMeanwhile);
    expect(issuesOf(moved, command)[0]?.conflict).toEqual({
      ...{ kind: 'queue', id: 'S1', mine: null },
      theirs: moved.queue.find(({ id }) => id === 'S1'),
    });
  });

  it('takes the same once it is done again on what stands', () => {
    expect(refusalOf(moved, move(read, B, 0))).toMatch(changedMeanwhile);
    const again = after(moved, move(moved, B, 0));
    expect(again.queue.find(({ id }) => id === 'S1')?.operations).toEqual([B, C, A]);
    const kept = after(again, pin(again, B), unpin(again, A));
    expect(kept.pin.map(({ id }) => id)).toEqual([B]);
    expect(after(kept, goBack(kept)).queue.find(({ id }) => id === 'S1')?.operations).toEqual([B, A, C]);
  });
});

it('what the floor reports and what comes in do not refuse a move', () => {
  const start = {
    do: 'floor.start',
    operation: A,
    machineId: 'S1',
    at: NOW,
    changeoverSeconds: null,
  } as const;
  const started = after(read, start);
  const more = after(started, {
    do: 'order.save',
    order: anOrder({ id: '1045', revision: 0 }),
    lines: [aLine({ orderId: '1045', partId: 'flat-strip', revision: 0 })],
    removed: [],
    at: NOW,
  });
  const moved = after(more, move(read, C, 1));
  expect(moved.queue.find(({ id }) => id === 'S1')?.operations.slice(0, 3)).toEqual([A, C, B]);
});

it('a move asks only the queues that it moves between, a pin only its own', () => {
  const brakeLater = {
    ...read,
    queue: [...read.queue, { id: 'B1', operations: [], revision: 7 }],
  };
  expect(() => after(brakeLater, move(read, C, 1))).not.toThrow();
  expect(() => after(brakeLater, pin(read, C))).not.toThrow();
});

describe('what someone else changed meanwhile is not removed', () => {
  const orderGone = { do: 'order.remove', orderId: '1042' } as const;
  const quantity = after(read, { do: 'line.save', line: { ...read.line[0]!, quantity: 99 } });

  it('an order with a line that was changed, in both versions', () => {
    const [issue] = issuesOf(quantity, madeFrom(read, orderGone));
    expect(issue?.message).toBe('The line 1042/1 was changed meanwhile.');
    expect(issue?.conflict).toMatchObject({ kind: 'line', id: '1042/1', theirs: { quantity: 99 } });
    expect(after(quantity, orderGone).order.map(({ id }) => id)).not.toContain('1042');
  });

  it('an order with a line that was added', () => {
    const added = after(read, {
      do: 'line.save',
      line: aLine({ orderId: '1042', number: 2, partId: 'flat-strip', revision: 0 }),
    });
    expect(refusalOf(added, madeFrom(read, orderGone))).toMatch(/line 1042\/2 was added meanwhile/);
  });

  it('a line', () => {
    const two = after(read, {
      do: 'line.save',
      line: aLine({ orderId: '1042', number: 2, partId: 'flat-strip', revision: 0 }),
    });
    const line = two.line.find(({ id }) => id === '1042/2')!;
    const changed = after(two, { do: 'line.save', line: { ...line, quantity: 3 } });
    const remove: Command = { do: 'line.remove', lineId: line.id, revision: line.revision };
    expect(refusalOf(changed, remove)).toMatch(/line 1042\/2 was changed meanwhile/);
    expect(after(two, remove).line.map(({ id }) => id)).not.toContain('1042/2');
  });

  it('a row of the shop', () => {
    const colour = read.colour.at(-1)!;
    const changed = after(read, { do: 'row.save', kind: 'colour', row: { ...colour, name: 'Other' } });
    const remove: Command = { do: 'row.remove', kind: 'colour', id: colour.id, revision: colour.revision };
    expect(refusalOf(changed, remove)).toMatch(/was changed meanwhile/);
  });
});
