import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  formatClock,
  formatWall,
  formatWallDate,
  isTimeZone,
  shiftDate,
  startOfDay,
  toInstant,
  wallParts,
} from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';

const CHICAGO = 'America/Chicago';
const at = (iso: string) => instant(Date.parse(iso) / 1000);

describe('the wall clock', () => {
  it('shows a winter and a summer time in the shop’s zone', () => {
    expect(toInstant('2026-11-24', '14:30', CHICAGO)).toBe(at('2026-11-24T20:30:00Z'));
    expect(toInstant('2026-07-01', '06:00', CHICAGO)).toBe(at('2026-07-01T11:00:00Z'));
  });

  it('is written with the weekday', () => {
    expect(formatWall(at('2026-11-24T20:30:00Z'), CHICAGO)).toBe('Tue 14:30');
    expect(formatWallDate(at('2026-11-24T20:30:00Z'), CHICAGO)).toBe('Tue 24 Nov');
    expect(formatClock(at('2026-11-24T06:05:00Z'), CHICAGO)).toBe('00:05');
    expect(formatWall(at('2026-11-29T18:00:00Z'), CHICAGO)).toBe('Sun 12:00');
  });

  // United States rule: Energy Policy Act of 2005, second Sunday of March to first Sunday of November, at 2 a.m.
  it('skips to the jump when clocks go forward: 02:30 on 8 March 2026 does not exist', () => {
    const jump = at('2026-03-08T08:00:00Z');
    expect(toInstant('2026-03-08', '02:30', CHICAGO)).toBe(jump);
    expect(toInstant('2026-03-08', '02:00', CHICAGO)).toBe(jump);
    expect(toInstant('2026-03-08', '03:00', CHICAGO)).toBe(jump);
    expect(formatClock(jump, CHICAGO)).toBe('03:00');
  });

  it('takes the first of two when clocks go back: 01:30 on 1 November 2026 comes twice', () => {
    expect(toInstant('2026-11-01', '01:30', CHICAGO)).toBe(at('2026-11-01T06:30:00Z'));
    expect(toInstant('2026-11-01', '02:00', CHICAGO)).toBe(at('2026-11-01T08:00:00Z'));
    expect(formatClock(at('2026-11-01T07:30:00Z'), CHICAGO)).toBe('01:30');
  });

  it('makes those two days 23 and 25 hours long', () => {
    const hours = (date: string) =>
      (toInstant(date, '24:00', CHICAGO) - toInstant(date, '00:00', CHICAGO)) / 3600;
    expect([hours('2026-03-08'), hours('2026-06-01'), hours('2026-11-01')]).toEqual([23, 24, 25]);
  });

  it('finds midnight where the clocks change at midnight, and a day that was left out', () => {
    // Both from the IANA time zone database: Chile 2026-09-06, Samoa without 2011-12-30.
    expect(formatClock(toInstant('2026-09-06', '00:00', 'America/Santiago'), 'America/Santiago')).toBe(
      '01:00',
    );
    expect(toInstant('2011-12-30', '12:00', 'Pacific/Apia')).toBe(
      toInstant('2011-12-31', '00:00', 'Pacific/Apia'),
    );
  });

  it('keeps the time of day when days are added, across a change of the clocks', () => {
    const friday = toInstant('2026-10-30', '14:30', CHICAGO);
    expect(formatWall(addDays(friday, 3, CHICAGO), CHICAGO)).toBe('Mon 14:30');
    expect(addDays(friday, 3, CHICAGO) - friday).toBe(3 * 86_400 + 3600);
    expect(addDays(addDays(friday, 3, CHICAGO), -3, CHICAGO)).toBe(friday);
  });

  it('starts a day at its first instant', () => {
    expect(startOfDay(at('2026-11-02T05:59:59Z'), CHICAGO)).toBe(at('2026-11-01T05:00:00Z'));
  });

  it('knows leap days', () => {
    expect(shiftDate('2028-02-28', 1)).toBe('2028-02-29');
    expect(shiftDate('2026-01-01', -1)).toBe('2025-12-31');
  });

  it('knows which zones exist, and refuses the others as a bug', () => {
    expect(isTimeZone(CHICAGO)).toBe(true);
    expect(isTimeZone('Mars/Olympus')).toBe(false);
    expect(() => toInstant('2026-01-01', '07:00', 'Mars/Olympus')).toThrow(RangeError);
    expect(() => toInstant('2026-13-01', '07:00', CHICAGO)).toThrow(RangeError);
  });

  it('agrees with the runtime’s own clock in zones far apart', () => {
    const zones = fc.constantFrom(CHICAGO, 'Europe/Berlin', 'Australia/Lord_Howe', 'America/St_Johns', 'UTC');
    fc.assert(
      fc.property(zones, fc.integer({ min: 946_684_800, max: 4_000_000_000 }), (zone, when) => {
        const parts = wallParts(instant(when), zone);
        const shown = new Intl.DateTimeFormat('sv-SE', {
          timeZone: zone,
          dateStyle: 'short',
          timeStyle: 'medium',
        });
        const two = (n: number) => String(n).padStart(2, '0');
        expect(`${parts.date} ${two(parts.hour)}:${two(parts.minute)}:${two(parts.second)}`).toBe(
          shown.format(when * 1000),
        );
        const back = toInstant(parts.date, formatClock(instant(when), zone), zone) + parts.second;
        expect([0, 1800, 3600]).toContain(when - back);
      }),
    );
  });
});
