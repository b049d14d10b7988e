import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { total } from '../../../core/time/interval.ts';
import { addDays, formatWall, toInstant, wallParts } from '../../../core/time/wall.ts';
import { openIntervals } from '../../../core/time/working-time.ts';
import { calendar, shift, type Calendar } from '../../../core/time/calendar.ts';
import type { Downtime } from '../../../core/shop/machine.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';

const CHICAGO = 'America/Chicago';
const WEEKDAYS = [1, 2, 3, 4, 5];
const dayShift = {
  name: 'Day',
  days: WEEKDAYS,
  start: '06:00',
  end: '14:30',
  breaks: [{ start: '10:00', end: '10:30' }],
};
const aCalendar = (changes: Partial<Calendar> = {}): Calendar =>
  calendar.parse({
    id: 'day',
    name: 'Day',
    shifts: [dayShift],
    closures: [],
    overtime: [],
    revision: 0,
    ...changes,
  });
const wall = (date: string, clock = '00:00') => toInstant(date, clock, CHICAGO);
const down = (from: Instant, to: Instant): Downtime => ({
  id: 'D1',
  machineId: 'B1',
  from,
  to,
  reason: 'blade',
  revision: 0,
});

/** Open time in hours on one date; 0 when nothing is open. */
function hours(
  cal: Calendar,
  date: string,
  downtimes: Downtime[] = [],
  until = addDays(wall(date), 1, CHICAGO),
) {
  const open = openIntervals(cal, downtimes, CHICAGO, wall(date), until);
  return open.ok ? total(open.value) / 3600 : 0;
}

describe('a machine is open', () => {
  it('in its shifts less their breaks', () => {
    const open = openIntervals(aCalendar(), [], CHICAGO, wall('2026-11-24'), wall('2026-11-25'));
    expect(
      open.ok && open.value.flatMap((s) => [s.start, s.end].map((t) => formatWall(instant(t), CHICAGO))),
    ).toEqual(['Tue 06:00', 'Tue 10:00', 'Tue 10:30', 'Tue 14:30']);
  });

  it('not on a closed day, unless there is overtime on it', () => {
    const closures = [{ name: 'Holiday', from: '2026-11-26', to: '2026-11-27' }];
    const overtime = [{ name: 'Catch up', date: '2026-11-27', start: '07:00', end: '11:00' }];
    expect(hours(aCalendar({ closures }), '2026-11-26')).toBe(0);
    expect(hours(aCalendar({ closures, overtime }), '2026-11-27')).toBe(4);
    expect(hours(aCalendar({ closures, overtime }), '2026-11-25')).toBe(8);
  });

  it('once, where shifts and overtime overlap; another shift runs on through a break', () => {
    const late = { name: 'Late', days: WEEKDAYS, start: '13:00', end: '22:00', breaks: [] };
    const early = { name: 'Early', days: WEEKDAYS, start: '10:00', end: '12:00', breaks: [] };
    expect(hours(aCalendar({ shifts: [dayShift, late] }), '2026-11-24')).toBe(15.5);
    expect(hours(aCalendar({ shifts: [dayShift, early] }), '2026-11-24')).toBe(8.5);
  });

  it('through midnight where one shift closes the day and the next opens it', () => {
    const evening = { name: 'Evening', days: [1], start: '22:00', end: '24:00', breaks: [] };
    const night = { name: 'Night', days: [2], start: '00:00', end: '06:00', breaks: [] };
    const open = openIntervals(
      aCalendar({ shifts: [evening, night] }),
      [],
      CHICAGO,
      wall('2026-11-23'),
      wall('2026-11-25'),
    );
    expect(open).toEqual({
      ok: true,
      value: [{ start: wall('2026-11-23', '22:00'), end: wall('2026-11-24', '06:00') }],
    });
  });

  it('not while it is down, and only inside the span asked for', () => {
    const off = down(wall('2026-11-24', '08:00'), wall('2026-11-24', '10:15'));
    expect(hours(aCalendar(), '2026-11-24', [off])).toBe(6);
    expect(hours(aCalendar(), '2026-11-24', [off], wall('2026-11-24', '12:00'))).toBe(3.5);
  });

  it('5 h on the night the clocks go forward, 7 h when they go back, for a shift from midnight to six', () => {
    const night = { name: 'Night', days: [7], start: '00:00', end: '06:00', breaks: [] };
    expect(hours(aCalendar({ shifts: [night] }), '2026-03-08')).toBe(5);
    expect(hours(aCalendar({ shifts: [night] }), '2026-11-01')).toBe(7);
    const round = { name: 'Round', days: [7], start: '00:00', end: '24:00', breaks: [] };
    expect(hours(aCalendar({ shifts: [round] }), '2026-03-08')).toBe(23);
    expect(hours(aCalendar({ shifts: [round] }), '2026-11-01')).toBe(25);
  });

  it('or the planner is told why it never is', () => {
    const cases = [
      openIntervals(aCalendar(), [], CHICAGO, wall('2026-11-28'), wall('2026-11-30')),
      openIntervals(
        aCalendar(),
        [down(wall('2026-11-01'), wall('2026-12-01'))],
        CHICAGO,
        wall('2026-11-24'),
        wall('2026-11-25'),
      ),
      openIntervals(aCalendar(), [], CHICAGO, wall('2026-11-25'), wall('2026-11-24')),
      openIntervals(aCalendar(), [], 'Mars/Olympus', wall('2026-11-24'), wall('2026-11-25')),
    ];
    expect(cases.map((c) => (c.ok ? 'open' : c.issues.map((p) => p.field).join()))).toEqual([
      'shifts',
      'downtime',
      'range',
      'timeZone',
    ]);
  });
});

