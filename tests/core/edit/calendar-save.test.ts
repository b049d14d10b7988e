import { describe, expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import { hasHours, type Calendar } from '../../../core/time/calendar.ts';
import { aShop } from '../../support/builders.ts';

const shop = aShop();
const [day] = shop.calendar as readonly [Calendar];
const shift = { name: 'Day', days: [1], start: '07:00', end: '15:30', breaks: [] };
const save = (breaks: readonly { start: string; end: string }[]) =>
  applyCommand(shop, {
    do: 'row.save',
    kind: 'calendar',
    row: { ...day, shifts: [shift, { ...shift, breaks }] },
  });

describe('a calendar', () => {
  it('is saved with breaks within their shift, up to its ends', () => {
    expect(
      save([
        { start: '12:00', end: '12:30' },
        { start: '07:00', end: '15:30' },
      ]).ok,
    ).toBe(true);
  });

  it.each([
    ['06:45', '07:15'],
    ['15:00', '15:45'],
    ['16:00', '16:30'],
  ])('is refused with a break from %s to %s outside its shift, at the field', (start, end) => {
    expect(
      save([
        { start: '12:00', end: '12:30' },
        { start, end },
      ]),
    ).toMatchObject({
      ok: false,
      issues: [
        {
          field: 'shifts.1.breaks.1.start',
          message: `The break from ${start} to ${end} is not within its shift, 07:00 to 15:30.`,
        },
      ],
    });
  });

  it('has hours by its shifts or its overtime', () => {
    expect(hasHours({ shifts: [shift], overtime: [] })).toBe(true);
    expect(
      hasHours({ shifts: [], overtime: [{ name: 'Sat', date: '2026-12-05', start: '07:00', end: '12:00' }] }),
    ).toBe(true);
    expect(hasHours({ shifts: [], overtime: [] })).toBe(false);
  });
});
