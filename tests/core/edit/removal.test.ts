import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import { removalEffects } from '../../../core/edit/removal-effects.ts';
import { completeQueues } from '../../../core/planning/complete-queues.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { sentence } from '../../../core/result.ts';
import {
  aBrake,
  aCalendar,
  aColour,
  aLine,
  aMaterial,
  anOrder,
  aPart,
  aQueue,
  aSheet,
  aShear,
  aShop,
  at,
  NOW,
} from '../../support/builders.ts';
import { aCutList, aGroup } from '../../support/stock-builders.ts';
import { after, editOf, refusalOf } from '../../support/edits.ts';

/** Three orders of corners; two shears, one brake; S1 has all the shearing. */
const shop = aShop({
  machine: [aBrake(), aShear(), aShear({ id: 'S2' })],
  downtime: [],
  order: ['1042', '1043', '1044'].map((id) => anOrder({ id })),
  line: ['1042', '1043', '1044'].map((orderId) => aLine({ orderId })),
  queue: [
    aQueue({ operations: ['1042/1:shear', '1043/1:shear', '1044/1:shear'] }),
    aQueue({ id: 'B1', operations: ['1042/1:brake'] }),
  ],
});
const said = (of: Shop, ...row: [Parameters<typeof removalEffects>[1], string]): string => {
  const effects = removalEffects(of, ...row);
  return effects.ok ? effects.value.join(' ') : `refused: ${sentence(effects.issues)}`;
};

describe('what removing a row does is said before it is done', () => {
  it('a machine’s planned operations move to others, behind what waits there', () => {
    expect(said(shop, 'machine', 'S1')).toBe(
      '3 planned operations move to S2, behind what waits there, by due date.',
    );
    const gone = after(shop, { do: 'row.remove', kind: 'machine', id: 'S1' });
    expect(completeQueues(gone, operationsOf(gone).operations).S2).toHaveLength(3);
  });

  it('or their lines can no longer be planned', () => {
    expect(said(shop, 'machine', 'B1')).toMatch(
      /^3 lines can no longer be planned: 1042\/1, 1043\/1, 1044\/1\. The shop has no brake\./,
    );
  });

  it('a machine’s published queue and its changeover go with it', () => {
    const more = {
      ...shop,
      published: [{ id: 'S1', operations: ['1042/1:shear'], revision: 0 }],
      changeover: [{ id: 'S1', operation: '1042/1:shear', since: NOW, revision: 0 }],
    };
    const kinds = editOf(more, { do: 'row.remove', kind: 'machine', id: 'S1' }).changes.map(
      ({ kind }) => kind,
    );
    expect(kinds.toSorted()).toEqual(['changeover', 'machine', 'published', 'queue']);
    expect(said(more, 'machine', 'S1')).toMatch(/The changeover under way on it is forgotten\./);
  });

  it('a sheet size: its pieces, the lines cut from it, the lists that name it', () => {
    const list = aCutList({ groups: [aGroup()] });
    expect(said({ ...shop, cutList: [list] }, 'sheet', 'galv-24-moss')).toBe(
      '40 on hand are no longer counted as stock. 3 lines can no longer be planned: 1042/1, 1043/1, 1044/1. ' +
        'Line 1042/1: no sheet size of 24 ga Moss green, Galvanized is kept. ' +
        'The changed steps of run 1042/1 name it and must be planned again.',
    );
    const other = { ...shop, sheet: [...shop.sheet, aSheet({ id: 'galv-24-moss-long', lengthMm: 3658 })] };
    expect(said(other, 'sheet', 'galv-24-moss')).toMatch(/3 lines are cut from another size instead/);
  });

  it('nothing, where nothing in the plan hangs on it; and why not, where it is refused', () => {
    expect(said(shop, 'part', 'flat-strip')).toBe('');
    expect(said(shop, 'colour', 'moss')).toMatch(/^refused: The colour moss is used by/);
  });
});

describe('a code that differs from another one only in capitals', () => {
  const day = aCalendar();
  const rows: Command[] = [
    { do: 'row.save', kind: 'part', row: aPart({ id: 'Corner' }) },
    { do: 'row.save', kind: 'machine', row: aShear({ id: 's1' }) },
    { do: 'row.save', kind: 'material', row: aMaterial({ id: 'GALV' }) },
    { do: 'row.save', kind: 'colour', row: aColour({ id: 'Moss' }) },
    { do: 'row.save', kind: 'sheet', row: aSheet({ id: 'Galv-24-moss' }) },
    { do: 'row.save', kind: 'calendar', row: { ...day, id: 'Day' } },
  ];

  it.each(rows)('is refused for a new row, and the other one is named: %o', (command) => {
    expect(refusalOf(shop, command)).toMatch(
      /differs from .*, which is there already, only in capitals\. Use /,
    );
  });

  it('is refused for a new order, typed or from a file', () => {
    const named = aShop({ order: [anOrder({ id: 'a12' })], line: [] });
    const order = anOrder({ id: 'A12', due: at('2026-12-10') });
    const line = aLine({ orderId: 'A12' });
    const words = /A12 differs from a12/;
    expect(refusalOf(named, { do: 'order.save', order, lines: [line], removed: [], at: NOW })).toMatch(words);
    const file = { do: 'orders.import', fileName: 'orders.csv', lines: [] } as const;
    expect(refusalOf(named, { ...file, orders: [order] })).toMatch(words);
    expect(refusalOf(shop, { ...file, orders: [anOrder({ id: 'b7' }), anOrder({ id: 'B7' })] })).toMatch(
      /B7 differs from b7/,
    );
  });
});
