import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Backup } from '../../electron/db/backup.ts';
import { tooOld } from '../../electron/db/backup-age.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;
const NOW = Date.parse('2026-11-30T12:30:00Z') / 1000;
const backup = (hoursAgo: number, reason: Backup['reason'] = 'day'): Backup => ({
  name: `${hoursAgo}`,
  at: NOW - hoursAgo * HOUR,
  reason,
  bytes: 1,
});
const goes = (...backups: Backup[]) => tooOld(backups, NOW).map(({ name }) => Number(name));

describe('backups by their age', () => {
  it('of one hour: the newest stays', () => {
    expect(goes(backup(0.1), backup(0.2), backup(0.3))).toEqual([0.2, 0.3]);
  });

  it('of the last day: one an hour; before it one a day, then one a week, then one a month', () => {
    const hourly = Array.from({ length: 400 * 24 }, (_, hours) => backup(hours));
    const gone = new Set(goes(...hourly));
    const left = hourly.filter(({ name }) => !gone.has(Number(name))).map(({ at }) => (NOW - at) / DAY);
    const between = (from: number, to: number) => left.filter((days) => days >= from && days < to).length;
    expect(between(0, 1)).toBe(24);
    expect(between(1.1, 13.9)).toBe(13);
    expect(between(15, 56)).toBeLessThanOrEqual(8);
    expect(between(15, 56)).toBeGreaterThanOrEqual(6);
    expect(between(57, 366)).toBeGreaterThanOrEqual(10);
    expect(between(57, 366)).toBeLessThanOrEqual(11);
    expect(between(367, 401)).toBe(0);
  });

  it('that were asked for, or hold what was here before another file took its place, stay for three months', () => {
    expect(
      goes(backup(0), backup(0.1, 'before-restore'), backup(0.2, 'before-restore'), backup(0.3, 'asked')),
    ).toEqual([]);
    expect(goes(backup(0), backup(91 * 24, 'before-restore'), backup(91 * 24 + 1))).toEqual([91 * 24 + 1]);
    expect(goes(backup(0), backup(500 * 24, 'before-restore'))).toEqual([500 * 24]);
  });

  it('always leave the newest, however old', () => {
    const hours = fc.array(fc.integer({ min: 0, max: 100_000 }), { minLength: 1 });
    fc.assert(
      fc.property(hours, (ages) => {
        const gone = goes(...ages.map((age) => backup(age)));
        expect(gone.filter((age) => age === Math.min(...ages)).length).toBeLessThan(ages.length);
        expect(ages.length - gone.length).toBeGreaterThan(0);
      }),
    );
  });
});
