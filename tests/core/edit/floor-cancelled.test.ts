import { describe, expect, it } from 'vitest';
import type { Command } from '../../../core/edit/command.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aPart, aShop, at, NOW } from '../../support/builders.ts';
import { after, refusalOf } from '../../support/edits.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const operation = '1042/1:shear';
const done = (good: number, scrapped = 0, clock = '07:40'): Command => ({
  do: 'floor.done',
  operation,
  at: monday(clock),
  good,
  scrapped,
});
const linesOf = (shop: Shop) =>
  shop.line.map(({ id, quantity, status, makeUpFor }) => [id, quantity, status, makeUpFor]);
const FLAT = { ...aPart().profile, flangesMm: [200], bends: [] };
const start: Command = {
  do: 'floor.start',
  operation,
  machineId: 'S1',
  at: monday('07:00'),
  changeoverSeconds: null,
};
/** Twelve of twenty are cut, then the planner changes the order. */
const cut = after(aShop({ order: [anOrder()], line: [aLine()] }), start, {
  do: 'floor.count',
  operation,
  good: 12,
  scrapped: 0,
});
const order = (shop: Shop, status: 'open' | 'held' | 'cancelled'): Command => ({
  do: 'order.save',
  order: { ...shop.order[0]!, status },
  lines: [],
  removed: [],
  at: NOW,
});

describe('work under way of an order that was cancelled', () => {
  const cancelled = after(cut, order(cut, 'cancelled'));

  it('ends with the pieces that were made, and nothing is made again', () => {
    const ended = after(cancelled, done(0));
    expect(ended.record[0]).toMatchObject({ good: 12, scrapped: 0, end: monday('07:40') });
    expect(ended.line).toEqual(cancelled.line);
    expect(ended.order).toEqual(cancelled.order);
  });

  it('makes nothing again either for what was scrapped, or of a cancelled line', () => {
    expect(after(cancelled, done(5, 3)).line).toHaveLength(1);
    const line: Command = { do: 'line.save', line: { ...cut.line[0]!, status: 'cancelled' } };
    expect(after(cut, line, done(0)).record[0]).toMatchObject({ good: 12, end: monday('07:40') });
  });

  it('leaves its machine to others, which it may also do by being suspended', () => {
    const left = after(
      cancelled,
      { do: 'floor.pause', operation, at: monday('07:20'), reason: 'Cancelled' },
      { do: 'floor.suspend', operation, good: 1, scrapped: 0 },
    );
    expect(left.record[0]).toMatchObject({ good: 13, end: null });
    expect(left.queue).toEqual(cancelled.queue);
  });

  it('asks for what is missing when the order is opened again', () => {
    const ended = after(cancelled, done(0));
    const opened = after(ended, order(ended, 'open'));
    expect(opened.line.map(({ id, quantity, makeUpFor }) => [id, quantity, makeUpFor])).toEqual([
      ['1042/1', 20, null],
      ['1042/2', 8, '1042/1'],
    ]);
  });

  it('asks for it too when only the line was cancelled', () => {
    const ended = after(cut, { do: 'line.save', line: { ...cut.line[0]!, status: 'cancelled' } }, done(0));
    const opened = after(ended, { do: 'line.save', line: { ...ended.line[0]!, status: 'open' } });
    expect(opened.line.map(({ quantity }) => quantity)).toEqual([20, 8]);
  });
});

describe('work under way of an order that is held', () => {
  const held = after(cut, order(cut, 'held'));
  const left = after(
    held,
    { do: 'floor.pause', operation, at: monday('07:20'), reason: 'Held' },
    { do: 'floor.suspend', operation, good: 0, scrapped: 0 },
  );

  it('is suspended with its pieces counted as good, and no line is made for the rest', () => {
    expect(left.record[0]).toMatchObject({ good: 12, scrapped: 0, end: null });
    expect(left.line).toHaveLength(1);
  });

  it('goes on where it was when the order is opened again', () => {
    const ended = after(
      left,
      order(left, 'open'),
      { do: 'floor.resume', operation, at: monday('08:00') },
      done(8, 0, '08:30'),
    );
    expect(ended.record[0]).toMatchObject({ good: 20, end: monday('08:30') });
    expect(ended.line).toHaveLength(1);
  });

  it('is not reported done with pieces missing, which nobody would make', () => {
    expect(refusalOf(held, done(0))).toMatch(
      /8 of 20 pieces .* pause and suspend the work, and the rest of it waits/,
    );
    expect(after(held, done(8)).record[0]).toMatchObject({ good: 20, end: monday('07:40') });
  });

  it('waits with what was scrapped until the order is opened, and asks for it then', () => {
    const ended = after(held, done(5, 3));
    expect(ended.line).toHaveLength(1);
    expect(linesOf(after(ended, order(ended, 'open')))).toEqual([
      ['1042/1', 20, 'open', null],
      ['1042/2', 3, 'open', '1042/1'],
    ]);
  });

  it('waits with it too when it was the last step, or the count was corrected', () => {
    const flat = aShop({ part: [aPart({ profile: FLAT })], order: [anOrder()], line: [aLine()] });
    const begun = after(flat, start);
    const whole = after(begun, order(begun, 'held'), done(20));
    expect(linesOf(whole)).toEqual([['1042/1', 20, 'done', null]]);
    const opened = [
      ['1042/1', 20, 'done', null],
      ['1042/2', 3, 'open', '1042/1'],
    ];
    const patch = { good: 17, scrapped: 3 };
    for (const short of [
      after(begun, order(begun, 'held'), done(17, 3)),
      after(whole, { do: 'floor.correct', operation, at: monday('12:00'), patch, reason: 'Miscounted' }),
    ]) {
      expect(linesOf(short)).toEqual([['1042/1', 20, 'open', null]]);
      expect(linesOf(after(short, order(short, 'open')))).toEqual(opened);
    }
  });

  it('does not bring back what was asked for before and given up', () => {
    const short = after(cut, done(5, 3));
    const givenUp = after(short, { do: 'line.save', line: { ...short.line[1]!, status: 'cancelled' } });
    const back = after(givenUp, order(givenUp, 'held'));
    expect(after(back, order(back, 'open')).line).toEqual(givenUp.line);
  });

  it('asks again after a remake that turned out not to be needed', () => {
    const correct = (good: number): Command => ({
      do: 'floor.correct',
      operation,
      at: monday('12:00'),
      patch: { good, scrapped: 20 - good },
      reason: 'Miscounted',
    });
    const found = after(cut, done(5, 3), correct(20));
    expect(linesOf(found)[1]).toEqual(['1042/2', 3, 'cancelled', null]);
    const short = after(found, order(found, 'held'), correct(18));
    expect(linesOf(short)).toHaveLength(2);
    expect(linesOf(after(short, order(short, 'open')))[2]).toEqual(['1042/3', 2, 'open', '1042/1']);
  });
});
