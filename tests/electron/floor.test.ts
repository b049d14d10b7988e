import { describe, expect, it } from 'vitest';
import { aColour, aLine, anOrder, aShop, NOW } from '../support/builders.ts';
import { madeFrom } from '../support/edits.ts';
import { refusalOf, storeWith, editorOf, shopIn } from './support.ts';

function start() {
  const store = storeWith(aShop({ order: [anOrder()], line: [aLine()] }));
  return { edit: editorOf(store), store, shop: () => shopIn(store) };
}

const startAt = (at: number) => ({
  do: 'floor.start' as const,
  operation: '1042/1:shear',
  machineId: 'S1',
  at,
  changeoverSeconds: null,
});

it('what is still to come cannot be reported; a press on a screen whose clock is ahead is now', () => {
  const { edit, shop } = start();
  expect(refusalOf(() => edit.apply({ ...startAt(NOW + 60), given: true })).message).toMatch(
    /still to come. Nothing was recorded/,
  );
  expect(shop().record).toEqual([]);
  edit.apply(startAt(NOW + 60));
  expect(shop().record[0]?.start).toBe(NOW);
});

it('an undo never takes away a line that the floor has begun', () => {
  const { edit, shop } = start();
  edit.apply(
    {
      do: 'order.save',
      order: anOrder({ id: '1050' }),
      lines: [aLine({ orderId: '1050' })],
      removed: [],
      at: NOW,
    },
    'desk',
  );
  edit.apply({ ...startAt(NOW), operation: '1050/1:shear' }, 'floor S1');
  expect(refusalOf(() => edit.undo('desk')).message).toMatch(
    /cannot be undone: nothing was changed\. Work on line 1050\/1 has started meanwhile/,
  );
  expect(shop().line.some(({ id }) => id === '1050/1')).toBe(true);
  expect(edit.history('desk').undo).toHaveLength(1);
});

it('what the floor reports is no step: nobody’s undo takes it away', () => {
  const { edit, shop } = start();
  edit.apply(madeFrom(shop(), { do: 'operation.pin', operations: ['1042/1:shear'] }), 'desk');
  const { factId, stepId } = edit.apply(startAt(NOW), 'floor S1');
  expect([stepId, typeof factId]).toEqual([null, 'number']);
  expect(edit.history('floor S1').undo).toEqual([]);
  expect(edit.undo('desk')).toBe('Pin 1042/1 shearing');
  expect(edit.undo('desk')).toBeNull();
  expect(shop().record).toMatchObject([{ id: '1042/1:shear', end: null, pauses: [] }]);
});

it('a planner’s redo outlives what the floor reports, and what another desk does', () => {
  const { edit } = start();
  const rename = (id: string) =>
    ({ do: 'row.save', kind: 'colour', row: aColour({ id, name: 'Fern' }) }) as const;
  edit.apply(rename('moss'), 'desk');
  edit.undo('desk');
  edit.apply(startAt(NOW), 'floor S1');
  edit.apply(rename('bone'), 'office');
  expect(edit.history('desk').redo).toMatchObject([{ label: 'Change colour moss' }]);
  expect(edit.redo('desk')).toBe('Change colour moss');
});

describe('what was reported by mistake', () => {
  const done = { do: 'floor.done', operation: '1042/1:shear', at: NOW, good: 18, scrapped: 2 } as const;

  it('is taken back by who pressed, within a minute: the record is as before, the log holds both', () => {
    const { edit, shop, store } = start();
    edit.apply(startAt(NOW), 'floor S1');
    const { factId } = edit.apply(done, 'floor S1');
    expect(shop().line.map((l) => [l.id, l.makeUpFor])).toEqual([
      ['1042/1', null],
      ['1042/2', '1042/1'],
    ]);
    expect(edit.takeBack(factId!, 'floor S1', '')).toBe(
      'Take back: Finish 1042/1 shearing: 18 good, 2 scrapped',
    );
    expect(shop().line.map((l) => l.id)).toEqual(['1042/1']);
    expect(shop().record).toMatchObject([{ id: '1042/1:shear', end: null, good: 0 }]);
    const log = store.run('read', ({ facts }) => facts.ofOperation('1042/1:shear'));
    expect(log.map(({ corrects, by }) => [corrects, by])).toEqual([
      [factId, 'floor S1'],
      [null, 'floor S1'],
      [null, 'floor S1'],
    ]);
  });

  it('is taken back by another, or later, only with the reason why', () => {
    const { edit, store } = start();
    const { factId } = edit.apply(startAt(NOW), 'floor S1');
    expect(refusalOf(() => edit.takeBack(factId!, 'desk', ' ')).message).toMatch(/say why it is taken back/);
    expect(edit.takeBack(factId!, 'desk', 'Wrong machine')).toMatch(/^Take back: Start/);
    const [correction] = store.run('read', ({ facts }) => facts.ofOperation('1042/1:shear'));
    expect(correction).toMatchObject({ reason: 'Wrong machine', by: 'desk', corrects: factId });
    expect(refusalOf(() => edit.takeBack(factId!, 'desk', 'Again')).message).toMatch(/taken back already/);
  });

  it('stays when something else happened on top of it', () => {
    const { edit } = start();
    const { factId } = edit.apply(startAt(NOW), 'floor S1');
    edit.apply(done, 'floor S1');
    expect(refusalOf(() => edit.takeBack(factId!, 'floor S1', 'Slip'))).toMatchObject({ code: 'conflict' });
  });
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
    edit.apply({ do: 'floor.start', operation, machineId: 'B1', at, given: true, changeoverSeconds: null });
  edit.apply({
    do: 'order.save',
    order: anOrder({ id: '1043' }),
    lines: [aLine({ orderId: '1043' })],
    removed: [],
    at: NOW,
  });
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
});

it('a correction names the report that it corrects, and keeps its reason', () => {
  const { edit, store, shop } = start();
  const { factId } = edit.apply(startAt(NOW - 60), 'floor S1');
  const patch = { start: NOW - 600 };
  const corrected = edit.apply(
    { do: 'floor.correct', operation: '1042/1:shear', at: NOW, patch, reason: 'Pressed late' },
    'desk',
  );
  const fact = store.run('read', ({ facts }) => facts.get(corrected.factId!));
  expect(fact).toMatchObject({ corrects: factId, reason: 'Pressed late', by: 'desk' });
  expect(shop().record[0]?.start).toBe(NOW - 600);
  expect(refusalOf(() => edit.takeBack(factId!, 'floor S1', '')).message).toMatch(
    /corrected or taken back already/,
  );
});
