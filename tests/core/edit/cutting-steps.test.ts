import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { groupOfStack, newStack, stacksOf } from '../../../core/cutting/stacks.ts';
import { addSheets, changeStep, cutListOf, moveStep, sheetsFor } from '../../../core/edit/cutting-steps.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import { cutList } from '../../../core/shop/stock.ts';
import { aSheet, aShop } from '../../support/builders.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';
import { inches } from '../../support/writing.ts';

const numbered = (count: number) => Array.from({ length: count }, (_, n) => aStep({ number: n + 1 }));

describe('the stacks of a list', () => {
  // Sheets crosscut to panels A1, panels ripped to strips A1a, strips crosscut to blanks.
  const steps = [
    aStep({
      number: 1,
      stack: 'A',
      to: { kind: 'stack', stack: 'A1' },
      rest: { kind: 'stack', stack: 'A2' },
    }),
    aStep({ number: 2, stack: 'A1', to: { kind: 'stack', stack: 'A1a' } }),
    aStep({ number: 3, stack: 'A1a' }),
  ];

  it('are also those that steps lay down: after the last step of a stack is taken out, one can be added for it again', () => {
    const without = steps.slice(0, 2);
    expect(stacksOf([{ id: 'A' }], without)).toEqual(['A', 'A1', 'A2', 'A1a']);
    expect(groupOfStack([{ id: 'A' }, { id: 'B' }], without, 'A1a')).toBe('A');
  });

  it('get a name that none has yet', () => {
    expect(newStack([{ id: 'A' }], steps, 'A1')).toBe('A3');
  });
});

describe('a step changed in its list', () => {
  it('says what is left of its stack for all steps of that stack, and leaves the others alone', () => {
    const steps = [aStep({ number: 1, rest: null }), aStep({ number: 2 }), aStep({ number: 3, stack: 'B' })];
    const rest = { kind: 'stack', stack: 'A9' } as const;
    const changed = { ...steps[0]!, sizeMm: 120, backGaugeMm: 120, cutsEach: 2, rest };
    expect(changeStep(steps, 0, changed)).toEqual([changed, { ...steps[1]!, rest }, steps[2]]);
  });
});

describe('sheets of a list', () => {
  it('are added under the next letter, not yet cut', () => {
    const [, added] = addSheets([aGroup()], aSheet({ costCents: 7000 }), 3);
    expect(added).toMatchObject({ id: 'B', stockId: 'galv-24-moss', count: 3, costCents: 7000, blanks: [] });
  });

  it('become those of the same size of another metal, or the size is named that it has not', () => {
    const red = aSheet({ id: 'red', colourId: 'red', costCents: 9000 });
    const laid = sheetsFor([aGroup({ count: 2 })], [red], inches);
    expect(laid).toMatchObject({ ok: true, value: [{ id: 'A', stockId: 'red', count: 2, costCents: 9000 }] });
    const none = sheetsFor([aGroup()], [{ ...red, lengthMm: 2438.4 }], inches);
    expect(!none.ok && none.issues[0]?.message).toContain('no sheet of 48 in × 120 in');
  });
});

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
