import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aSheet, aShop, NOW } from '../../support/builders.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';

const stockId = 'galv-24-moss';
/** Three sheets of 1219.2 × 3048 mm ripped to four strips of 150 mm each; 619.2 mm of each remains. */
const list = aCutList({ groups: [aGroup({ count: 3 })], steps: [aStep()] as never });
const shop = aShop({ order: [anOrder()], line: [aLine({ number: 1, quantity: 12 })], sheet: [aSheet()] });
const take = (own: Partial<Extract<Command, { do: 'stock.use' }>> = {}): Command => ({
  do: 'stock.use',
  list,
  machineId: 'S1',
  at: NOW,
  ...own,
});
const done = (of: Shop, command: Command): Shop => {
  const edit = applyCommand(of, command);
  if (!edit.ok) throw new Error(edit.issues[0]?.message);
  return withChanges(of, edit.value.changes);
};
const refusal = (of: Shop, command: Command): string => {
  const edit = applyCommand(of, command);
  return edit.ok ? '' : edit.issues.map((p) => p.message).join(' ');
};

describe('taking the sheets of a run from stock', () => {
  it('is one step: sheets go, remnants come as they are cut, and the list is kept as it was taken', () => {
    const edit = applyCommand(shop, take());
    expect(edit).toMatchObject({ ok: true, value: { label: 'Issue the sheets of run 1042/1 from stock' } });
    const after = done(shop, take());
    expect(after.sheet.find((s) => s.id === stockId)?.onHand).toBe(37);
    expect(after.sheet.find((s) => s.form === 'remnant')).toMatchObject({
      id: 'galv-24-moss-r619x3048',
      widthMm: 619.2,
      lengthMm: 3048,
      onHand: 3,
    });
    expect(after.cutList).toMatchObject([{ taken: NOW, steps: list.steps }]);
    expect(after.movement.map(({ what, pieces, note }) => [what, pieces, note])).toEqual([
      ['kept', 3, 'for run 1042/1'],
      ['used', -3, 'for run 1042/1'],
    ]);
  });

  it('believes the steps, not the drawing: what the list cuts up is not kept', () => {
    const scrapped = [aStep({ rest: { kind: 'scrap' } })] as never;
    const drawn = { x: 0, y: 600, w: 3048, h: 619.2, kind: 'remnant' } as const;
    const wrong = { ...list, groups: [aGroup({ count: 3, offcuts: [drawn] })], steps: scrapped };
    expect(done(shop, take({ list: wrong })).movement.map((m) => m.what)).toEqual(['used']);
  });

  it('keeps of a size no more than the shop does: with one in stock and two kept at most, one of three', () => {
    const rule = { widthMm: 152.4, lengthMm: 609.6, most: 2 };
    const lying = aSheet({ id: 'r', form: 'remnant', widthMm: 619.2, trimMm: 0, onHand: 1 });
    const strict = { ...shop, settings: { ...shop.settings, remnants: rule }, sheet: [...shop.sheet, lying] };
    expect(done(strict, take()).sheet.find((s) => s.id === 'r')?.onHand).toBe(2);
    const full = { ...strict, sheet: [...shop.sheet, { ...lying, onHand: 2 }] };
    expect(done(full, take()).movement.map((m) => m.what)).toEqual(['used']);
  });

  it('cannot be done twice', () => {
    const once = done(shop, take());
    expect(refusal(once, take({ at: NOW + 1 }))).toBe(
      'The sheets for 12 of the 12 blanks of line 1042/1 were issued before.',
    );
  });

  it('can be done for what a line asks more since', () => {
    const more = { ...shop, line: shop.line.map((line) => ({ ...line, quantity: 24 })) };
    expect(done(done(more, take()), take({ at: NOW + 1 })).sheet.find((s) => s.id === stockId)?.onHand).toBe(
      34,
    );
  });

  it('is as before when the step is undone, the changed list too', () => {
    const changed = { ...shop, cutList: [list] };
    const edit = applyCommand(changed, take());
    if (!edit.ok) throw new Error('refused');
    const after = withChanges(changed, edit.value.changes);
    expect(after.cutList).toHaveLength(1);
    expect(withChanges(after, invert(edit.value.changes))).toEqual(changed);
  });

  it('is refused when the sheets are not there, when a step cannot be cut, or when pieces stay half cut', () => {
    const few = { ...shop, sheet: [aSheet({ onHand: 2 })] };
    expect(refusal(few, take())).toBe('Stock galv-24-moss has 2 on hand; -1 cannot be.');
    const tooMany = { ...list, steps: [aStep({ cutsEach: 9 })] as never };
    expect(refusal(shop, take({ list: tooMany }))).toContain('the hold-downs grip');
    const halfCut = { ...list, steps: [aStep({ rest: null })] as never };
    expect(refusal(shop, take({ list: halfCut }))).toBe('3 pieces are left on stack A.');
    expect(refusal(shop, take({ list: { ...list, steps: [] } }))).toContain('has no steps');
    expect(refusal(shop, take({ machineId: 'B1' }))).toBe('There is no shear B1.');
  });
});

describe('a remnant that is kept', () => {
  it('joins those of its metal and size, whatever their code', () => {
    const old = aSheet({ id: 'old-rest', form: 'remnant', widthMm: 619.2, onHand: 1 });
    const after = done({ ...shop, sheet: [aSheet(), old] }, take());
    expect(after.sheet.find((s) => s.id === 'old-rest')?.onHand).toBe(4);
    expect(after.sheet).toHaveLength(2);
  });

  it('never joins one of nearly its size', () => {
    const near = aSheet({ id: 'galv-24-moss-r619x3048', form: 'remnant', widthMm: 618.8, onHand: 1 });
    const after = done({ ...shop, sheet: [aSheet(), near] }, take());
    expect(after.sheet.find((s) => s.id === 'galv-24-moss-r619x3048-2')).toMatchObject({
      widthMm: 619.2,
      onHand: 3,
    });
    expect(after.sheet.find((s) => s.id === near.id)?.onHand).toBe(1);
  });

  it('is worth a quarter of its metal, a remnant of a remnant its share of that', () => {
    const { sheet } = done(shop, take());
    // 6200 × 619.2 / 1219.2 / 4 = 787.2
    expect(sheet.find((s) => s.form === 'remnant')?.costCents).toBe(787);
  });
});

describe('a coil', () => {
  it('loses the stretches that were begun', () => {
    const coil = aSheet({ form: 'coil', lengthMm: 1000, onHand: 40 });
    const after = done({ ...shop, sheet: [coil] }, take());
    // Three lengths of 3048 mm: 9.144 coil lengths of a metre.
    expect(after.sheet.find((s) => s.id === stockId)?.onHand).toBe(30);
  });
});
