import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { cutListOf, moveStep } from '../../../core/edit/cutting-steps.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import { cutList } from '../../../core/shop/stock.ts';
import { aShop } from '../../support/builders.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';

const numbered = (count: number) => Array.from({ length: count }, (_, n) => aStep({ number: n + 1 }));

describe('a step moved in its list', () => {
  it('stands where it was put, the others keep their order, and moving it back restores the list', () => {
    const places = fc
      .integer({ min: 1, max: 12 })
      .chain((count) =>
        fc.record({ count: fc.constant(count), from: fc.nat(count - 1), to: fc.nat(count - 1) }),
      );
    fc.assert(
      fc.property(places, ({ count, from, to }) => {
        const steps = numbered(count);
        const moved = moveStep(steps, from, to);
        expect(moved[to]).toBe(steps[from]);
        expect(moved.filter((step) => step !== steps[from])).toEqual(steps.filter((_, at) => at !== from));
        expect(moveStep(moved, to, from)).toEqual(steps);
      }),
    );
  });

  it('stays where it is when there is no such step', () => {
    expect(moveStep(numbered(3), 5, 0)).toEqual(numbered(3));
  });
});

describe('a changed list', () => {
  const list = cutListOf('1042/1', ['1042/1'], [aGroup()], numbered(2), 0);

  it('is a row that can be kept', () => {
    expect(cutList.safeParse(list).success).toBe(true);
    expect(list.taken).toBeNull();
  });

  it('is kept, changed and given up, and each is undone', () => {
    const shop = aShop();
    const save = applyCommand(shop, { do: 'cutting.save', list, label: 'Move step 1' });
    if (!save.ok) throw new Error('refused');
    const kept = withChanges(shop, save.value.changes);
    expect(kept.cutList).toEqual([{ ...list, revision: 1 }]);
    expect(withChanges(kept, invert(save.value.changes))).toEqual(shop);
    const anew = applyCommand(kept, { do: 'cutting.remove', id: '1042/1' });
    if (!anew.ok) throw new Error('refused');
    expect(withChanges(kept, anew.value.changes).cutList).toEqual([]);
    expect(withChanges(withChanges(kept, anew.value.changes), invert(anew.value.changes))).toEqual(kept);
  });

  it('does not write over one that someone changed meanwhile', () => {
    const shop = aShop({ cutList: [aCutList({ revision: 3 })] });
    expect(applyCommand(shop, { do: 'cutting.save', list, label: 'Move step 1' })).toMatchObject({
      ok: false,
      issues: [{ message: 'The step list of 1042/1 was added or changed meanwhile.' }],
    });
  });

  it('cannot be given up where none stands', () => {
    expect(applyCommand(aShop(), { do: 'cutting.remove', id: '1042/1' })).toMatchObject({ ok: false });
  });
});