const minute = fc.integer({ min: 0, max: 1440 });
const clock = (m: number): string =>
  `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
const spans = fc
  .tuple(minute, minute)
  .filter(([a, b]) => a !== b)
  .map(([a, b]) => ({ start: clock(Math.min(a, b)), end: clock(Math.max(a, b)) }));
const shifts = fc.record({
  name: fc.constant('S'),
  days: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }),
  span: spans,
  breaks: fc.array(spans, { maxLength: 2 }),
});
/** Two days either side of a change of the clocks. */
const changes = [
  [CHICAGO, '2026-03-06'],
  [CHICAGO, '2026-10-30'],
  ['Europe/Berlin', '2026-03-27'],
  ['Australia/Lord_Howe', '2026-04-03'],
  ['America/Santiago', '2026-09-04'],
  ['America/Santiago', '2026-04-02'],
] as const;

/**
 * The slow truth, minute by minute. The clock of a day is the latest time it has shown so far, so that the hour that
 * comes twice counts on without opening a shift again.
 */
function openMinutes(cal: Calendar, zone: string, from: Instant, to: Instant): Set<number> {
  const open = new Set<number>();
  let day = '';
  let latest = 0;
  for (let t = from - 30 * 3600; t < to; t += 60) {
    const { date, weekday, hour, minute: m } = wallParts(instant(t), zone);
    latest = date === day ? Math.max(latest, hour * 60 + m) : hour * 60 + m;
    day = date;
    const now = clock(latest);
    const within = (s: { start: string; end: string }) => s.start <= now && now < s.end;
    const closed = cal.closures.some((c) => c.from <= date && date <= c.to);
    const regular = cal.shifts.some((s) => s.days.includes(weekday) && within(s) && !s.breaks.some(within));
    const extra = cal.overtime.some((o) => o.date === date && within(o));
    if (t >= from && ((regular && !closed) || extra)) open.add(t);
  }
  return open;
}

it('across a change of the clocks working time agrees with counting each minute', () => {
  const cases = fc.record({
    change: fc.constantFrom(...changes),
    shifts: fc.array(shifts, { minLength: 1, maxLength: 3 }),
    closedOn: fc.integer({ min: 0, max: 3 }),
    overtime: spans,
    overtimeOn: fc.integer({ min: 0, max: 3 }),
  });
  fc.assert(
    fc.property(cases, ({ change: [zone, first], overtime, ...c }) => {
      const dates = [0, 1, 2, 3].map((d) => addDays(toInstant(first, '12:00', zone), d, zone));
      const dateOf = (d: number) => wallParts(dates[d] ?? instant(0), zone).date;
      const cal = aCalendar({
        shifts: c.shifts.map(({ span, ...rest }) => shift.parse({ ...rest, ...span })),
        closures: [{ name: 'Closed', from: dateOf(c.closedOn), to: dateOf(c.closedOn) }],
        overtime: [{ name: 'Extra', date: dateOf(c.overtimeOn), ...overtime }],
      });
      const from = toInstant(first, '00:00', zone);
      const to = addDays(from, 4, zone);
      const open = openIntervals(cal, [], zone, from, to);
      const counted = new Set<number>();
      for (const s of open.ok ? open.value : []) for (let t = s.start; t < s.end; t += 60) counted.add(t);
      expect(counted).toEqual(openMinutes(cal, zone, from, to));
    }),
    { numRuns: 40 },
  );
});
