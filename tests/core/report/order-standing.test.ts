import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import { orderStanding, progressIn } from '../../../core/report/order-standing.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aShop, at } from '../../support/builders.ts';
import { after } from '../../support/edits.ts';
import { finish, monday, start } from '../../support/floor-commands.ts';

const shop = aShop({
  order: [anOrder({ due: at('2026-12-04') })],
  line: [aLine({ quantity: 40 }), aLine({ number: 2, quantity: 40 })],
  queue: [aQueue({ operations: ['1042/1:shear', '1042/2:shear'] })],
});
const count = (operation: string, good: number): Command => ({
  do: 'floor.count',
  operation,
  good,
  scrapped: 0,
});
const pause: Command = { do: 'floor.pause', operation: '1042/1:shear', at: monday('07:20'), reason: 'blade' };
const progress = (...done: Command[]) => progressIn(after(shop, ...done))(shop.line[0]!);
const shearing = [start('1042/1:shear', 'S1', '07:00'), count('1042/1:shear', 12)];
const sheared = [start('1042/1:shear', 'S1', '07:00'), finish('1042/1:shear', '07:30', 40)];

describe('how far a line is', () => {
  it('is told from what the floor reported', () => {
    expect(progress()).toBe('waiting');
    expect(progress(...shearing)).toBe('shearing 12/40');
    expect(progress(...sheared)).toBe('sheared');
    expect(progress(...sheared, start('1042/1:brake', 'B1', '07:30'))).toBe('bending 0/40');
  });

  it('says that work stands still', () => {
    expect(progress(...shearing, pause)).toBe('shearing 12/40, paused');
    const aside: Command = { do: 'floor.suspend', operation: '1042/1:shear', good: 0, scrapped: 0 };
    expect(progress(...shearing, pause, aside)).toBe('shearing 12/40, suspended');
  });

  it('counts blanks beyond the pieces at the shear, as the floor does', () => {
    const extra = { ...shop, settings: { ...shop.settings, extraBlanks: { setUp: 2, scrapShare: 0 } } };
    expect(progressIn(after(extra, ...shearing))(shop.line[0]!)).toBe('shearing 12/42');
  });
});

describe('a work order as a whole', () => {
  const stands = (of: Shop, ends: Record<string, number> | null) =>
    orderStanding(of, of.order[0]!, ends && { ends });
  const thursday = at('2026-12-03', '15:00');

  it('says how many of its lines are how far', () => {
    expect(stands(after(shop, ...shearing), null).progress).toBe('2 lines: 1 shearing 12/40, 1 waiting');
    const one = aShop({ order: [anOrder()], line: [aLine()] });
    expect(stands(one, null).progress).toBe('1 line: waiting');
  });

  it('is done when its last line is, against its due date', () => {
    expect(stands(shop, { '1042/1': at('2026-12-01'), '1042/2': thursday })).toMatchObject({
      date: 'All of it is planned to be done Thu 3 Dec 15:00, 26 h before its due date Fri 4 Dec 17:00.',
      late: false,
    });
    expect(stands(shop, { '1042/1': thursday, '1042/2': at('2026-12-04', '19:00') })).toMatchObject({
      date: 'All of it is planned to be done Fri 4 Dec 19:00, 2 h after its due date Fri 4 Dec 17:00.',
      late: true,
    });
  });

  it('names the line that misses a date of its own, though the whole is in time', () => {
    const own = { ...shop, line: [{ ...shop.line[0]!, due: at('2026-12-03', '13:00') }, shop.line[1]!] };
    const { date, late } = stands(own, { '1042/1': thursday, '1042/2': thursday });
    expect(date).toMatch(/before its due date Fri 4 Dec 17:00; 1042\/1 ends 2 h after its own\.$/);
    expect(late).toBe(true);
  });

  it('says that lines which no queue names are dated behind all that is queued', () => {
    const ends = { '1042/1': thursday, '1042/2': thursday };
    expect(stands({ ...shop, queue: [] }, ends).date).toMatch(/17:00; not all of it is queued yet\.$/);
    expect(stands(shop, ends).date).not.toMatch(/queued/);
  });

  it('has no date while a line cannot be planned, is held, or nothing is left', () => {
    expect(stands(shop, { '1042/1': thursday }).date).toBe(
      'No date for all of it: 1042/2 cannot be planned.',
    );
    const held = { ...shop, order: [anOrder({ status: 'held' })] };
    expect(stands(held, {}).date).toBe('It is held, so nothing of it is planned.');
    const done = { ...shop, line: shop.line.map((line) => ({ ...line, status: 'done' as const })) };
    expect(stands(done, {}).date).toBe('Nothing of it is left to do.');
  });
});
