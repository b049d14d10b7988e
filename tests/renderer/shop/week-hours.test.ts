import { describe, expect, it } from 'vitest';
import { mondayOf, weekHours } from '../../../renderer/screens/shop/calendars/week-hours.ts';
import { aCalendar, at, NOW, ZONE } from '../../support/builders.ts';

const monday = mondayOf(NOW, 0, ZONE);
const hours = (calendar = aCalendar(), from = monday) => {
  const week = weekHours(calendar, from, ZONE);
  if (typeof week === 'string') throw new Error(week);
  return week.days.map((day) => day.openSeconds / 3600);
};

describe('the picture of a calendar’s week', () => {
  it('begins on Monday, also when it is Sunday', () => {
    expect(mondayOf(at('2026-12-06', '23:00'), 0, ZONE)).toBe(at('2026-11-30', '00:00'));
    expect(mondayOf(NOW, 1, ZONE)).toBe(at('2026-12-07', '00:00'));
  });

  it('shows shifts less breaks, plus overtime', () => {
    expect(hours()).toEqual([8, 8, 8, 8, 8, 4, 0]);
  });

  it('shows closed days closed', () => {
    expect(hours(aCalendar(), at('2026-12-21', '00:00'))).toEqual([8, 8, 8, 0, 0, 0, 0]);
  });

  it('draws spans where the clock on the wall has them', () => {
    const week = weekHours(aCalendar(), monday, ZONE);
    if (typeof week === 'string') throw new Error(week);
    expect(week.days[0]?.spans).toEqual([
      { from: 7 / 24, to: 11.5 / 24 },
      { from: 12 / 24, to: 15.5 / 24 },
    ]);
  });

  it('runs to the end of the day with a shift that closes at 24:00', () => {
    const night = aCalendar({
      shifts: [{ name: 'Night', days: [1], start: '22:00', end: '24:00', breaks: [] }],
    });
    const week = weekHours(night, monday, ZONE);
    if (typeof week === 'string') throw new Error(week);
    expect(week.days[0]?.spans).toEqual([{ from: 22 / 24, to: 1 }]);
  });

  it('says in a sentence that nothing is open, or that something is not filled in yet', () => {
    expect(weekHours(aCalendar({ shifts: [], overtime: [] }), monday, ZONE)).toMatch(/no open hours/);
    const [shift] = aCalendar().shifts;
    expect(weekHours(aCalendar({ shifts: [{ ...shift!, start: '7' }] }), monday, ZONE)).toMatch(
      /appears when/,
    );
  });
});
