import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { invert, sameContent, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aPin, aRecord, aShop, someSettings } from '../../support/builders.ts';
import { finish, monday, start } from '../../support/floor-commands.ts';

/** One order of twenty corners (shear, then brake), and a second order waiting. */
const shop = aShop({
  order: [anOrder(), anOrder({ id: '1043' })],
  line: [aLine(), aLine({ orderId: '1043' })],
});

function done(before: Shop, ...commands: Command[]): Shop {
  return commands.reduce((now, command) => {
    const edit = applyCommand(now, command);
    if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
    const next = withChanges(now, edit.value.changes);
    const back = withChanges(next, invert(edit.value.changes));
    for (const { kind, id, before: stood } of edit.value.changes) {
      const row = kind === 'settings' ? back.settings : back[kind].find((r) => r.id === id);
      expect(sameContent(row ?? null, stood), `undo brings back ${kind} ${id}`).toBe(true);
    }
    return next;
  }, before);
}

function refusal(before: Shop, command: Command): string {
  const edit = applyCommand(before, command);
  if (edit.ok) throw new Error(`not refused: ${edit.value.label}`);
  return edit.issues.map((p) => `${p.message} ${p.advice}`).join(' ');
}

const count = (operation: string, good: number, scrapped = 0): Command => ({
  do: 'floor.count',
  operation,
  good,
  scrapped,
});
const pause = (operation: string, clock: string): Command => ({
  do: 'floor.pause',
  operation,
  at: monday(clock),
  reason: ' No sheets ',
});
const resume = (operation: string, clock: string): Command => ({
  do: 'floor.resume',
  operation,
  at: monday(clock),
});

/** The same with a time that was typed in, not that of the press. */
const given = (command: Command) => ({ ...command, given: true }) as Command;

const recordOf = (s: Shop, id: string) => s.record.find((r) => r.id === id);
const lineOf = (s: Shop, id: string) => s.line.find((l) => l.id === id);

describe('starting an operation', () => {
  it('opens its record with what the standards say it takes', () => {
    const after = done(shop, {
      ...(start('1042/1:shear', 'S1', '07:10') as Extract<Command, { do: 'floor.start' }>),
      changeoverSeconds: 420,
    });
    expect(recordOf(after, '1042/1:shear')).toMatchObject({
      machineId: 'S1',
      quantity: 20,
      good: 0,
      start: monday('07:10'),
      end: null,
      changeoverSeconds: 420,
      who: [],
      pauses: [],
    });
    expect(recordOf(after, '1042/1:shear')?.estimatedSeconds).toBeGreaterThan(0);
  });

  it('is refused while another one is under way on the machine', () => {
    const busy = done(shop, start('1042/1:shear', 'S1', '07:00'));
    expect(refusal(busy, start('1043/1:shear', 'S1', '08:00'))).toMatch(
      /1042\/1 shearing is still under way on S1\. Report it done first/,
    );
    expect(refusal(busy, start('1042/1:shear', 'S1', '08:00'))).toMatch(/was already started on S1/);
  });

  it('is refused on a machine of the other stage, and for an operation that is not open', () => {
    expect(refusal(shop, start('1042/1:shear', 'B1', '07:00'))).toMatch(/cannot go to B1/);
    expect(refusal(shop, start('9999/1:shear', 'S1', '07:00'))).toMatch(/9999\/1 shearing is not open/);
  });

  it('is refused before the machine was free', () => {
    const after = done(shop, start('1042/1:shear', 'S1', '07:00'), finish('1042/1:shear', '07:40', 20));
    expect(refusal(after, given(start('1043/1:shear', 'S1', '07:30')))).toMatch(
      /S1 was at work on 1042\/1 shearing until Mon 30 Nov 07:40/,
    );
    expect(recordOf(done(after, start('1043/1:shear', 'S1', '07:40')), '1043/1:shear')?.end).toBeNull();
  });

  it('at the brake waits until the blanks are sheared', () => {
    expect(refusal(shop, start('1042/1:brake', 'B1', '07:00'))).toMatch(
      /blanks of line 1042\/1 are not sheared yet/,
    );
    const cutting = done(shop, start('1042/1:shear', 'S1', '07:00'), count('1042/1:shear', 15));
    expect(refusal(cutting, start('1042/1:brake', 'B1', '07:30'))).toMatch(
      /15 of 20 blanks of line 1042\/1 are sheared; bending starts with 20/,
    );
    const cut = done(cutting, finish('1042/1:shear', '07:40', 5));
    expect(refusal(cut, given(start('1042/1:brake', 'B1', '07:30')))).toMatch(/were not there yet/);
    expect(recordOf(done(cut, start('1042/1:brake', 'B1', '07:40')), '1042/1:brake')).toBeDefined();
  });

  it('at the brake waits for the first transfer lot where lots are passed on', () => {
    const lots = { ...shop, settings: someSettings({ transferShare: 0.4 }) };
    const few = done(lots, start('1042/1:shear', 'S1', '07:00'), count('1042/1:shear', 7));
    expect(refusal(few, start('1042/1:brake', 'B1', '07:30'))).toMatch(/bending starts with 8/);
    const enough = done(few, count('1042/1:shear', 1));
    expect(recordOf(done(enough, start('1042/1:brake', 'B1', '07:30')), '1042/1:brake')).toBeDefined();
  });
});

