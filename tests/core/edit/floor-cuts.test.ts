import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { isFact } from '../../../core/edit/facts.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShop, NOW } from '../../support/builders.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';

const listId = `1042/1 ${NOW}`;
/** Three sheets, four cuts each. */
const list = aCutList({ id: listId, groups: [aGroup({ count: 3 })], steps: [aStep()] as never, taken: NOW });
const shop = aShop({ order: [anOrder()], line: [aLine({ quantity: 12 })], cutList: [list] });
const count = (of: Shop, by: number, step = 1) =>
  applyCommand(of, { do: 'floor.cut', listId, step, machineId: 'S1', by });
const counted = (of: Shop, by: number): Shop => {
  const edit = count(of, by);
  if (!edit.ok) throw new Error(edit.issues[0]?.message);
  return withChanges(of, edit.value.changes);
};
const refusal = (of: Shop, by: number, step?: number): string => {
  const edit = count(of, by, step);
  return edit.ok ? '' : (edit.issues[0]?.message ?? '');
};

describe('cuts counted at the shear', () => {
  it('add up, whoever counts, and go down again where one was a slip', () => {
    const twice = counted(counted(shop, 5), 5);
    expect(counted(twice, -1).cutCount).toMatchObject([{ id: `${listId}#1`, listId, step: 1, made: 9 }]);
  });

  it('are never more than the step asks, nor fewer than none', () => {
    expect(refusal(counted(shop, 10), 5)).toBe(
      'Step 1 of run 1042/1 has 12 cuts, and 10 are counted: 15 cannot be.',
    );
    expect(refusal(shop, -1)).toMatch(/0 are counted: -1 cannot be/);
  });

  it('are of a list whose sheets are issued, since any other may be planned again meanwhile', () => {
    const open = aShop({ ...shop, cutList: [{ ...list, taken: null }] });
    expect(refusal(open, 1)).toBe('No sheets are issued by this list of run 1042/1.');
    expect(refusal(shop, 1, 7)).toBe('Run 1042/1 has no step 7.');
  });

  it('are a fact: no undo of a desk takes them away', () => {
    expect(isFact({ do: 'floor.cut' })).toBe(true);
  });
});
