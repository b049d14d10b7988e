import { describe, expect, it } from 'vitest';
import type { Shop } from '../../core/shop/state.ts';
import { seenQueues } from '../../core/edit/stale.ts';
import { instant } from '../../core/units/brand.ts';
import { KEPT_PUBLISHED } from '../../electron/db/plans.ts';
import { editService } from '../../electron/service/edit.ts';
import { plansService } from '../../electron/service/plans.ts';
import { aLine, anOrder, aShop, NOW, someSettings } from '../support/builders.ts';
import { livingIn, refusalOf, storeWith } from './support.ts';
import { aMove, madeFrom } from '../support/edits.ts';

const lines = ['1042', '1043', '1044'].map((orderId) =>
  aLine({ orderId, partId: 'flat-strip', colourId: orderId === '1043' ? 'bone' : 'moss' }),
);
const [A, B, C] = ['1042/1:shear', '1043/1:shear', '1044/1:shear'] as const;
const shop = aShop({
  settings: someSettings({ publishing: 'byHand' }),
  order: lines.map(({ orderId }) => anOrder({ id: orderId })),
  line: lines,
  queue: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
  published: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
});

function start(from: Shop = shop) {
  const time = { at: NOW as number };
  const clock = { now: () => instant(time.at), fixed: false };
  const living = livingIn(storeWith(from), undefined, clock);
  const own = editService(living, clock);
  const edit = {
    ...own,
    apply: (asked: Parameters<typeof madeFrom>[1], by?: string) =>
      own.apply(madeFrom(living.shop, asked), by),
  };
  return { living, edit, time, plans: plansService(living, clock, edit) };
}
const move = (operation: string, position: number) => aMove(operation, 'S1', position);
const publish = (note = '') => ({ do: 'plan.publish', note }) as const;
const queue = (of: Shop, kind: 'queue' | 'published' = 'queue') =>
  of[kind].find(({ id }) => id === 'S1')?.operations;

describe('publishing', () => {
  it('keeps the plan with who, when, what for and what it came to', () => {
    const { edit, plans } = start();
    edit.apply(move(C, 0), 'desk 1');
    edit.apply(publish('Rush for Monday'), 'desk 1');
    expect(plans.list(null, 10)).toMatchObject({
      more: false,
      plans: [
        {
          name: 'Rush for Monday',
          what: 'published',
          at: NOW,
          by: 'desk 1',
          undone: false,
          figures: { lateLines: 0, changeovers: 1 },
        },
      ],
    });
    const { last, before } = plans.published();
    expect(last?.name).toBe('Rush for Monday');
    expect(before).toBeNull();
    expect(plans.read(last!.id).queues.S1).toEqual([C, A, B]);
  });

  it('is undone by its maker as one step; the plan from before counts again', () => {
    const { edit, plans, living } = start();
    edit.apply(move(C, 0), 'desk 1');
    edit.apply(publish('first'), 'desk 1');
    edit.apply(move(B, 0), 'desk 1');
    const { stepId } = edit.apply(publish('second'), 'desk 1');
    expect(plans.published()).toMatchObject({ last: { name: 'second' }, before: { name: 'first' } });
    edit.undo('desk 1', stepId);
    expect(queue(living.shop, 'published')).toEqual([C, A, B]);
    expect(queue(living.shop)).toEqual([B, C, A]);
    expect(plans.published()).toMatchObject({ last: { name: 'first' }, before: null });
    expect(plans.list(null, 10).plans.map(({ undone }) => undone)).toEqual([true, false]);
  });

  it('begins with a plan of its own, and is nothing where every change is published at once', () => {
    const { edit, plans, living } = start({ ...shop, settings: someSettings(), published: [] });
    expect(plans.published()).toEqual({ last: null, before: null });
    expect(refusalOf(() => edit.apply(publish())).message).toMatch(/published at once/);
    edit.apply({ do: 'settings.save', row: { ...living.shop.settings, publishing: 'byHand' } });
    expect(plans.published().last?.name).toBe('As publishing by hand began');
    expect(queue(living.shop, 'published')).toEqual([A, B, C]);
  });

  it('forgets the oldest published plans, and never a named one', () => {
    const { plans, living } = start();
    const named = plans.keep('The good one', 'desk 1');
    const plan = { what: 'published', at: NOW, by: '', queues: {}, pins: [], figures: null } as const;
    living.store.run('fill', ({ plans: kept }) => {
      for (let i = 0; i < KEPT_PUBLISHED + 2; i++) kept.add({ ...plan, name: `${i}`, stepId: null });
    });
    expect(plans.read(named).name).toBe('The good one');
    expect(refusalOf(() => plans.read(named + 2)).message).toMatch(/not kept any more/);
    expect(plans.read(named + 3).name).toBe('2');
  });
});

