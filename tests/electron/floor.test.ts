import { expect, it } from 'vitest';
import { editService } from '../../electron/service/edit.ts';
import { readShop } from '../../electron/service/shop.ts';
import { aLine, anOrder, aShop, NOW } from '../support/builders.ts';
import { fixedClock, keptPushes, refusalOf, storeWith } from './support.ts';

function start() {
  const store = storeWith(aShop({ order: [anOrder()], line: [aLine()] }));
  const pushes = keptPushes();
  const edit = editService(store, fixedClock(), pushes);
  return { edit, pushes, shop: () => store.run('read', readShop) };
}

const startAt = (at: number) => ({
  do: 'floor.start' as const,
  operation: '1042/1:shear',
  machineId: 'S1',
  at,
  changeoverSeconds: null,
});

it('what is still to come cannot be reported', () => {
  const { edit, shop } = start();
  expect(refusalOf(() => edit.apply(startAt(NOW + 60))).message).toMatch(
    /still to come. Nothing was recorded/,
  );
  expect(shop().record).toEqual([]);
});

it('an operation done leaves the shop’s open records, and undoing brings it back under way', () => {
  const { edit, pushes, shop } = start();
  edit.apply(startAt(NOW));
  expect(shop().record).toMatchObject([{ id: '1042/1:shear', end: null, pauses: [] }]);
  edit.apply({ do: 'floor.done', operation: '1042/1:shear', at: NOW, good: 18, scrapped: 2 });
  expect(shop().line.map((l) => [l.id, l.makeUpFor])).toEqual([
    ['1042/1', null],
    ['1042/2', '1042/1'],
  ]);
  expect(pushes.sent.at(-1)).toEqual({ kind: 'changed', rows: ['record', 'machine', 'line'] });
  expect(edit.undo()).toBe('Finish 1042/1 shearing: 18 good, 2 scrapped');
  expect(shop().line.map((l) => l.id)).toEqual(['1042/1']);
  expect(shop().record).toMatchObject([{ id: '1042/1:shear', end: null, good: 0 }]);
});

it('work under way stays in sight when its line is cancelled', () => {
  const { edit, shop } = start();
  edit.apply(startAt(NOW));
  edit.apply({ do: 'line.save', line: { ...aLine(), status: 'cancelled' } });
  expect(shop().record).toMatchObject([{ id: '1042/1:shear', end: null }]);
  edit.apply({ do: 'floor.done', operation: '1042/1:shear', at: NOW, good: 20, scrapped: 0 });
  expect(shop().record).toMatchObject([{ id: '1042/1:shear', end: NOW }]);
});

it('a start given afterwards does not reach into work of a line that is done', () => {
  const { edit } = start();
  const hoursAgo = (hours: number) => NOW - hours * 3600;
  const done = (stage: 'shear' | 'brake', at: number) =>
    edit.apply({ do: 'floor.done', operation: `1042/1:${stage}`, at, good: 20, scrapped: 0 });
  const bend = (operation: string, at: number) =>
    edit.apply({ do: 'floor.start', operation, machineId: 'B1', at, changeoverSeconds: null });
  edit.apply({ do: 'order.save', order: anOrder({ id: '1043' }), lines: [aLine({ orderId: '1043' })] });
  edit.apply(startAt(hoursAgo(9)));
  done('shear', hoursAgo(8));
  edit.apply({ ...startAt(hoursAgo(8)), operation: '1043/1:shear' });
  edit.apply({ do: 'floor.done', operation: '1043/1:shear', at: hoursAgo(7), good: 20, scrapped: 0 });
  bend('1042/1:brake', hoursAgo(6));
  done('brake', hoursAgo(2));
  expect(refusalOf(() => bend('1043/1:brake', hoursAgo(3))).message).toMatch(
    /B1 was at work on 1042\/1 bending until/,
  );
  expect(bend('1043/1:brake', hoursAgo(2)).label).toBe('Start 1043/1 bending on B1');
  expect(edit.undo()).toBe('Start 1043/1 bending on B1');
});
