import { describe, expect, it } from 'vitest';
import { shiftDate, toInstant, wallParts } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { demoShop, monday, zone } from './demo-shop.ts';

const at = (date: string, clock: string): Instant => toInstant(date, clock, zone);
const clockOf = (seconds: number) => {
  const { weekday, hour, minute } = wallParts(instant(seconds), zone);
  return { weekday, hour, minute };
};
/** Mondays to Fridays from one date to another, counted day by day. */
function workingDays(from: string, to: string): number {
  const [first, last, sign] = from <= to ? [from, to, 1] : [to, from, -1];
  let count = 0;
  for (let day = first; day < last; day = shiftDate(day, 1))
    if (wallParts(at(day, '12:00'), zone).weekday <= 5) count += 1;
  return sign * count;
}
const here = demoShop();

const midnight = (o: { due: number }): string => wallParts(instant(o.due), zone).date;

describe('moving the demo shop to the present', () => {
  it('changes nothing on the day it was written around, in the shop’s zone', () => {
    expect(demoShop(at('2026-11-23', '00:00'))).toEqual(here);
    const lateOnMonday = at('2026-11-23', '22:00');
    expect(new Date(lateOnMonday * 1000).getUTCDay()).toBe(2);
    expect(demoShop(lateOnMonday)).toEqual(here);
  });

  it('moves every date by whole weeks from one Monday to another', () => {
    const there = demoShop(at('2026-12-07', '10:00'));
    expect(there.order.map((o) => o.due - 14 * 86_400)).toEqual(here.order.map((o) => o.due));
    expect(there.calendar[1]?.overtime[0]?.date).toBe('2026-12-19');
    expect(there.calendar[0]?.closures.at(-1)).toMatchObject({ from: '2026-12-16', to: '2026-12-16' });
  });

  it.each(['2026-11-24', '2026-11-25', '2026-11-27'])(
    'keeps count of the working days when opened on %s',
    (date) => {
      const there = demoShop(at(date, '06:00'));
      const days = (shop: typeof here, from: string): number[] =>
        shop.order.map((o) => workingDays(from, midnight(o)));
      expect(days(there, date)).toEqual(days(here, '2026-11-23'));
      expect(there.order.every((o) => wallParts(instant(o.due), zone).weekday <= 5)).toBe(true);
    },
  );

  it('begins on the Monday after when it is opened on a weekend', () => {
    expect(demoShop(at('2026-11-28', '09:00'))).toEqual(demoShop(at('2026-11-30', '06:00')));
  });

  // Clocks in this zone go forward on 14 March 2027 and back on 7 November 2027 (US Energy Policy Act of 2005: second
  // Sunday of March, first Sunday of November).
  it.each(['2027-03-08', '2027-03-15', '2027-07-05', '2027-11-01', '2025-10-27'])(
    'keeps weekdays and times on the wall from Monday %s on, when the clocks change near it',
    (date) => {
      const there = demoShop(at(date, '06:00'));
      expect(there.order.map((o) => clockOf(o.due))).toEqual(here.order.map((o) => clockOf(o.due)));
      expect(there.record.map((r) => clockOf(r.start))).toEqual(here.record.map((r) => clockOf(r.start)));
      expect(there.downtime.map((d) => clockOf(d.from))).toEqual(here.downtime.map((d) => clockOf(d.from)));
      const late = (shop: typeof here, now: number) => shop.order.filter((o) => o.due < now).map((o) => o.id);
      expect(late(there, at(date, '06:00'))).toEqual(late(here, monday));
    },
  );

  it('leaves the queues empty, one a machine', () => {
    expect(here.queue).toEqual(here.machine.map((m) => ({ id: m.id, operations: [], revision: 0 })));
    expect(here.pin).toEqual([]);
  });
});
