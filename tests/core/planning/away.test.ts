import { describe, expect, it } from 'vitest';
import { wholeDays } from '../../../core/planning/away.ts';
import { at, ZONE } from '../../support/builders.ts';

const day = (from: string, to: string) => ({ start: at(from, '00:00'), end: at(to, '00:00') });

describe('whole days on which somebody is open', () => {
  it('are counted once however often that is in a day, and touching ones are one stretch', () => {
    const open = [
      { start: at('2026-11-26', '07:00'), end: at('2026-11-26', '11:30') },
      { start: at('2026-11-26', '12:00'), end: at('2026-11-26', '15:30') },
      { start: at('2026-11-27', '07:00'), end: at('2026-11-27', '15:30') },
      { start: at('2026-11-30', '07:00'), end: at('2026-11-30', '15:30') },
    ];
    expect(wholeDays(open, ZONE)).toEqual([day('2026-11-26', '2026-11-28'), day('2026-11-30', '2026-12-01')]);
  });

  it('are two where a shift runs through midnight, one where it ends on it', () => {
    const night = { start: at('2026-11-26', '22:00'), end: at('2026-11-27', '06:00') };
    expect(wholeDays([night], ZONE)).toEqual([day('2026-11-26', '2026-11-28')]);
    const late = { start: at('2026-11-26', '22:00'), end: at('2026-11-27', '00:00') };
    expect(wholeDays([late], ZONE)).toEqual([day('2026-11-26', '2026-11-27')]);
  });

  it('have 25 hours where the clocks go back; of nothing open there are none', () => {
    const open = [{ start: at('2026-11-01', '07:00'), end: at('2026-11-01', '15:30') }];
    expect(wholeDays(open, ZONE).map(({ start, end }) => (end - start) / 3600)).toEqual([25]);
    expect(wholeDays([], ZONE)).toEqual([]);
  });
});
