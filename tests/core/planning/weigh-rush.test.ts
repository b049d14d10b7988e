import { describe, expect, it } from 'vitest';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { weighRush } from '../../../core/planning/weigh-rush.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aShop, at, NOW, someSettings } from '../../support/builders.ts';

/** Two planned lines in front, and a rush that came in behind them. */
function withRush(frozenHours: number): Shop {
  const orders = ['1042', '1043', '1050'];
  const shop = aShop({
    settings: someSettings({ frozenHours }),
    order: orders.map((id) =>
      anOrder({ id, rush: id === '1050', due: at(id === '1050' ? '2026-11-30' : '2026-12-04') }),
    ),
    line: orders.map((orderId) => aLine({ orderId, quantity: 40 })),
    queue: [],
    pin: [],
    record: [],
  });
  const made = toProblem(shop, NOW);
  if (!made.ok) throw new Error('the shop cannot be planned');
  const planned = (id: string) => made.value.queues[id]!.filter((operation) => !operation.startsWith('1050'));
  return {
    ...shop,
    queue: shop.machine.map(({ id }) => aQueue({ id, operations: planned(id) })),
  };
}

const weighed = (frozenHours: number, intoFrozen: boolean) => {
  const read = weighRush(withRush(frozenHours), NOW, ['1050/1'], intoFrozen);
  if (!read.ok) throw new Error(read.issues.map(({ message }) => message).join());
  return read.value;
};

describe('a rush and the frozen window', () => {
  it('names the window where it holds the rush back, and how soon it would be ready without', () => {
    const { ways, frozen } = weighed(200, false);
    expect(frozen).toMatchObject({ hours: 200, operations: 4 });
    expect(frozen!.ready).toBeLessThan(ways[0]!.ready);
  });

  it('plans into it when that is asked for, and the rush is ready as was said', () => {
    const { frozen } = weighed(200, false);
    const into = weighed(200, true);
    expect(into.ways[0]!.ready).toBe(frozen!.ready);
    expect(into.frozen).toEqual(frozen);
  });

  it('says nothing of a window that holds nothing, or is none', () => {
    expect(weighed(0, false).frozen).toBeNull();
    expect(weighed(0, true).frozen).toBeNull();
  });
});