describe('pausing', () => {
  const started = done(shop, start('1042/1:shear', 'S1', '07:00'));

  it('keeps since when and why, and until when', () => {
    const after = done(started, pause('1042/1:shear', '07:20'), resume('1042/1:shear', '07:50'));
    expect(recordOf(after, '1042/1:shear')?.pauses).toEqual([
      { from: monday('07:20'), to: monday('07:50'), reason: 'No sheets' },
    ]);
  });

  it('twice, or resuming what runs, is refused', () => {
    expect(refusal(done(started, pause('1042/1:shear', '07:20')), pause('1042/1:shear', '07:30'))).toMatch(
      /paused already/,
    );
    expect(refusal(started, resume('1042/1:shear', '07:30'))).toMatch(/is not paused/);
    expect(refusal(shop, pause('1042/1:shear', '07:30'))).toMatch(/has not started/);
  });

  it('ends when the operation is reported done', () => {
    const after = done(started, pause('1042/1:shear', '07:20'), finish('1042/1:shear', '08:00', 20));
    expect(recordOf(after, '1042/1:shear')?.pauses[0]?.to).toBe(monday('08:00'));
  });
});

describe('counting', () => {
  const started = done(shop, start('1042/1:shear', 'S1', '07:00'));

  it('adds what is counted, and leaves no trace of nothing', () => {
    const after = done(started, count('1042/1:shear', 12, 2));
    expect(recordOf(after, '1042/1:shear')).toMatchObject({ good: 12, scrapped: 2 });
    const again = applyCommand(after, count('1042/1:shear', 0, 0));
    expect(again.ok && again.value.changes).toEqual([]);
  });

  it('never has more good pieces than are asked for', () => {
    expect(refusal(started, count('1042/1:shear', 21))).toMatch(/makes 20 pieces, so 21 cannot be good/);
  });
});

