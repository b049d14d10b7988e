import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatClock } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { axisOf } from '../../../renderer/gantt/axis.ts';
import { foldOf } from '../../../renderer/gantt/fold.ts';
import { fitted, FARTHEST_S, NEAREST_S, xOf } from '../../../renderer/gantt/scale.ts';
import { at, ZONE } from '../../support/builders.ts';

const HOUR = 3600;
const day = (date: string, width: number, hours = 24) =>
  axisOf(fitted(at(date, '00:00'), at(date, '00:00') + hours * HOUR, width), ZONE);

describe('the time axis', () => {
  it('writes the shop’s wall clock with the weekday', () => {
    const { upper, lower } = day('2026-11-24', 1200);
    expect(upper[0]).toEqual({ at: at('2026-11-24', '00:00'), label: 'Tue 24 Nov' });
    expect(lower[7]).toEqual({ at: at('2026-11-24', '07:00'), label: '07:00' });
  });

  // United States, 2026: clocks go forward on 8 March and back on 1 November at 02:00. Source: 15 U.S.C. 260a.
  it('leaves out the hour that the clock skips in spring', () => {
    const labels = day('2026-03-08', 1200, 23).lower.map((tick) => tick.label);
    expect(labels.slice(0, 4)).toEqual(['00:00', '01:00', '03:00', '04:00']);
    expect(labels).toHaveLength(23);
  });

  it('has the hour that comes twice in autumn twice, an hour apart', () => {
    const { lower } = day('2026-11-01', 1250, 25);
    const twice = lower.filter((tick) => tick.label === '01:00');
    expect(twice).toHaveLength(2);
    expect(twice[1]!.at - twice[0]!.at).toBe(HOUR);
    expect(lower).toHaveLength(25);
  });

  it('begins each day at the shop’s midnight on both sides of a clock change', () => {
    const { upper } = axisOf(fitted(at('2026-10-31', '00:00'), at('2026-11-03', '00:00'), 900), ZONE);
    expect(upper.map((tick) => formatClock(instant(tick.at), ZONE))).toEqual(['00:00', '00:00', '00:00']);
    expect(upper.map((tick) => tick.label)).toEqual(['Sat 31 Oct', 'Sun 1 Nov', 'Mon 2 Nov']);
  });

  it('puts each mark where the wall clock shows its words, also where clocks change by half an hour', () => {
    const zone = 'Australia/Lord_Howe';
    const back = Date.UTC(2026, 3, 4, 15) / 1000; // 5 April there, 02:00 becomes 01:30 (time zone database)
    for (const hours of [2, 12, 30]) {
      const { lower } = axisOf(fitted(back - HOUR, back + hours * HOUR, 1000), zone);
      expect(lower.length).toBeGreaterThan(5);
      for (const tick of lower) expect(formatClock(instant(tick.at), zone)).toBe(tick.label);
    }
  });

  it('goes over to days and weeks from far away', () => {
    const { upper, lower } = axisOf(fitted(at('2026-11-25', '00:00'), at('2026-12-16', '00:00'), 900), ZONE);
    expect(upper.map((tick) => tick.label)).toEqual(['Wed 25 Nov', 'Mon 30 Nov', 'Mon 7 Dec', 'Mon 14 Dec']);
    expect(lower[1]?.label).toBe('26');
  });

  it('never puts two words closer than they need, at any look', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: at('2026-01-01'), max: at('2027-12-31') }),
        fc.double({ min: NEAREST_S, max: FARTHEST_S, noNaN: true }),
        fc.integer({ min: 500, max: 2500 }),
        (from, span, width) => {
          const scale = fitted(from, from + span, width);
          const xs = axisOf(scale, ZONE).lower.map((tick) => xOf(scale, tick.at));
          expect(xs.length).toBeGreaterThan(1);
          for (let i = 1; i < xs.length; i++) expect(xs[i]! - xs[i - 1]!).toBeGreaterThan(17);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the time axis with closed time folded away', () => {
  /** Open Monday to Friday from 07:00 to 15:30; a week and a half from Monday, 30 November. */
  const dates = [
    '2026-11-30',
    '2026-12-01',
    '2026-12-02',
    '2026-12-03',
    '2026-12-04',
    '2026-12-07',
    '2026-12-08',
  ];
  const closed = dates.map((date, i) => ({
    start: i === 0 ? at('2026-11-29', '00:00') : at(dates[i - 1]!, '15:30'),
    end: at(date, '07:00'),
  }));
  const fold = foldOf(closed);
  const week = (width: number, days = 6) =>
    fitted(fold.at(at('2026-11-30', '07:00')), fold.at(at(dates[days]!, '07:00')), width);

  it('has each working day once, where its first shift begins; a weekend takes no room', () => {
    const { upper } = axisOf(week(1200), ZONE, fold);
    expect(upper.map(({ label }) => label)).toEqual([
      ...['Mon 30 Nov', 'Tue 1 Dec', 'Wed 2 Dec', 'Thu 3 Dec', 'Fri 4 Dec', 'Mon 7 Dec'],
    ]);
    expect(upper[1]!.at).toBe(fold.at(at('2026-12-01', '07:00')));
  });

  it('writes no time of day at which nobody works, and none over another', () => {
    for (const width of [600, 900, 1500, 3000]) {
      const scale = week(width);
      const { lower } = axisOf(scale, ZONE, fold);
      expect(lower.length).toBeGreaterThan(4);
      for (const { label } of lower)
        if (label.includes(':')) expect(label >= '07:00' && label < '15:30', label).toBe(true);
      const xs = lower.map((tick) => xOf(scale, tick.at));
      for (let i = 1; i < xs.length; i++) expect(xs[i]! - xs[i - 1]!).toBeGreaterThanOrEqual(20);
      const gaps = lower.flatMap(({ at: tick, label }) =>
        label.includes(':') ? fold.breaks.map((one) => (one.at - tick) / scale.perPixel) : [],
      );
      for (const gap of gaps) expect(gap >= 0 && gap < 40, 'words over a break').toBe(false);
    }
  });
});
