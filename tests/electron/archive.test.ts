import { expect, it } from 'vitest';
import { instant } from '../../core/units/brand.ts';
import { archiveService } from '../../electron/service/archive.ts';
import { aLine, anOrder, aRecord, aShop, NOW } from '../support/builders.ts';
import { editorOf, fixedClock, refusalOf, storeWith } from './support.ts';

const DAY = 86_400;
const ago = (days: number) => instant(NOW - days * DAY);

/** Orders closed `10`, `11` … days ago, named 100, 101 …, beside an open one and one closed yesterday. */
function anArchive(count: number) {
  const old = Array.from({ length: count }, (_, i) =>
    anOrder({
      id: String(100 + i),
      customer: i % 2 ? 'Northfield Sheds' : 'Example 50% Off',
      status: i === 3 ? 'cancelled' : 'done',
      closedAt: ago(10 + Math.floor(i / 2)),
    }),
  );
  const yesterday = anOrder({ id: '900', status: 'done', closedAt: ago(1) });
  const shop = aShop({
    order: [anOrder(), yesterday, ...old],
    line: [anOrder(), yesterday, ...old].map(({ id }) => aLine({ orderId: id, quantity: 20 })),
    record: ['shear', 'pack'].map((step, k) =>
      aRecord({ id: `101/1:${step}`, start: instant(ago(12) + k), end: instant(ago(12) + 600 + k) }),
    ),
  });
  return archiveService(storeWith(shop), fixedClock());
}
const idsOf = ({ orders }: ReturnType<ReturnType<typeof anArchive>['search']>) =>
  orders.map(({ order }) => order.id);

it('pages give every order closed long ago once, the newest first, none that is still in the shop', () => {
  const archive = anArchive(7);
  const first = archive.search('', null, 3);
  const second = archive.search('', first.before, 3);
  const third = archive.search('', second.before, 3);
  expect([first, second, third].map(idsOf)).toEqual([['101', '100', '103'], ['102', '105', '104'], ['106']]);
  expect(third.before).toBeNull();
  expect(first.orders[0]).toMatchObject({ lines: 1, pieces: 20 });
});

it('an order is found by its number, its customer, and the name or code of a part', () => {
  const archive = anArchive(4);
  expect(idsOf(archive.search('102', null, 50))).toEqual(['102']);
  expect(idsOf(archive.search('northfield', null, 50))).toEqual(['101', '103']);
  expect(idsOf(archive.search(' corner ', null, 50))).toHaveLength(4);
  expect(idsOf(archive.search('no such thing', null, 50))).toEqual([]);
});

it('customers of all orders are known by name, who ordered last first; nobody at the counter', () => {
  const shop = aShop({
    order: [
      anOrder({ customer: 'Quarry Eaves', due: ago(30), status: 'done', closedAt: ago(30) }),
      anOrder({ id: '1043', customer: 'Quarry Eaves', due: ago(-2) }),
      anOrder({ id: '1044', customer: 'Eaves & Sons', due: ago(20), status: 'done', closedAt: ago(20) }),
      anOrder({ id: '1045', customer: 'Northfield Sheds', due: ago(-1) }),
      anOrder({ id: 'walk-in-7', customer: 'Walk-in, eaves', due: ago(0) }),
    ],
    line: [],
  });
  const archive = archiveService(storeWith(shop), fixedClock());
  expect(archive.customers()).toEqual(['Quarry Eaves', 'Northfield Sheds', 'Eaves & Sons']);
});

it('a percent sign is looked for as it is', () => {
  expect(idsOf(anArchive(4).search('50%', null, 50))).toEqual(['100', '102']);
  expect(idsOf(anArchive(4).search('5_%', null, 50))).toEqual([]);
});

it('an order opens with its lines, its records and what the floor reported', () => {
  const store = storeWith(aShop({ order: [anOrder()], line: [aLine()] }));
  editorOf(store).apply(
    { do: 'floor.start', operation: '1042/1:shear', machineId: 'S1', at: NOW } as never,
    'floor S1',
  );
  const found = archiveService(store, fixedClock()).order('1042');
  expect(found).toMatchObject({
    order: { id: '1042' },
    lines: [{ id: '1042/1' }],
    records: [{ id: '1042/1:shear' }],
    reported: [{ at: NOW, by: 'floor S1', label: 'Start 1042/1 shearing on S1' }],
  });
});

it('an order of long ago opens with its further steps too', () => {
  expect(
    anArchive(2)
      .order('101')
      .records.map(({ id }) => id),
  ).toEqual(['101/1:shear', '101/1:pack']);
});

it('a number that no order has is refused with a sentence', () => {
  expect(refusalOf(() => anArchive(1).order('7777')).message).toMatch(/There is no work order 7777/);
});
