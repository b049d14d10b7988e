import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aShear, aShop } from '../../support/builders.ts';
import { finish, monday, start } from '../../support/floor-commands.ts';
import { after, editOf, refusalOf } from '../../support/edits.ts';

type Correct = Extract<Command, { do: 'floor.correct' }>;
const correct = (patch: Correct['patch'], operation = '1042/1:shear', reason = 'Pressed late'): Command => ({
  do: 'floor.correct',
  operation,
  at: monday('12:00'),
  patch,
  reason,
});
const recordOf = (shop: Shop, id = '1042/1:shear') => shop.record.find((r) => r.id === id);
const linesOf = (shop: Shop) =>
  shop.line.filter((l) => l.orderId === '1042').map((l) => [l.number, l.quantity, l.status]);

/** Line 1042/1 is sheared 07:00–07:40; 1043/1 after it, 07:40–08:10. */
const plain = aShop({
  machine: [...aShop().machine, aShear({ id: 'S2' })],
  order: [anOrder(), anOrder({ id: '1043' })],
  line: [aLine(), aLine({ orderId: '1043' })],
});
const sheared = after(plain, start('1042/1:shear', 'S1', '07:00'), finish('1042/1:shear', '07:40', 18, 2));
const both = after(sheared, start('1043/1:shear', 'S1', '07:40'), finish('1043/1:shear', '08:10', 20));

describe('a wrong record', () => {
  it('is put right in its times, machine and changeover, and the reason is kept', () => {
    const edit = editOf(
      both,
      correct({ start: monday('06:50'), end: monday('07:35'), changeoverSeconds: 300 }),
    );
    expect(edit.label).toBe(
      'Correct 1042/1 shearing: start Mon 30 Nov 06:50, end Mon 30 Nov 07:35, changeover 5 min (Pressed late)',
    );
    const right = after(both, correct({ start: monday('06:50'), end: monday('07:35') }));
    expect(recordOf(right)).toMatchObject({ start: monday('06:50'), end: monday('07:35'), good: 18 });
    expect(recordOf(after(both, correct({ machineId: 'S2' })))?.machineId).toBe('S2');
  });

  it('may be of work under way, counts too', () => {
    const running = after(plain, start('1042/1:shear', 'S1', '07:00'));
    const right = after(running, correct({ start: monday('06:40'), good: 3 }));
    expect(recordOf(right)).toMatchObject({ start: monday('06:40'), good: 3, end: null });
    expect(refusalOf(running, correct({ end: monday('07:20') }))).toMatch(
      /still under way\. Report it done instead/,
    );
    expect(refusalOf(running, correct({ good: 21 }))).toMatch(/makes 20 pieces, so 21 cannot be good/);
  });

  it('leaves no trace where nothing changes', () => {
    expect(editOf(both, correct({ start: monday('07:00') })).changes).toEqual([]);
  });

  it.each([
    [
      'an end before the start',
      { end: monday('06:59') },
      /would end at .* 06:59, before it starts at .* 07:00/,
    ],
    ['a time still to come', { end: monday('12:01') }, /12:01 is still to come/],
    ['an end that is none', { end: null }, /is done\. Take back that it was reported done instead/],
    [
      'other work on the machine',
      { end: monday('07:50') },
      /S1 was at work on 1043\/1 shearing then, from .* 07:40/,
    ],
    ['a machine of the other stage', { machineId: 'B1' }, /B1 is no shear\. Choose one of S1, S2/],
    ['no machine at all', { machineId: 'S9' }, /There is no machine S9/],
    ['more good ones than were to be made', { good: 21 }, /makes 20 pieces, so 21 cannot be good/],
    ['pieces that are neither', { good: 15 }, /3 of 20 pieces .* would be neither good nor scrapped/],
    [
      'a pause outside the work',
      { pauses: [{ from: monday('07:30'), to: monday('07:50'), reason: 'Sheets' }] },
      /The pause of .* at .* 07:30 would lie outside its work/,
    ],
  ])('is refused with %s', (_, patch, sentence) => {
    expect(refusalOf(both, correct(patch))).toMatch(sentence);
  });

  it('is refused for an operation without a record', () => {
    expect(refusalOf(plain, correct({ good: 3 }))).toMatch(/Nothing is recorded of 1042\/1 shearing/);
  });

  it('may lie in time that other work was set aside', () => {
    const aside = after(
      plain,
      start('1042/1:shear', 'S1', '07:00'),
      { do: 'floor.pause', operation: '1042/1:shear', at: monday('07:10'), reason: 'Rush' },
      { do: 'floor.suspend', operation: '1042/1:shear', good: 0, scrapped: 0 },
      start('1043/1:shear', 'S1', '07:15'),
      finish('1043/1:shear', '07:40', 20),
      { do: 'floor.resume', operation: '1042/1:shear', at: monday('07:45') },
    );
    const other = correct({ start: monday('07:12') }, '1043/1:shear');
    expect(recordOf(after(aside, other), '1043/1:shear')?.start).toBe(monday('07:12'));
    expect(refusalOf(aside, correct({ start: monday('07:05') }, '1043/1:shear'))).toMatch(
      /1042\/1 shearing then/,
    );
    expect(refusalOf(aside, correct({ end: monday('07:50') }, '1043/1:shear'))).toMatch(
      /1042\/1 shearing then/,
    );
  });

  it('keeps bending after its blanks', () => {
    const bending = after(sheared, start('1042/1:brake', 'B1', '07:45'));
    expect(refusalOf(bending, correct({ start: monday('07:30') }, '1042/1:brake'))).toMatch(
      /1042\/1 bending started at .* 07:30, before its blanks were there at .* 07:40/,
    );
  });
});

describe('a corrected count', () => {
  it('has fewer made again when more were good', () => {
    expect(linesOf(sheared)).toEqual([
      [1, 20, 'open'],
      [2, 2, 'open'],
    ]);
    const one = after(sheared, correct({ good: 19, scrapped: 1 }));
    expect(linesOf(one)[1]).toEqual([2, 1, 'open']);
    expect(linesOf(after(one, correct({ good: 20, scrapped: 0 })))[1]).toEqual([2, 1, 'cancelled']);
  });

  it('has more made again when fewer were good, and opens the order for them', () => {
    const made = after(
      plain,
      start('1042/1:shear', 'S1', '07:00'),
      finish('1042/1:shear', '07:40', 20),
      start('1042/1:brake', 'B1', '07:40'),
      finish('1042/1:brake', '08:40', 20),
    );
    expect(made.order[0]).toMatchObject({ status: 'done' });
    const fewer = after(made, correct({ good: 17, scrapped: 3 }, '1042/1:brake'));
    expect(linesOf(fewer)).toEqual([
      [1, 20, 'done'],
      [2, 3, 'open'],
    ]);
    expect(fewer.order[0]).toMatchObject({ status: 'open', closedAt: null });
    expect(refusalOf(made, correct({ good: 17, scrapped: 3 }))).toMatch(
      /20 blanks of line 1042\/1 are bent already/,
    );
  });

  it('opens a line again that was done since every blank was scrapped', () => {
    const none = after(plain, start('1042/1:shear', 'S1', '07:00'), finish('1042/1:shear', '07:40', 0, 20));
    expect(linesOf(none)[0]).toEqual([1, 20, 'done']);
    const good = after(none, correct({ good: 20, scrapped: 0 }));
    expect(linesOf(good)).toEqual([
      [1, 20, 'open'],
      [2, 20, 'cancelled'],
    ]);
  });
});