describe('a plan that was kept', () => {
  it('is gone back to as one step, which undo takes back', () => {
    const { edit, plans, living } = start();
    edit.apply({ do: 'operation.pin', operations: [A] }, 'desk 1');
    const id = plans.keep('Before the rush', 'desk 1');
    edit.apply(move(C, 1), 'desk 1');
    edit.apply({ do: 'operation.unpin', operations: [A] }, 'desk 1');
    const { label, stepId } = plans.goBack(id, seenQueues(living.shop), 'desk 1');
    expect(label).toBe('Go back to “Before the rush”');
    expect(queue(living.shop)).toEqual([A, B, C]);
    expect(living.shop.pin.map((pin) => pin.id)).toEqual([A]);
    expect(queue(living.shop, 'published')).toEqual([A, B, C]);
    edit.undo('desk 1', stepId);
    expect(queue(living.shop)).toEqual([A, C, B]);
    expect(living.shop.pin).toEqual([]);
  });

  it('is not gone back to over what someone else did meanwhile, which is said', () => {
    const { edit, plans, living } = start();
    const id = plans.keep('Calm', 'desk 1');
    edit.apply(move(B, 0), 'desk 1');
    const seen = seenQueues(living.shop);
    edit.apply(move(C, 0), 'desk 2');
    const refusal = refusalOf(() => plans.goBack(id, seen, 'desk 1'));
    expect(refusal.code).toBe('conflict');
    expect(refusal.conflicts).toMatchObject([{ kind: 'queue', id: 'S1' }]);
    expect(refusal.message).toMatch(/^The queue of Shear was changed meanwhile: “Move 1044\/1 shearing/);
    expect(queue(living.shop)).toEqual([C, B, A]);
    plans.goBack(id, seenQueues(living.shop), 'desk 1');
    expect(queue(living.shop)).toEqual([A, B, C]);
  });

  it('is compared with the draft and with what is published', () => {
    const { edit, plans } = start();
    const id = plans.keep('As it was', 'desk 1');
    edit.apply(move(C, 0), 'desk 1');
    const found = plans.compare(id, 'draft');
    expect(found.earlier.map(({ lineId }) => lineId)).toEqual(['1044/1']);
    expect(found.later.map(({ lineId }) => lineId)).toEqual(['1042/1', '1043/1']);
    expect(plans.compare(id, 'published')).toMatchObject({ earlier: [], later: [] });
  });

  it('that was damaged is left out, and the others stay', () => {
    const { plans, living } = start();
    plans.keep('Whole', '');
    const broken = living.store.run('damage', ({ plans: kept }) =>
      kept.add({
        ...{ name: 'Broken', what: 'named', at: NOW, by: '', stepId: null, figures: null, pins: [] },
        queues: { S1: ['no operation'] },
      }),
    );
    expect(refusalOf(() => plans.goBack(broken, {}, '')).message).toMatch(/cannot be read/);
    expect(plans.compare(plans.list(null, 9).plans.at(-1)!.id, 'draft').later).toEqual([]);
  });

  it('comes in pages, newest first', () => {
    const { plans } = start();
    const ids = ['one', 'two', 'three'].map((name) => plans.keep(name, ''));
    const first = plans.list(null, 2);
    expect([first.plans.map(({ name }) => name), first.more]).toEqual([['three', 'two'], true]);
    const rest = plans.list(first.plans.at(-1)!.id, 2);
    expect([rest.plans.map((plan) => plan.id), rest.more]).toEqual([[ids[0]], false]);
  });
});

describe('what was done', () => {
  it('is one story of desk and floor, each entry once, in pages', () => {
    const { edit, plans, time } = start();
    const later = <T>(act: () => T): T => {
      time.at += 60;
      return act();
    };
    later(() => edit.apply(move(C, 0), 'desk 1'));
    const started = NOW + 30;
    later(() =>
      edit.apply(
        { do: 'floor.start', operation: C, machineId: 'S1', at: started, changeoverSeconds: null },
        'floor S1',
      ),
    );
    later(() => plans.keep('Calm', 'desk 2'));
    later(() => edit.apply(move(B, 1), 'desk 1'));
    later(() => edit.apply(publish('for the night'), 'desk 1'));
    later(() => edit.undo('desk 1'));
    const told: unknown[] = [];
    let next: Parameters<typeof plans.history>[0] = null;
    do {
      const page = plans.history(next, 2);
      expect(page.entries.length).toBeLessThanOrEqual(2);
      for (const { is, by, at, ...entry } of page.entries)
        told.push([is, by, at - NOW, 'label' in entry ? entry.label : entry.name]);
      next = page.next;
    } while (next);
    expect(told).toEqual([
      ['plan', 'desk 1', 300, 'for the night'],
      ['step', 'desk 1', 240, expect.stringMatching(/^Move 1043\/1 shearing/)],
      ['plan', 'desk 2', 180, 'Calm'],
      ['fact', 'floor S1', 120, 'Start 1044/1 shearing on S1'],
      ['step', 'desk 1', 60, expect.stringMatching(/^Move 1044\/1 shearing/)],
    ]);
    const [first, , , fact] = plans.history(null, 10).entries;
    expect(first).toMatchObject({ undone: true });
    expect(fact).toMatchObject({ happened: started, reason: '' });
  });

  it('says of a report by which later entry it was put right', () => {
    const { edit, plans } = start();
    const begin = {
      do: 'floor.start',
      operation: C,
      machineId: 'S1',
      at: NOW,
      changeoverSeconds: null,
    } as const;
    const { factId } = edit.apply(begin, 'floor S1');
    edit.takeBack(factId!, 'floor S1', '');
    const [later, first] = plans.history(null, 10).entries;
    expect(later).toMatchObject({ is: 'fact', operation: C, putRight: null });
    expect(first).toMatchObject({
      ...{ is: 'fact', id: factId, operation: C },
      putRight: { label: 'Take back: Start 1044/1 shearing on S1', at: NOW },
    });
  });
});
