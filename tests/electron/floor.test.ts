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
  expect(shop().record).toEqual([]);
});
