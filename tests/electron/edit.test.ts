import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Store } from '../../electron/db/open.ts';
import { KEPT_STEPS } from '../../electron/db/steps.ts';
import type { Shop } from '../../core/shop/state.ts';
import { aColour, anOrder, aShop, NOW } from '../support/builders.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { keptPushes, openTestStore, refusalOf, storeWith, tempFolder, editorOf, shopIn } from './support.ts';
import { aMove, madeFrom } from '../support/edits.ts';

const editing = (store: Store, pushes = keptPushes()) => ({
  ...editorOf(store, pushes),
  store,
  pushes,
});
const start = (shop = aShop()) => editing(storeWith(shop));
const shopOf = (store: Store) => shopIn(store);

/** Everything but the revisions, which only grow. */
const content = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value, (key, v: unknown) => (key === 'revision' ? 0 : v)));

const save = (name: string, revision = 0) =>
  ({ do: 'row.save', kind: 'colour', row: aColour({ name, revision }) }) as const;

describe('an edit', () => {
  it('is stored, named in the history with its time, and told to the screens', () => {
    const { apply, history, store, pushes } = start();
    apply(save('Fern'));
    expect(shopOf(store).colour.find((c) => c.id === 'moss')).toMatchObject({ name: 'Fern', revision: 1 });
    expect(history()).toEqual({ undo: [{ id: 1, label: 'Change colour moss', at: NOW }], redo: [] });
    expect(pushes.sent).toMatchObject([
      { kind: 'changes', revision: 2, changes: [{ kind: 'colour', id: 'moss', after: { name: 'Fern' } }] },
    ]);
  });

  it('that changes nothing leaves no step to undo', () => {
    const { apply, history, pushes } = start();
    apply({ do: 'operation.unpin', operations: ['1042/1:shear'], seen: {} });
    expect(history().undo).toEqual([]);
    expect(pushes.sent).toEqual([]);
  });

  it('that was refused leaves everything as it was', () => {
    const { apply, history, store } = start();
    const before = shopOf(store);
    const refusal = refusalOf(() =>
      apply(madeFrom(before, { do: 'row.remove', kind: 'part', id: 'corner' })),
    );
    expect(refusal.message).toMatch(/used by line 1042\/1/);
    expect(shopOf(store)).toEqual(before);
    expect(history().undo).toEqual([]);
  });

  it('made from an old form is refused, and the newer version stays', () => {
    const { apply, store } = start();
    apply(save('Fern'));
    expect(refusalOf(() => apply(save('Sage'))).message).toMatch(/changed meanwhile/);
    expect(shopOf(store).colour.find((c) => c.id === 'moss')?.name).toBe('Fern');
  });
});

describe('a change of the plan that was made from an older order', () => {
  const move = (from: Shop, operation: string, position: number) =>
    madeFrom(from, aMove(operation, 'S1', position));

  it('is refused, and it is said what the other did', () => {
    const { apply, undo, store } = start();
    apply(move(shopOf(store), '1042/2:shear', 0), 'desk');
    const read = shopOf(store);
    apply(move(read, '1043/1:shear', 0), 'other desk');
    const refusal = refusalOf(() => apply(move(read, '1042/2:shear', 0), 'desk'));
    expect(refusal.code).toBe('conflict');
    expect(refusal.conflicts).toMatchObject([{ kind: 'queue', id: 'S1' }]);
    expect(refusal.message).toBe(
      'The queue of Shear was changed meanwhile: “Move 1043/1 shearing to position 1 on S1”. Yours was not done: look at the plan as it stands now.',
    );
    const operations = ['1042/2:shear'];
    for (const asked of [
      { do: 'operation.pin', operations } as const,
      { do: 'operation.unpin', operations } as const,
    ]) {
      const pinning = madeFrom(read, asked);
      expect(refusalOf(() => apply(pinning, 'desk')).message).toMatch(/“Move 1043\/1 shearing/);
    }
    undo('other desk');
    expect(refusalOf(() => apply(move(read, '1042/2:shear', 0), 'desk')).message).toMatch(
      /changed meanwhile: “Undo: Move 1043\/1 shearing/,
    );
  });
});

