import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aRecord, aShop, at } from '../../support/builders.ts';
import { checkedOf, readOrders } from './order-table.ts';

const HEADER = ['order', 'line', 'customer', 'part', 'quantity', 'gauge', 'colour', 'length', 'due', 'note'];
const line = (own: Partial<Record<(typeof HEADER)[number], string>> = {}): string[] => {
  const usual: Record<string, string> = {
    order: '1042',
    line: '1',
    customer: 'Invented Roofing',
    part: 'corner',
    quantity: '20',
    gauge: '24',
    colour: 'moss',
    length: '100',
    due: '2026-12-04',
    note: '',
  };
  return HEADER.map((name) => own[name] ?? usual[name] ?? '');
};
const two = [aLine(), aLine({ number: 2 })];
const shop = (own: Partial<Shop> = {}): Shop => aShop({ order: [anOrder()], line: two, ...own });
const read = (rows: string[][], of: Shop, accept: number[] = []) =>
  checkedOf(readOrders([HEADER, ...rows], of, { accept }));

/** The shop once the file is taken. */
function taken(rows: string[][], of: Shop): Shop {
  const { command } = readOrders([HEADER, ...rows], of);
  if (!command) return of;
  const applied = applyCommand(of, command);
  if (!applied.ok) throw new Error(JSON.stringify(applied.issues));
  return withChanges(of, applied.value.changes);
}

describe('a file that comes again', () => {
  it('lists the lines that it lacks, and leaves them as they are', () => {
    const { read: again, lines } = read([line({ quantity: '25' })], shop());
    expect(lines.map(({ id }) => id)).toEqual(['1042/1']);
    expect(again.reading.missing).toEqual([
      {
        id: '1042/2',
        words: 'Line 1042/2 (20 × corner) is in the shop and not in the file. It stays as it is.',
      },
    ]);
  });

  it('changes the order’s due date where all of its lines say the same', () => {
    const after = taken([line({ due: '2026-12-11' }), line({ line: '2', due: '2026-12-11' })], shop());
    expect(after.order[0]?.due).toBe(at('2026-12-11'));
    expect(after.line.map(({ due }) => due)).toEqual([null, null]);
  });

  it('changes only the line’s where it lacks other lines of the order', () => {
    const after = taken([line({ due: '2026-12-11' })], shop());
    expect(after.order[0]?.due).toBe(at('2026-12-04'));
    expect(after.line.map(({ due }) => due)).toEqual([at('2026-12-11'), null]);
  });

  it('brings each line its own note, or the order one where all say the same', () => {
    const own = taken([line({ note: 'at the gate' }), line({ line: '2' })], shop());
    expect([own.order[0]?.note, ...own.line.map(({ note }) => note)]).toEqual(['', 'at the gate', '']);
    const all = taken([line({ note: 'call' }), line({ line: '2', note: 'call' })], shop());
    expect([all.order[0]?.note, ...all.line.map(({ note }) => note)]).toEqual(['call', '', '']);
  });

  it('takes nothing away where a cell is empty', () => {
    const noted = shop({ line: [aLine({ note: 'gate' }), aLine({ number: 2 })] });
    expect(taken([line(), line({ line: '2' })], noted)).toBe(noted);
  });

  it.each([
    [
      'quantity, dates and notes that differ',
      [line({ quantity: '9', note: 'a' }), line({ line: '2', due: '2026-12-09' })],
    ],
    [
      'lines without numbers',
      [line({ line: '', quantity: '7' }), line({ order: '2001', line: '', due: '2026-12-20' })],
    ],
    [
      'a part more than one line has',
      [line({ order: '3', line: '' }), line({ order: '3', line: '', note: 'b' })],
    ],
  ])('with %s adds and changes nothing the second time', (_what, rows) => {
    const before = shop({ line: [aLine()] });
    const once = taken(rows, before);
    expect(once).not.toBe(before);
    expect(taken(rows, once)).toBe(once);
  });

  it('asks for a line number where several lines could be the one that changes', () => {
    expect(read([line({ line: '', quantity: '7' })], shop()).issues).toMatchObject([
      { column: 'line', reason: expect.stringMatching(/several lines that this row could change/) as string },
    ]);
  });
});

describe('a file that comes again after work has begun', () => {
  const begun = aRecord({ id: '1042/1:shear', end: null, good: 0 });
  const done = aRecord({ id: '1042/1:shear', good: 20, quantity: 20 });

  it('cannot change what was cut', () => {
    expect(read([line({ colour: 'bone' })], shop({ record: [begun] })).issues).toMatchObject([
      { column: 'colour', reason: expect.stringMatching(/cannot change any more/) as string },
    ]);
  });

  it('may change the due date', () => {
    const { of, lines } = read([line({ due: '2026-12-08' })], shop({ record: [begun] }));
    expect(of('changed')).toEqual([2]);
    expect(lines).toMatchObject([{ id: '1042/1', due: at('2026-12-08') }]);
  });

  it('does not make more pieces of a finished step a second time with each reading: they are refused', () => {
    const { issues, lines } = read([line({ quantity: '30' })], shop({ record: [done] }));
    expect(lines).toEqual([]);
    expect(issues).toMatchObject([
      { column: 'quantity', reason: expect.stringMatching(/made for 20 pieces already/) as string },
    ]);
  });
});

describe('a due date that is past', () => {
  it('is refused until someone says that it is meant', () => {
    const past = [line({ order: '2001', due: '2026-11-20' })];
    const refused = read(past, shop());
    expect(refused.issues).toMatchObject([
      { column: 'due', reason: expect.stringMatching(/is past/) as string },
    ]);
    expect(refused.read.reading.rows[0]?.cells.find(({ field }) => field === 'due')?.acceptable).toBe(true);
    expect(read(past, shop(), [2]).orders).toMatchObject([{ id: '2001', due: at('2026-11-20') }]);
  });
});
