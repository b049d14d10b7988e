import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { nextLineNumber } from '../../../core/shop/line-number.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aRecord, aShop, at, NOW } from '../../support/builders.ts';
import { after, editOf, issuesOf, refusalOf } from '../../support/edits.ts';

const monday = (clock: string) => at('2026-11-30', clock);
type Save = Extract<Command, { do: 'order.save' }>;
/** The dialog's command: what it read of the order, and only the lines that were changed on it. */
const save = (read: Shop, own: Partial<Save> = {}): Save => ({
  do: 'order.save',
  order: read.order.find(({ id }) => id === '1042')!,
  lines: [],
  removed: [],
  at: NOW,
  ...own,
});
const lineOf = (shop: Shop, id: string) => shop.line.find((line) => line.id === id);
const orderOf = (shop: Shop, id = '1042') => shop.order.find((order) => order.id === id);

/** Two lines; the floor has made the first, with two scrapped, which stand as line 3. */
const read = aShop({ order: [anOrder()], line: [aLine(), aLine({ number: 2, quantity: 8 })] });
const work = (line: string, scrapped: number): Command[] => [
  {
    do: 'floor.start',
    operation: `${line}:shear`,
    machineId: 'S1',
    at: monday('07:00'),
    changeoverSeconds: null,
  },
  { do: 'floor.done', operation: `${line}:shear`, at: monday('07:40'), good: 20 - scrapped, scrapped },
  {
    do: 'floor.start',
    operation: `${line}:brake`,
    machineId: 'B1',
    at: monday('07:40'),
    changeoverSeconds: null,
  },
  { do: 'floor.done', operation: `${line}:brake`, at: monday('08:40'), good: 20 - scrapped, scrapped: 0 },
];
const finished = after(read, ...work('1042/1', 2));

describe('an order saved from a dialog that was opened before the floor went on', () => {
  it('leaves alone the lines that it does not name: the finished one stays done, its remake stays', () => {
    const changed = { ...lineOf(read, '1042/2')!, quantity: 10 };
    const saved = after(finished, save(read, { lines: [changed] }));
    expect(lineOf(saved, '1042/1')).toEqual(lineOf(finished, '1042/1'));
    expect(lineOf(saved, '1042/3')).toMatchObject({ makeUpFor: '1042/1', quantity: 2 });
    expect(lineOf(saved, '1042/2')?.quantity).toBe(10);
  });

  it('is refused where it would write over the finished line, and shows both versions', () => {
    const mine = { ...lineOf(read, '1042/1')!, quantity: 24 };
    const [issue] = issuesOf(finished, save(read, { lines: [mine] }));
    expect(issue).toMatchObject({
      field: 'revision',
      message: 'The line 1042/1 was added or changed meanwhile.',
    });
    expect(issue?.conflict).toEqual({ kind: 'line', id: '1042/1', mine, theirs: lineOf(finished, '1042/1') });
  });

  it('is refused where it removes a line that was changed since', () => {
    const newer = after(read, save(read, { lines: [{ ...lineOf(read, '1042/2')!, quantity: 10 }] }));
    const stale = save(newer, { removed: [{ id: '1042/2', revision: 0 }] });
    expect(issuesOf(newer, stale)[0]?.conflict).toEqual({
      kind: 'line',
      id: '1042/2',
      mine: null,
      theirs: lineOf(newer, '1042/2'),
    });
  });

  it('is refused where somebody else has added a line of the same number', () => {
    const third = aLine({ number: 3 });
    const newer = after(read, save(read, { lines: [third] }));
    expect(refusalOf(newer, save(newer, { lines: [{ ...third, quantity: 5 }] }))).toMatch(
      /line 1042\/3 was added or changed meanwhile/,
    );
  });

  it('changes nothing where it says what stands already', () => {
    expect(editOf(read, save(read, { lines: [...read.line] })).changes).toEqual([]);
  });
});

describe('lines that go', () => {
  it('are named; one with work on record is cancelled instead, so is a remake', () => {
    const without = after(read, save(read, { removed: [{ id: '1042/2', revision: 0 }] }));
    expect(without.line.map(({ id }) => id)).toEqual(['1042/1']);
    const gone = (id: string) =>
      refusalOf(finished, save(finished, { removed: [{ id, revision: lineOf(finished, id)!.revision }] }));
    expect(gone('1042/1')).toMatch(/Work on line 1042\/1 has started.*cancelled instead/);
    expect(gone('1042/3')).toMatch(/1042\/3 makes scrapped pieces of line 1042\/1 again.*cancelled instead/);
  });

  it('leave at least one', () => {
    const removed = read.line.map(({ id, revision }) => ({ id, revision }));
    expect(refusalOf(read, save(read, { removed }))).toMatch(/no line would be left/);
  });

  it('that are gone already are no trouble', () => {
    expect(editOf(read, save(read, { removed: [{ id: '1042/9', revision: 4 }] })).changes).toEqual([]);
  });
});

