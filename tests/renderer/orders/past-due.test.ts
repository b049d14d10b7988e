import { describe, expect, it } from 'vitest';
import { entriesOf } from '../../../renderer/screens/orders/order-entries.ts';
import { notAsked, pastDues } from '../../../renderer/screens/orders/past-due.ts';
import { aShop, at, NOW } from '../../support/builders.ts';

const shop = aShop();
const current = entriesOf(shop, '1042')!;
const dueAt = (due: number) => ({ ...current, order: { ...current.order, due } });
const yesterday = at('2020-01-06', '17:00');
const words = 'Mon 6 Jan 2020 17:00 is past. Change it, or save once more if it is meant so.';

describe('a due date that is past', () => {
  it('is asked about when it was typed, for the order and for a line of its own', () => {
    expect(pastDues(shop, current, dueAt(yesterday), NOW)).toEqual({ 'order.due': words });
    const [line, ...others] = current.lines;
    const own = { ...current, lines: [{ ...line!, due: yesterday }, ...others] };
    expect(pastDues(shop, current, own, NOW)).toEqual({ 'lines.0.due': words });
  });

  it('is no news where it stood already, and not where it is to come', () => {
    expect(pastDues(shop, dueAt(yesterday), dueAt(yesterday), NOW)).toEqual({});
    expect(pastDues(shop, current, dueAt(NOW + 3600), NOW)).toEqual({});
    expect(pastDues(shop, current, dueAt(NaN), NOW)).toEqual({});
  });

  it('is asked about once: saved again in the same words it is meant so', () => {
    const past = pastDues(shop, current, dueAt(yesterday), NOW);
    expect(notAsked(past, {})).toEqual(past);
    expect(notAsked(past, past)).toEqual({});
    expect(notAsked(pastDues(shop, current, dueAt(yesterday - 86_400), NOW), past)).not.toEqual({});
  });
});
