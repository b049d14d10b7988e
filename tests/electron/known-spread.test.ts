import { expect, it } from 'vitest';
import { knownSpread } from '../../electron/solver/known-spread.ts';
import { demoShop } from '../core/demo-data/demo-shop.ts';

it('what finished work says follows a machine that turns out to have stood still, also in a process that was asked before', () => {
  const shop = demoShop();
  const records = shop.record.toSorted((a, b) => b.start - a.start).slice(0, 300);
  const [from, to] = [records.at(-1)!.start, records[0]!.start];
  const days = Array.from({ length: Math.floor((to - from) / 86_400) }, (_, day) => from + day * 86_400);
  // Half of each day: work then took less of the open hours than it seemed.
  const downtime = days.map((day, k) => ({
    ...{ id: `still-${k}`, machineId: 'B1', reason: 'Stood still', revision: 0 },
    ...{ from: day, to: day + 43_200 },
  }));
  const later = { ...shop, downtime: [...shop.downtime, ...downtime] };
  const asked = knownSpread();
  const before = asked(shop, records);
  const after = asked(later, records);
  expect(after).not.toEqual(before);
  expect(after).toEqual(knownSpread()(later, records));
});
