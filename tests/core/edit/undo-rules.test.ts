import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import { undoIssues } from '../../../core/edit/undo-rules.ts';
import { sentence } from '../../../core/result.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShop, at, NOW } from '../../support/builders.ts';
import { after, editOf } from '../../support/edits.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const empty = aShop({ order: [], line: [] });
const line = aLine();
const added: Command = { do: 'order.save', order: anOrder(), lines: [line], removed: [], at: NOW };
const shear: Command = {
  do: 'floor.start',
  operation: '1042/1:shear',
  machineId: 'S1',
  at: monday('07:00'),
  changeoverSeconds: null,
};
/** What speaks against taking back a step after the floor went on. */
function taken(before: Shop, step: Command, ...floor: Command[]): string {
  const { changes } = editOf(before, step);
  return sentence(undoIssues(after(withChanges(before, changes), ...floor), invert(changes)));
}

describe('undo of a plan’s step', () => {
  it('never takes away a line that the floor has begun', () => {
    expect(taken(empty, added)).toBe('');
    expect(taken(empty, added, shear)).toMatch(
      /Work on line 1042\/1 has started meanwhile\. Cancel the line/,
    );
  });

  it('never changes what was cut', () => {
    const shop = after(empty, added);
    const stored = shop.line[0]!;
    const step = (own: Partial<typeof stored>): Command => ({ do: 'line.save', line: { ...stored, ...own } });
    for (const own of [{ colourId: 'bone' }, { quantity: 30 }])
      expect(taken(shop, step(own), shear)).toMatch(/has started meanwhile\. Change the line in Orders/);
    expect(taken(shop, step({ overrun: 2 }), shear)).toBe('');
    expect(taken(shop, step({ colourId: 'bone' }))).toBe('');
  });

  it('never leaves a line that would start after it is due', () => {
    const shop = after(empty, added);
    const [order, stored] = [shop.order[0]!, shop.line[0]!];
    const later: Command = {
      do: 'order.save',
      order: { ...order, due: at('2026-12-18') },
      lines: [],
      removed: [],
      at: NOW,
    };
    const wait: Command = { do: 'line.save', line: { ...stored, release: at('2026-12-14', '07:00') } };
    expect(taken(shop, later)).toBe('');
    expect(taken(shop, later, wait)).toMatch(
      /Line 1042\/1: the time in “Not before”.* not before the due date/,
    );
    expect(taken(after(shop, later), wait)).toBe('');
  });

  it('never opens an order again without the pieces that it lacks by now', () => {
    const cut = after(empty, added, shear);
    const cancel: Command = {
      do: 'order.save',
      order: { ...cut.order[0]!, status: 'cancelled' },
      lines: [],
      removed: [],
      at: NOW,
    };
    const done: Command = {
      do: 'floor.done',
      operation: '1042/1:shear',
      at: monday('07:30'),
      good: 12,
      scrapped: 0,
    };
    expect(taken(cut, cancel)).toBe('');
    expect(taken(cut, cancel, done)).toMatch(/ended meanwhile with pieces missing\. Open it in Orders/);
  });
});
