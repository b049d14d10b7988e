import { describe, expect, it } from 'vitest';
import { toInstant, wallParts } from '../../../core/time/wall.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import { demoShop, monday, zone } from './demo-shop.ts';

const at = (date: string, clock: string): Instant => toInstant(date, clock, zone);
const clockOf = (seconds: number) => {
  const { weekday, hour, minute } = wallParts(instant(seconds), zone);
  return { weekday, hour, minute };
};
const here = demoShop();

describe('moving the demo shop to the present week', () => {
  it('changes nothing within the week it was written around', () => {
    expect(demoShop(at('2026-11-23', '00:00'))).toEqual(here);
    expect(demoShop(at('2026-11-29', '23:59'))).toEqual(here);
  });

  it('goes by the week in the shop’s zone, not in UTC', () => {
    const sundayNight = at('2026-11-29', '22:00');
    expect(new Date(sundayNight * 1000).getUTCDay()).toBe(1);
    expect(demoShop(sundayNight)).toEqual(here);
  });

  it('moves every date by whole weeks', () => {
    const there = demoShop(at('2026-12-09', '10:00'));
    expect(there.order.map((o) => o.due - 14 * 86_400)).toEqual(here.order.map((o) => o.due));
    expect(there.calendar[1]?.overtime[0]?.date).toBe('2026-12-19');
    expect(there.calendar[0]?.closures.at(-1)).toMatchObject({ from: '2026-12-16', to: '2026-12-16' });
  });

  // Clocks in this zone go forward on 14 March 2027 and back on 7 November 2027 (US Energy Policy Act of 2005: second
  // Sunday of March, first Sunday of November).
  it.each(['2027-03-08', '2027-03-15', '2027-07-05', '2027-11-01', '2025-10-27'])(
    'keeps weekdays and times on the wall in the week of %s, when the clocks change near it',
    (date) => {
      const there = demoShop(at(date, '06:00'));
      expect(there.order.map((o) => clockOf(o.due))).toEqual(here.order.map((o) => clockOf(o.due)));
      expect(there.record.map((r) => clockOf(r.start))).toEqual(here.record.map((r) => clockOf(r.start)));
      expect(there.downtime.map((d) => clockOf(d.from))).toEqual(here.downtime.map((d) => clockOf(d.from)));
      const late = (shop: typeof here, now: number) => shop.order.filter((o) => o.due < now).map((o) => o.id);
      expect(late(there, at(date, '06:00'))).toEqual(late(here, monday));
    },
  );

  it('shifts a due date after the change of the clocks by an hour more or less than whole weeks', () => {
    const there = demoShop(at('2027-03-08', '06:00'));
    const weeks = 15 * 7 * 86_400;
    const moved = there.order.map((order, index) => order.due - (here.order[index]?.due ?? 0) - weeks);
    expect(new Set(moved)).toEqual(new Set([0, -3600]));
  });

  it('leaves the queues empty, one a machine', () => {
    expect(here.queue).toEqual(here.machine.map((m) => ({ id: m.id, operations: [], revision: 0 })));
    expect(here.pin).toEqual([]);
  });
});