describe('when an order closed', () => {
  const as = (status: 'open' | 'held' | 'done' | 'cancelled') => (shop: Shop, clock: string) =>
    after(shop, save(shop, { order: { ...orderOf(shop)!, status }, at: monday(clock) }));

  it('is kept as it is done or cancelled, and forgotten as it is opened again', () => {
    const cancelled = as('cancelled')(read, '09:00');
    expect(orderOf(cancelled)?.closedAt).toBe(monday('09:00'));
    const noted = after(
      cancelled,
      save(cancelled, { order: { ...orderOf(cancelled)!, note: 'Paid' }, at: monday('10:00') }),
    );
    expect(orderOf(noted)?.closedAt).toBe(monday('09:00'));
    expect(orderOf(as('open')(noted, '11:00'))?.closedAt).toBeNull();
  });

  it('is the moment the floor finishes the last of it', () => {
    const one = aShop({ order: [anOrder()], line: [aLine()] });
    expect(orderOf(after(one, ...work('1042/1', 0)))).toMatchObject({
      status: 'done',
      closedAt: monday('08:40'),
    });
  });
});

describe('a line number with work on record', () => {
  /** Line 2 is gone; what was done of it is on record. */
  const used = aShop({
    order: [anOrder()],
    line: [aLine()],
    record: [aRecord({ id: '1042/2:shear', start: monday('06:00'), end: monday('06:30') })],
  });

  it('is no number for a new line, by whatever way it comes; the next free one is named', () => {
    const line = aLine({ number: 2 });
    const words = /Work on a line 1042\/2 is on record.*Give it number 3/;
    expect(refusalOf(used, save(used, { lines: [line] }))).toMatch(words);
    expect(refusalOf(used, { do: 'line.save', line })).toMatch(words);
    expect(
      refusalOf(used, { do: 'orders.import', fileName: 'orders.csv', orders: [], lines: [line] }),
    ).toMatch(words);
    expect(nextLineNumber(used, '1042')).toBe(3);
    expect(nextLineNumber(used, '104')).toBe(1);
  });

  it('is passed over by the line that makes scrapped pieces again', () => {
    const scrapped = after(used, ...work('1042/1', 2));
    expect(scrapped.line.map(({ id }) => id)).toEqual(['1042/1', '1042/3']);
  });

  it('stays so when raw records are brought in for a line that is to come', () => {
    const bare = aShop({ order: [anOrder()], line: [aLine()] });
    const record = aRecord({ id: '1042/2:shear', end: monday('07:30') });
    const brought = after(bare, { do: 'records.import', fileName: 'work.csv', records: [record] });
    expect(refusalOf(brought, { do: 'line.save', line: aLine({ number: 2 }) })).toMatch(/is on record/);
  });
});

it('no sequence of saves from stale dialogs loses a record, a remake or a line with work', () => {
  const step = fc.record({
    /** How many shops ago the dialog was opened. */
    age: fc.nat(3),
    line: fc.constantFrom(1, 2, 3, 4),
    what: fc.constantFrom('change', 'remove', 'cancel', 'work'),
    quantity: fc.integer({ min: 1, max: 40 }),
  });
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
      const past = [read];
      for (const { age, line: number, what, quantity } of steps) {
        const now = past.at(-1)!;
        const seen = past.at(-1 - Math.min(age, past.length - 1))!;
        const id = `1042/${number}`;
        const line = lineOf(seen, id) ?? aLine({ number });
        const command: Command =
          what === 'work'
            ? {
                do: 'floor.start',
                operation: `${id}:shear`,
                machineId: 'S1',
                at: monday('07:00'),
                changeoverSeconds: null,
              }
            : what === 'remove'
              ? save(seen, { removed: [{ id, revision: line.revision }] })
              : save(seen, {
                  lines: [{ ...line, ...(what === 'cancel' ? { status: 'cancelled' } : { quantity }) }],
                });
        const edit = applyCommand(now, command);
        const next = edit.ok ? withChanges(now, edit.value.changes) : now;
        for (const { id: record } of now.record)
          expect(next.record.some((other) => other.id === record)).toBe(true);
        for (const kept of now.line)
          if (kept.makeUpFor !== null || now.record.some((r) => r.id.startsWith(`${kept.id}:`)))
            expect(lineOf(next, kept.id)).toBeDefined();
        past.push(next);
      }
    }),
    { numRuns: 100 },
  );
});

it('a row changes once in an edit, however many rules had their say about it', () => {
  const flat = aShop({ order: [anOrder()], line: [aLine({ partId: 'flat-strip' })] });
  const one = after(flat, {
    do: 'floor.start',
    operation: '1042/1:shear',
    machineId: 'S1',
    at: monday('07:00'),
    changeoverSeconds: null,
  });
  const cancelled = after(one, save(one, { order: { ...orderOf(one)!, status: 'cancelled' } }), {
    do: 'floor.done',
    operation: '1042/1:shear',
    at: monday('07:20'),
    good: 12,
    scrapped: 0,
  });
  const opened = save(cancelled, {
    order: { ...orderOf(cancelled)!, status: 'open' },
    lines: [{ ...lineOf(cancelled, '1042/1')!, overrun: 2 }],
  });
  const { changes } = editOf(cancelled, opened);
  expect(changes.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
    'order 1042',
    'line 1042/1',
    'line 1042/2',
  ]);
  expect(lineOf(after(cancelled, opened), '1042/1')).toMatchObject({ status: 'done', overrun: 2 });
  expect(withChanges(after(cancelled, opened), invert(changes)).line).toEqual(cancelled.line);
});
