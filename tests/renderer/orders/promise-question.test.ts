import { describe, expect, it } from 'vitest';
import { promiseQuestion } from '../../../renderer/screens/orders/promise-question.ts';
import { aLine, anOrder, NOW } from '../../support/builders.ts';

const entries = (line = aLine()) => {
  const { id, orderId, ...entry } = line;
  expect(id).toBe(`${orderId}/${line.number}`);
  return entry;
};

describe('what is asked while an order is typed', () => {
  it('is the complete open lines, whoever the customer is and whenever it is due', () => {
    const order = { ...anOrder(), customer: '', due: NaN as never };
    const lines = [
      entries(),
      entries(aLine({ number: 2, quantity: NaN })),
      entries(aLine({ number: 3, status: 'done' })),
    ];
    const asked = promiseQuestion({ order, lines }, NOW);
    expect(asked?.lines.map(({ id }) => id)).toEqual(['1042/1']);
    expect(asked?.order.due).toBeGreaterThan(NOW);
  });

  it('is nothing while no line is complete, for a held order, or for a number that cannot be one', () => {
    expect(promiseQuestion({ order: anOrder(), lines: [entries(aLine({ partId: '' }))] }, NOW)).toBeNull();
    expect(promiseQuestion({ order: anOrder({ status: 'held' }), lines: [entries()] }, NOW)).toBeNull();
    expect(promiseQuestion({ order: anOrder({ id: '' }), lines: [entries()] }, NOW)).toBeNull();
  });
});
