import { describe, expect, it } from 'vitest';
import { becameLater, type LineLateness } from '../../../core/planning/lateness.ts';
import { loadByDay } from '../../../core/report/load.ts';
import type { ScheduledOperation } from '../../../core/schedule/problem.ts';
import { toInstant } from '../../../core/time/wall.ts';

const ZONE = 'America/Chicago';
const at = (date: string, clock: string) => toInstant(date, clock, ZONE);
const HOUR = 3600;

const operation = (changeoverStart: number, start: number, end: number): ScheduledOperation => ({
  job: 'J',
  index: 0,
  operation: 'J:shear',
  machine: 'S1',
  changeoverStart,
  changeoverSeconds: start - changeoverStart,
  start,
  end,
});

describe('load by day', () => {
  const open = [
    { start: at('2026-12-01', '07:00'), end: at('2026-12-01', '15:00') },
    { start: at('2026-12-02', '07:00'), end: at('2026-12-02', '15:00') },
  ];

  it('counts work and changeover only in open hours, on the day they fall', () => {
    const overnight = operation(
      at('2026-12-01', '13:00'),
      at('2026-12-01', '14:00'),
      at('2026-12-02', '09:00'),
    );
    const days = loadByDay('S1', open, [overnight], at('2026-12-01', '12:00'), 2, ZONE);
    expect(
      days.map(({ capacity, work, changeover }) => [capacity / HOUR, work / HOUR, changeover / HOUR]),
    ).toEqual([
      [8, 1, 1],
      [8, 2, 0],
    ]);
    expect(days[0]?.utilisation).toBeCloseTo(2 / 8, 10);
  });

  it('says nothing of utilisation on a closed day', () => {
    const [sunday] = loadByDay('S1', open, [], at('2026-11-29', '12:00'), 1, ZONE);
    expect(sunday).toMatchObject({ capacity: 0, utilisation: null });
  });

  it('begins each day at midnight on the wall, also when the clocks change', () => {
    // Clocks in Chicago go back on 1 November 2026: that day has 25 hours (IANA time zone database).
    const days = loadByDay('S1', open, [], at('2026-10-31', '12:00'), 3, ZONE);
    const lengths = days.slice(1).map((d, i) => (d.day - (days[i]?.day ?? 0)) / HOUR);
    expect(lengths).toEqual([24, 25]);
  });
});

describe('what became later', () => {
  const row = (lineId: string, lateness: number): LineLateness => ({
    lineId,
    orderId: '1',
    end: 0,
    due: 0,
    lateness,
    importance: 1,
  });

  it('names lines that are late now and were not, or are later than before; earliness does not count', () => {
    const before = [row('1/1', -500), row('1/2', 60), row('1/3', 60), row('1/4', -900)];
    const after = [row('1/1', 300), row('1/2', 120), row('1/3', 10), row('1/4', -100)];
    expect(becameLater(before, after)).toEqual([
      { lineId: '1/1', before: 0, after: 300 },
      { lineId: '1/2', before: 60, after: 120 },
    ]);
  });
});