describe('undo and redo', () => {
  it('bring back every kind of row, also one that others refer to', () => {
    const { apply, undo, redo, store } = start(anEverythingShop());
    const before = shopOf(store);
    apply(madeFrom(shopOf(store), { do: 'order.remove', orderId: '1043' }));
    const after = shopOf(store);
    expect(undo()).toBe('Remove work order 1043');
    expect(content(shopOf(store))).toEqual(content(before));
    expect(redo()).toBe('Remove work order 1043');
    expect(content(shopOf(store))).toEqual(content(after));
  });

  it('still work after the app was closed and opened again', () => {
    const file = join(tempFolder(), 'shop.db');
    const first = editing(storeWith(aShop(), file));
    first.apply(save('Fern'));
    first.apply(save('Sage', 1));
    first.undo();
    first.store.close();
    const second = editing(openTestStore(file));
    expect(second.history()).toMatchObject({
      undo: [{ label: 'Change colour moss' }],
      redo: [{ label: 'Change colour moss' }],
    });
    second.undo();
    expect(shopOf(second.store).colour.find((c) => c.id === 'moss')?.name).toBe('Moss green');
    second.redo();
    second.redo();
    expect(shopOf(second.store).colour.find((c) => c.id === 'moss')?.name).toBe('Sage');
  });

  it('go back and forth through several steps in order', () => {
    const { apply, undo, redo, store } = start();
    apply(madeFrom(shopOf(store), { do: 'operation.pin', operations: ['1042/1:shear'] }));
    const move = aMove('1042/1:shear', 'S1', 2);
    apply(madeFrom(shopOf(store), move));
    apply(madeFrom(shopOf(store), { do: 'order.remove', orderId: '1043' }));
    const labels = [undo(), undo(), undo(), undo()];
    expect(labels).toEqual([
      'Remove work order 1043',
      expect.stringMatching(/^Move 1042\/1 shearing/),
      'Pin 1042/1 shearing',
      null,
    ]);
    expect([redo(), redo(), redo(), redo()]).toEqual([...labels.slice(0, 3).reverse(), null]);
  });

  it('never lower a revision, so that a form opened before an undo notices it', () => {
    const { apply, undo, store } = start();
    apply(save('Fern'));
    undo();
    expect(shopOf(store).colour.find((c) => c.id === 'moss')?.revision).toBe(2);
    expect(refusalOf(() => apply(save('Sage', 1))).message).toMatch(/changed meanwhile/);
  });

  it('are refused, and nothing changes, when a row was changed since', () => {
    const { apply, undo, history, store } = start();
    apply({ do: 'row.save', kind: 'colour', row: aColour({ id: 'clay', name: 'Clay' }) });
    store.run('elsewhere', ({ rows }) =>
      rows.put('colour', aColour({ id: 'clay', name: 'Brick', revision: 1 })),
    );
    const refusal = refusalOf(() => undo());
    expect(refusal.code).toBe('conflict');
    expect(refusal.message).toMatch(/“Add colour clay” cannot be undone: colour clay was changed since/);
    expect(shopOf(store).colour.find((c) => c.id === 'clay')?.name).toBe('Brick');
    expect(history().undo).toHaveLength(1);
  });

  it('lose what could be redone once something new is done', () => {
    const { apply, undo, redo, history } = start();
    apply(save('Fern'));
    undo();
    apply({
      do: 'order.save',
      order: anOrder({ note: 'call first' }),
      lines: [],
      removed: [],
      at: NOW,
    });
    expect(history().redo).toEqual([]);
    expect(redo()).toBeNull();
  });

  it('reach back a fixed number of steps, and the history lists the newest fifty', () => {
    const { apply, history, store } = start();
    for (let n = 0; n < KEPT_STEPS + 5; n++) apply(save(`Moss ${n}`, n));
    expect(history().undo).toHaveLength(50);
    expect(history().undo[0]?.id).toBe(KEPT_STEPS + 5);
    let undone = 0;
    store.run('count', ({ steps }) => {
      for (let step = steps.newest(''); step; step = steps.newest('')) {
        steps.mark(step.id, true);
        undone++;
      }
    });
    expect(undone).toBe(KEPT_STEPS);
  });
});
