import { describe, expect, it } from 'vitest';
import { unpublishedChanges } from '../../../core/planning/changed-queues.ts';
import { followedShop, notPublished, withPlan } from '../../../core/planning/followed-plan.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { floorView } from '../../../core/report/floor.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aRecord, aShear, aShop, at, NOW } from '../../support/builders.ts';
import { aMove, after, editOf, refusalOf } from '../../support/edits.ts';

const lines = ['1042', '1043', '1044'].map((orderId) => aLine({ orderId }));
const flat = lines.map((line) => ({ ...line, partId: 'flat-strip' }));
const A = '1042/1:shear';
const B = '1043/1:shear';
const C = '1044/1:shear';

/** Three flat lines on the shear in order; the floor follows what is published by hand from here on. */
const plain = aShop({
  order: lines.map(({ orderId }) => anOrder({ id: orderId })),
  line: flat,
  queue: [{ id: 'S1', operations: [A, B, C], revision: 1 }],
});
const setting = (publishing: 'always' | 'byHand', shop: Shop = plain) =>
  ({ do: 'settings.save', row: { ...shop.settings, publishing } }) as const;
const byHand = after(plain, setting('byHand'));
const move = (operation: string, position: number) => aMove(operation, 'S1', position);
const publish = { do: 'plan.publish', note: '' } as const;

const queueOf = (shop: Shop) => {
  const view = viewPlan(shop, NOW);
  if (!view.ok) throw new Error('no plan');
  return view.value.queues.S1;
};
const floor = (shop: Shop) => queueOf(followedShop(shop));

/** What is marked as new on the shear's list. */
function marked(shop: Shop): boolean[] {
  const followed = followedShop(shop);
  const view = viewPlan(followed, NOW);
  const rows = view.ok ? (floorView(followed, view.value, 'S1', NOW)?.queue ?? []) : [];
  return rows.map(({ row }) => row.unpublished);
}

describe('what floor and paper follow', () => {
  it('is the plan itself where every change is published at once', () => {
    const moved = after(plain, move(C, 0));
    expect(followedShop(moved)).toBe(moved);
    expect(floor(moved)).toEqual([C, A, B]);
    expect(unpublishedChanges(moved).size).toBe(0);
    expect(refusalOf(moved, publish)).toMatch(/published at once in this shop/);
  });

  it('stays what was published while the planner drafts, until it is published again', () => {
    const drafted = after(byHand, move(C, 0));
    expect(queueOf(drafted)).toEqual([C, A, B]);
    expect(floor(drafted)).toEqual([A, B, C]);
    expect([...unpublishedChanges(drafted).keys()]).toEqual(['S1']);
    const published = after(drafted, publish);
    expect(floor(published)).toEqual([C, A, B]);
    expect(unpublishedChanges(published).size).toBe(0);
    expect(editOf(published, publish).changes).toEqual([]);
  });

  it('begins, by hand, with the plan as it stands, so that nothing moves on the floor', () => {
    const never = aShop({ ...plain, queue: [] });
    expect(floor(after(never, setting('byHand', never)))).toEqual(floor(never));
    const back = after(byHand, move(C, 0), setting('always', byHand));
    expect(back.published).toEqual([]);
    expect(floor(back)).toEqual([C, A, B]);
  });

  it('is undone as one step', () => {
    const drafted = after(byHand, move(C, 0));
    const { changes } = editOf(drafted, publish);
    const undone = withChanges(withChanges(drafted, changes), invert(changes));
    expect(floor(undone)).toEqual([A, B, C]);
    expect(queueOf(undone)).toEqual([C, A, B]);
  });

  it('has what is newer behind, marked, on the machine that the draft gives it', () => {
    const two = after(plain, {
      do: 'row.save',
      kind: 'machine',
      row: aShear({ id: 'S2', name: 'Second shear' }),
    });
    const newer: Shop = {
      ...after(two, setting('byHand', two)),
      line: [...flat, aLine({ orderId: '1044', number: 2, partId: 'flat-strip' })],
    };
    const D = '1044/2:shear';
    const drafted = after(newer, move(D, 0));
    expect(queueOf(drafted)).toEqual([D, A, B, C]);
    expect(floor(drafted)).toEqual([A, B, C, D]);
    expect([...notPublished(drafted)]).toEqual([D]);
    expect(marked(drafted)).toEqual([false, false, false, true]);
    expect(marked(after(drafted, publish))).toEqual([false, false, false, false]);
    expect(unpublishedChanges(drafted).get('S1')).toMatchObject([{ operation: D, what: 'added', after: 0 }]);
    expect([...notPublished(after(drafted, publish))]).toEqual([]);
  });

  it('lets go at once of what is held or removed, and follows what was started', () => {
    const held = {
      ...byHand,
      order: byHand.order.map((o) => (o.id === '1043' ? { ...o, status: 'held' as const } : o)),
    };
    expect(floor(held)).toEqual([A, C]);
    const started = {
      ...byHand,
      record: [aRecord({ id: C, start: NOW - 600, partId: 'flat-strip', good: 0, scrapped: 0, end: null })],
    };
    expect(floor(started)).toEqual([C, A, B]);
    expect(unpublishedChanges(started).size).toBe(0);
  });

  it('has what the floor sets aside behind the next one, as the draft has it', () => {
    const pauses = [{ from: at('2026-11-30', '07:10'), to: null, reason: 'Trouble' }];
    const record = aRecord({ id: A, partId: 'flat-strip', good: 0, scrapped: 0, end: null, pauses });
    const drafted = after({ ...byHand, record: [record] }, move(C, 1));
    const aside = after(drafted, { do: 'floor.suspend', operation: A, good: 0, scrapped: 0 });
    expect(floor(aside)).toEqual([B, A, C]);
    expect(queueOf(aside)).toEqual([C, A, B]);
  });

  it('goes with its machine', () => {
    const two = after(plain, { do: 'row.save', kind: 'machine', row: aShear({ id: 'S2', name: 'Second' }) });
    const published = after(two, setting('byHand', two));
    const { changes } = editOf(published, { do: 'row.remove', kind: 'machine', id: 'S2' });
    expect(changes.map(({ kind, id }) => `${kind} ${id}`)).toContain('published S2');
  });
});

describe('going back to a plan', () => {
  const kept = { queues: { S1: [C, B, A] }, pins: [C] };
  const goBack = { do: 'plan.goBack', name: 'the Monday plan', ...kept } as const;

  it('takes its order and pins in one step, done work left out, newer work behind', () => {
    const done = aRecord({ id: B, partId: 'flat-strip' });
    const D = '1044/2:shear';
    const now = after(
      {
        ...plain,
        record: [done],
        line: [...flat, aLine({ orderId: '1044', number: 2, partId: 'flat-strip' })],
      },
      { do: 'operation.pin', operations: [A] },
      { do: 'operation.pin', operations: [D] },
      move(D, 0),
    );
    const back = after(now, goBack);
    expect(queueOf(back)).toEqual([C, A, D]);
    expect(back.pin.map(({ id }) => id)).toEqual([C, D]);
    expect(editOf(now, goBack).label).toBe('Go back to the Monday plan');
  });

  it('changes the draft only', () => {
    expect(floor(after(byHand, goBack))).toEqual([A, B, C]);
  });

  it('puts what its machine can no longer do where the draft has it', () => {
    expect(queueOf(withPlan(plain, { S9: [C], S1: [B] }))).toEqual([B, A, C]);
  });
});
