import { describe, expect, it } from 'vitest';
import { observationsOf } from '../../../core/learn/happened.ts';
import { workedSeconds } from '../../../core/planning/started.ts';
import { workingTime } from '../../../core/schedule/working-time.ts';
import { aRecord, aShop, at } from '../../support/builders.ts';

const monday = (clock: string) => at('2026-11-30', clock);
const tuesday = (clock: string) => at('2026-12-01', clock);
const hour = 3600;
/** Monday and Tuesday, 07:00 to 15:30, half an hour of lunch at 11:30. */
const open = workingTime(
  [monday, tuesday].flatMap((day) => [
    { start: day('07:00'), end: day('11:30') },
    { start: day('12:00'), end: day('15:30') },
  ]),
);
const pause = (from: number, to: number | null, suspended = false) => ({
  from,
  to,
  reason: 'Sheets',
  ...(suspended ? { suspended: true as const } : {}),
});

describe('worked time', () => {
  it('is the open time of the machine: a night or a lunch break that nobody paused for is not worked', () => {
    const overnight = aRecord({ start: monday('14:30'), end: null });
    expect(workedSeconds(overnight, tuesday('08:00'), open)).toBe(2 * hour);
    expect(workedSeconds(overnight, tuesday('05:00'), open)).toBe(hour);
    const overLunch = aRecord({ start: monday('11:00'), end: monday('12:30') });
    expect(workedSeconds(overLunch, tuesday('08:00'), open)).toBe(hour);
  });

  it('leaves out pauses and time set aside, once where they reach into the night', () => {
    const pauses = [
      pause(monday('07:10'), monday('07:20')),
      pause(monday('07:30'), monday('08:30'), true),
      pause(monday('15:00'), tuesday('07:15')),
    ];
    const record = aRecord({ start: monday('07:00'), end: null, pauses });
    expect(workedSeconds(record, monday('08:41'), open)).toBe(31 * 60);
    expect(workedSeconds(record, tuesday('07:30'), open)).toBe(8 * hour - (10 + 60 + 30) * 60 + 15 * 60);
    const standing = aRecord({ start: monday('07:00'), end: null, pauses: [pause(monday('07:10'), null)] });
    expect(workedSeconds(standing, monday('09:00'), open)).toBe(600);
  });

  it('is none before the start, where the clock was set back', () => {
    expect(workedSeconds(aRecord({ start: monday('07:00'), end: null }), monday('06:00'), open)).toBe(0);
  });

  it('counts as it was where all of it lies outside open hours', () => {
    const evening = aRecord({
      start: monday('16:00'),
      end: monday('17:00'),
      pauses: [pause(monday('16:20'), monday('16:30'))],
    });
    expect(workedSeconds(evening, tuesday('08:00'), open)).toBe(50 * 60);
  });

  it('is the same to learning, also on a day off', () => {
    const saturday = aRecord({ start: at('2026-12-12', '08:00'), end: at('2026-12-12', '09:00') });
    const overnight = aRecord({ id: '1042/2:shear', start: monday('14:30'), end: tuesday('08:00') });
    const { observations } = observationsOf(aShop(), [saturday, overnight]);
    expect(observations.map((o) => o.actualSeconds)).toEqual([hour, 2 * hour]);
  });
});