describe('reporting an operation done', () => {
  const started = done(shop, start('1042/1:shear', 'S1', '07:00'));
  const sheared = done(started, finish('1042/1:shear', '07:40', 20));
  const bending = done(sheared, start('1042/1:brake', 'B1', '07:45'));

  it('closes the record and leaves the machine set up as it was', () => {
    expect(recordOf(sheared, '1042/1:shear')).toMatchObject({ good: 20, end: monday('07:40') });
    expect(sheared.machine.find((m) => m.id === 'S1')?.state).toEqual({
      material: 'galv',
      gauge: '24',
      colour: 'moss',
    });
    expect(sheared.machine.find((m) => m.id === 'B1')).toEqual(shop.machine.find((m) => m.id === 'B1'));
  });

  it('ends the line when nothing of it is left, and the order with its last line', () => {
    expect(lineOf(sheared, '1042/1')?.status).toBe('open');
    const bent = done(bending, finish('1042/1:brake', '09:00', 20));
    expect(lineOf(bent, '1042/1')?.status).toBe('done');
    expect(bent.order.find((o) => o.id === '1042')?.status).toBe('done');
    expect(bent.order.find((o) => o.id === '1043')?.status).toBe('open');
  });

  it('makes scrapped pieces again as a line of the same order, which stays open', () => {
    const bent = done(bending, finish('1042/1:brake', '09:00', 18, 2));
    expect(lineOf(bent, '1042/2')).toEqual({
      ...aLine({ number: 2, quantity: 2 }),
      makeUpFor: '1042/1',
      revision: 1,
    });
    expect(bent.order.find((o) => o.id === '1042')?.status).toBe('open');
  });

  it('makes nothing again when the scrapped pieces were replaced at once', () => {
    const bent = done(bending, finish('1042/1:brake', '09:00', 20, 2));
    expect(bent.line.map((l) => l.id)).toEqual(['1042/1', '1043/1']);
  });

  it('asks the brake only for the blanks that the shear left good', () => {
    const short = done(started, finish('1042/1:shear', '07:40', 17, 3), start('1042/1:brake', 'B1', '07:45'));
    expect(recordOf(short, '1042/1:brake')?.quantity).toBe(17);
    expect(refusal(short, finish('1042/1:brake', '09:00', 18))).toMatch(/makes 17 pieces/);
    const bent = done(short, finish('1042/1:brake', '09:00', 17));
    expect(bent.line.filter((l) => l.makeUpFor === '1042/1').map((l) => l.quantity)).toEqual([3]);
  });

  it('ends the line at the shear when every blank was scrapped', () => {
    const none = done(started, finish('1042/1:shear', '07:40', 0, 20));
    expect(lineOf(none, '1042/1')?.status).toBe('done');
    expect(lineOf(none, '1042/2')).toMatchObject({ quantity: 20, status: 'open' });
  });

  it('asks for pieces that are neither good nor scrapped', () => {
    expect(refusal(started, finish('1042/1:shear', '07:40', 15, 2))).toMatch(
      /3 of 20 pieces of 1042\/1 shearing are neither good nor scrapped/,
    );
  });

  it('is refused before it began, and twice', () => {
    expect(refusal(started, given(finish('1042/1:shear', '06:40', 20)))).toMatch(
      /was started at .* is before that/,
    );
    expect(refusal(sheared, finish('1042/1:shear', '08:00', 20))).toMatch(/was done at Mon 30 Nov 07:40/);
    expect(refusal(shop, finish('1042/1:shear', '08:00', 20))).toMatch(/has not started/);
  });

  it('takes its pin away', () => {
    const pinned = { ...started, pin: [aPin()] };
    expect(done(pinned, finish('1042/1:shear', '07:40', 20)).pin).toEqual([]);
  });

  it('works for an operation whose line was cancelled meanwhile', () => {
    const cancelled = { ...started, line: [aLine({ status: 'cancelled' })] };
    const after = done(cancelled, finish('1042/1:shear', '07:40', 20));
    expect(lineOf(after, '1042/1')?.status).toBe('cancelled');
  });

  it('says so when the order has no number left for pieces to make again', () => {
    const full = {
      ...started,
      line: [aLine(), aLine({ number: 9999 })],
    };
    expect(refusal(full, finish('1042/1:shear', '07:40', 19, 1))).toMatch(/no line number left for the 1/);
  });
});

describe('finished operations from a file', () => {
  const old = aRecord({ id: '901/1:shear' });

  it('are added as they stand', () => {
    const after = done(shop, { do: 'records.import', fileName: 'old.csv', records: [old] });
    expect(after.record).toEqual([{ ...old, revision: 1 }]);
  });

  it('are refused when they are recorded already, unfinished, or of a line in the shop', () => {
    const take = (...records: (typeof old)[]): Command => ({
      do: 'records.import',
      fileName: 'old.csv',
      records,
    });
    expect(refusal(shop, take(old, old))).toMatch(/901\/1 shearing is recorded already/);
    expect(refusal(shop, take({ ...old, end: null }))).toMatch(/does not end after it starts/);
    expect(refusal(shop, take(aRecord()))).toMatch(/Line 1042\/1 is still in the shop/);
  });
});
