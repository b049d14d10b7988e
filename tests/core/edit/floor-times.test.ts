import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { earliestEnd, earliestStart, withinMinute } from '../../../core/edit/floor-times.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant } from '../../../core/units/brand.ts';
import { aLine, anOrder, aRecord, aShop, at, someSettings } from '../../support/builders.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const HOUR = 3600;

/** Line 1042/1 is sheared from 07:00 to 08:00; 1043/1 waits. */
const shop = aShop({
  order: [anOrder(), anOrder({ id: '1043' })],
  line: [aLine(), aLine({ orderId: '1043' })],
  record: [aRecord({ good: 20, scrapped: 0 })],
});
const begins = (stands: Shop, operation: string, machineId: string, when: number) =>
  applyCommand(stands, {
    do: 'floor.start',
    operation,
    machineId,
    at: when,
    given: true,
    changeoverSeconds: null,
  }).ok;

describe('the earliest start', () => {
  it('is the end of the work before on the machine, or of the shearing', () => {
    expect(earliestStart(shop, '1043/1:shear', 'S1')).toBe(monday('08:00'));
    expect(earliestStart(shop, '1042/1:brake', 'B1')).toBe(monday('08:00'));
    expect(earliestStart({ ...shop, record: [] }, '1043/1:shear', 'S1')).toBeNull();
  });

  it('is the start of the shearing where blanks are passed on in lots', () => {
    const lots = { ...shop, settings: someSettings({ transferShare: 0.4 }) };
    expect(earliestStart(lots, '1042/1:brake', 'B1')).toBe(monday('07:00'));
  });

  it('is where the command is refused before and taken from then on', () => {
    const next = fc.constantFrom(['1043/1:shear', 'S1'] as const, ['1042/1:brake', 'B1'] as const);
    const share = fc.constantFrom(0.4, 1);
    fc.assert(
      fc.property(next, share, fc.integer({ min: -HOUR, max: HOUR }), ([operation, machine], lot, off) => {
        const stands = { ...shop, settings: someSettings({ transferShare: lot }) };
        const earliest = earliestStart(stands, operation, machine)!;
        expect(begins(stands, operation, machine, earliest + off)).toBe(off >= 0);
      }),
    );
  });
});

it('the earliest end is the start, the last pause or its end, and the command agrees', () => {
  const from = monday('07:20');
  const to = monday('07:50');
  const pauses = [[], [{ from, to: null, reason: 'No sheets' }], [{ from, to, reason: 'No sheets' }]];
  const ends = pauses.map((stood) => {
    const record = aRecord({ good: 0, scrapped: 0, end: null, pauses: stood });
    const earliest = earliestEnd(record);
    const done = (when: number) =>
      applyCommand(
        { ...shop, record: [record] },
        { do: 'floor.done', operation: record.id, at: when, given: true, good: 20, scrapped: 0 },
      ).ok;
    expect([done(earliest - 1), done(earliest)]).toEqual([false, true]);
    return earliest;
  });
  expect(ends).toEqual([monday('07:00'), from, to]);
});

it('a time given by the minute in which the work before ended is the moment it ended', () => {
  const ended = instant(monday('08:00') + 35);
  expect(withinMinute(monday('08:00'), ended)).toBe(ended);
  expect(withinMinute(monday('07:59'), ended)).toBe(monday('07:59'));
  expect(withinMinute(monday('08:01'), ended)).toBe(monday('08:01'));
  expect(withinMinute(monday('08:00'), null)).toBe(monday('08:00'));
});
