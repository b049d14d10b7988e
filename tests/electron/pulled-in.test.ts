import { expect, it } from 'vitest';
import { pullingIn } from '../../electron/service/pulled-in.ts';
import { demoShop, monday } from '../core/demo-data/demo-shop.ts';

it('due dates pulled in follow a machine that turns out to have stood still, also in a process that was asked before', () => {
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
  const asked = pullingIn();
  const before = asked(0.9, shop, records, monday);
  const after = asked(0.9, later, records, monday);
  expect(after).not.toEqual(before);
  expect(after).toEqual(pullingIn()(0.9, later, records, monday));
});
