import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aQueue, aShop, NOW } from '../../support/builders.ts';

const sheetId = 'galv-24-moss';
const done = (shop: Shop, command: Command): Shop => {
  const edit = applyCommand(shop, command);
  if (!edit.ok) throw new Error(edit.issues[0]?.message);
  return withChanges(shop, edit.value.changes);
};
const onHand = (shop: Shop, id = sheetId) => shop.sheet.find((s) => s.id === id)?.onHand;

describe('stock', () => {
  const shop = aShop();

  it('grows by what is received, and the history says so', () => {
    const after = done(shop, { do: 'stock.receive', sheetId, pieces: 10, at: NOW, note: 'truck' });
    expect(onHand(after)).toBe(50);
    expect(after.movement).toEqual([
      {
        id: `${sheetId}.1`,
        sheetId,
        at: NOW,
        what: 'received',
        pieces: 10,
        after: 50,
        note: 'truck',
        revision: 1,
      },
    ]);
  });

  it('is what was counted, and the history keeps the difference', () => {
    const after = done(shop, { do: 'stock.count', sheetId, pieces: 37, at: NOW, note: '' });
    expect(onHand(after)).toBe(37);
    expect(after.movement).toMatchObject([{ what: 'counted', pieces: -3, after: 37 }]);
  });

  it('cannot be corrected below nothing', () => {
    const edit = applyCommand(shop, { do: 'stock.correct', sheetId, by: -41, at: NOW, note: '' });
    expect(edit).toMatchObject({
      ok: false,
      issues: [{ message: 'Stock galv-24-moss has 40 on hand; -1 cannot be.' }],
    });
  });

  it('is as before when the step is undone', () => {
    const edit = applyCommand(shop, { do: 'stock.receive', sheetId, pieces: 1, at: NOW, note: '' });
    if (!edit.ok) throw new Error('refused');
    const back = withChanges(withChanges(shop, edit.value.changes), invert(edit.value.changes));
    expect(back).toEqual(shop);
  });
});

describe('a walk-in cut', () => {
  const cut = {
    do: 'walkin.take',
    text: '5 @ 9 1/2 in x 8 ft, 24 ga, moss',
    pieces: 5,
    girthMm: 241.3,
    lengthMm: 2438.4,
    materialId: 'galv',
    gauge: '24',
    colourId: 'moss',
    due: NOW + 86_400,
  } as const satisfies Command;

  it('becomes a work order with a flat part, behind the last line of the same metal on the shear', () => {
    const queue = [aQueue({ operations: ['1042/1:shear', '1043/1:shear', '1042/2:shear'] })];
    const after = done(aShop({ queue }), cut);
    expect(after.order.find((o) => o.id === 'walk-in-1')?.customer).toBe('Walk-in');
    expect(after.line.find((l) => l.id === 'walk-in-1/1')).toMatchObject({
      quantity: 5,
      partId: 'flat-241.3',
    });
    const flat = after.part.find((p) => p.id === 'flat-241.3');
    expect(flat?.name).toBe('Flat 9 1/2 in');
    expect(flat?.profile).toMatchObject({ flangesMm: [241.3], bends: [] });
    expect(after.queue.find((q) => q.id === 'S1')?.operations).toEqual([
      '1042/1:shear',
      'walk-in-1/1:shear',
      '1043/1:shear',
      '1042/2:shear',
    ]);
  });

  it('takes the next number when one stands already', () => {
    expect(done(done(aShop(), cut), cut).order.map((o) => o.id)).toContain('walk-in-2');
  });

  it('is refused when it fits no shear, with the limit', () => {
    const edit = applyCommand(aShop(), { ...cut, lengthMm: 4000 });
    expect(edit).toMatchObject({ ok: false, issues: [{ subject: 'line walk-in-1/1' }] });
  });
});

describe('the form of a stock', () => {
  it('cannot type over what is on hand: that is received, counted or corrected', () => {
    const shop = aShop();
    const row = { ...shop.sheet[0]!, onHand: 41 };
    expect(applyCommand(shop, { do: 'row.save', kind: 'sheet', row })).toMatchObject({
      ok: false,
      issues: [
        { field: 'onHand', message: 'Stock galv-24-bone has 40 on hand; the form cannot make it 41.' },
      ],
    });
    expect(
      applyCommand(shop, { do: 'row.save', kind: 'sheet', row: { ...row, onHand: 40, trimMm: 3 } }).ok,
    ).toBe(true);
  });
});
