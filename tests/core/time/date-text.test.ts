import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sentence } from '../../../core/result.ts';
import { dateOrders, dateReadings, readDateText, type DateOrder } from '../../../core/time/date-text.ts';

const today = '2026-11-30';
const read = (text: string, order: DateOrder | null = null): string => {
  const found = readDateText(text, { order, today });
  if (!found.ok) return sentence(found.issues);
  return found.value.clock === null ? found.value.date : `${found.value.date} ${found.value.clock}`;
};

describe('a date that can be one day only is read', () => {
  it.each([
    ['2026-12-04', '2026-12-04'],
    ['2026/12/04', '2026-12-04'],
    ['2026-1-4', '2026-01-04'],
    ['20261204', '2026-12-04'],
    ['25.12.2026', '2026-12-25'],
    ['12/25/26', '2026-12-25'],
    ['4.4.2026', '2026-04-04'],
    ['25. 12. 2026', '2026-12-25'],
    ['25.12.', '2026-12-25'],
    ['4 Dec', '2026-12-04'],
    ['4 Dec 2026', '2026-12-04'],
    ['Dec 4, 2026', '2026-12-04'],
    ['December 4th, 2026', '2026-12-04'],
    ['4-Dec-26', '2026-12-04'],
    ['2026 Dec 4', '2026-12-04'],
    ['4. Dezember 2026', '2026-12-04'],
    ['4. Dez.', '2026-12-04'],
    ['4. März 2027', '2027-03-04'],
    ['1er février 2027', '2027-02-01'],
    ['4 déc. 2026', '2026-12-04'],
    ['4 août 2027', '2027-08-04'],
    ['4 de diciembre de 2026', '2026-12-04'],
    ['4 ene 2027', '2027-01-04'],
    ['Fri 4 Dec', '2026-12-04'],
    ['Freitag, 4. Dezember 2026', '2026-12-04'],
    ['Fr. 4.12.2026', '2026-12-04'],
    ['vendredi 4 décembre 2026', '2026-12-04'],
    ['mar. 8 déc. 2026', '2026-12-08'],
    ['Mar 8 2027', '2027-03-08'],
    // By Friday it is December.
    ['Fri 04/12/2026', '2026-12-04'],
  ])('%s', (text, date) => expect(read(text)).toBe(date));
});

describe('its time is read', () => {
  it.each([
    ['2026-12-04 14:00', '14:00'],
    ['2026-12-04T14:00', '14:00'],
    ['2026-12-04T14:00:00.000', '14:00'],
    ['4 Dec 2 pm', '14:00'],
    ['4 Dec 2:30 p.m.', '14:30'],
    ['Dec 4, 2026, 12:00 AM', '00:00'],
    ['Dec 4, 2026 at 12:15\u202fPM', '12:15'],
    ['4 déc. 14h30', '14:30'],
    ['4 décembre 2026 à 14 h 00', '14:00'],
    ['4. Dez. 14 Uhr', '14:00'],
    ['4. Dezember 2026 um 14:00', '14:00'],
    ['4. Dez. 14.30 Uhr', '14:30'],
    ['4 Dec 24:00', '24:00'],
    ['4 Dec 7:05', '07:05'],
  ])('%s', (text, clock) => expect(read(text)).toBe(`2026-12-04 ${clock}`));
});

it('a date without a year is the next such day, or one that has just been', () => {
  expect(read('29 Nov')).toBe('2026-11-29');
  expect(read('1 Nov')).toBe('2026-11-01');
  expect(read('31 Oct')).toBe('2026-10-31');
  expect(read('30 Oct')).toBe('2027-10-30');
  expect(read('4 Jan')).toBe('2027-01-04');
  expect(read('29 Feb')).toContain('is no date');
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 364 }), (from, ahead) => {
      const day = (n: number): string => new Date(n * 86_400_000).toISOString().slice(0, 10);
      const now = day(12_000 + from);
      const then = day(12_000 + from - 30 + ahead);
      const [, month, of] = then.split('-');
      fc.pre(`${month}-${of}` !== '02-29');
      const name = new Intl.DateTimeFormat('en', { month: 'short', timeZone: 'UTC' }).format(new Date(then));
      expect(dateReadings(`${Number(of)} ${name}`, now).map(({ date }) => date)).toEqual([then]);
    }),
  );
});

it('a month and a number can be its day or its year', () => {
  for (const text of ['Dec-26', 'Dez 26', 'déc. 26', 'Jan 27', 'Dec/26'])
    expect(read(text), text).toContain('can be a day or a year');
  expect(read('Dec 18')).toBe('2026-12-18');
  expect(read('Dec 26, 2026')).toBe('2026-12-26');
  expect(read('Sat Dec 26')).toBe('2026-12-26');
  expect(read('26 Dec')).toBe('2026-12-26');
});

// From memory: 25569 is 1 January 1970 and 45292 is 1 January 2024 in the 1900 date system.
it('a spreadsheet’s day number is read', () => {
  expect(read('45292')).toBe('2024-01-01');
  expect(read(String(25_569 + Date.UTC(2026, 11, 4) / 86_400_000))).toBe('2026-12-04');
  expect(read('45292.5')).toBe('2024-01-01 12:00');
  expect(read('45292,75')).toBe('2024-01-01 18:00');
});

describe('a date whose month is not clear', () => {
  it('is refused with each day that it can be', () => {
    expect(read('04.12.2026')).toBe(
      '“04.12.2026” can be Fri 4 Dec 2026 or Sun 12 Apr 2026. Write it like 2026-12-04 or 2026-12-04 14:00.',
    );
    expect(readDateText('12/4/26', { order: null, today })).toMatchObject({
      issues: [
        {
          meanings: [
            { when: 'dmy', means: 'Sun 12 Apr 2026' },
            { when: 'mdy', means: 'Fri 4 Dec 2026' },
          ],
        },
      ],
    });
    expect(read('4.12.')).toContain('can be');
    expect(dateOrders('26-12-04', today)).toEqual(['dmy', 'ymd']);
    expect(dateOrders('27/8/30', today)).toEqual(['dmy', 'ymd']);
    expect(dateOrders('15/12/26', today)).toEqual(['dmy']);
    expect(dateOrders('27.08.30', today)).toEqual(['dmy']);
  });

  it('is read where the order is known', () => {
    expect(read('04.12.2026', 'dmy')).toBe('2026-12-04');
    expect(read('12/4/26 2 pm', 'mdy')).toBe('2026-12-04 14:00');
    expect(read('26-12-04', 'ymd')).toBe('2026-12-04');
    expect(read('4.12.', 'dmy')).toBe('2026-12-04');
    expect(read('2026-12-04', 'mdy')).toBe('2026-12-04');
  });

  it('says which orders it allows', () => {
    expect(dateOrders('25/12/2026', today)).toEqual(['dmy']);
    expect(dateOrders('12/25/2026', today)).toEqual(['mdy']);
    expect(dateOrders('4/12/2026', today)).toEqual(['dmy', 'mdy']);
    expect(dateOrders('4 Dec', today)).toEqual([]);
    expect(dateOrders('2026-12-04', today)).toEqual([]);
  });
});

it('a date against the order of its column is refused', () => {
  expect(read('25/12/2026', 'mdy')).toBe(
    '“25/12/2026” is no day where the month comes first, as in this column. Write it like 2026-12-04 or 2026-12-04 14:00.',
  );
});

it.each([
  '',
  'soon',
  '2026-02-30',
  '31.11.2026',
  '2026-13-01',
  '1999-12-04',
  '2099-12-04',
  '4.12.126',
  '4/12-2026',
  '4 jui 2026',
  'Thu 4 Dec 2026',
  '2026-12-04 25:00',
  '2026-12-04 14:61',
  '4 Dec 13 pm',
  '4 Dec 0 am',
  '2026-12-04T14:00:30',
  // Another clock than the shop's.
  '2026-12-04T14:00:00Z',
  '2026-12-04T14:00+01:00',
  '2026-W49',
  '12',
  '1234',
  '99999',
  '4 5 Dec 2026',
  '4 Dec Dec',
  '14:00',
  '９.12.2026',
])('“%s” is no date', (text) => {
  expect(read(text)).toBe(
    `“${text}” is no date from 2001 to 2098. Write it like 2026-12-04 or 2026-12-04 14:00.`,
  );
});

const locales = ['en-US', 'en-GB', 'de-DE', 'de-CH', 'fr-FR', 'fr-CA', 'es-ES', 'en-CA'];
const styles = ['short', 'medium', 'long', 'full'] as const;
const orderIn: Readonly<Record<string, DateOrder>> = { 'en-US': 'mdy', 'en-CA': 'mdy' };

it('what is written in any of eight countries is read as meant, or refused with each day it can be', () => {
  const times = fc.integer({ min: Date.UTC(2002, 0, 1), max: Date.UTC(2090, 0, 1) });
  const timeStyles = fc.constantFrom(undefined, 'short' as const);
  fc.assert(
    fc.property(
      times,
      fc.constantFrom(...locales),
      fc.constantFrom(...styles),
      timeStyles,
      (at, locale, dateStyle, timeStyle) => {
        const meant = new Date(Math.floor(at / 60_000) * 60_000);
        const text = new Intl.DateTimeFormat(locale, { dateStyle, timeStyle, timeZone: 'UTC' }).format(meant);
        const [date = '', clock = ''] = meant.toISOString().split('T');
        const value = { date, clock: timeStyle ? clock.slice(0, 5) : null };
        const found = readDateText(text, { order: null, today });
        if (found.ok) expect(found.value).toEqual(value);
        else expect(found.issues[0]?.meanings?.length, text).toBeGreaterThan(1);
        const settled = readDateText(text, { order: orderIn[locale] ?? 'dmy', today });
        expect(settled, text).toEqual({ ok: true, value });
      },
    ),
    { numRuns: 5000 },
  );
});

it('any text at all is read or refused in a sentence', () => {
  const texts = fc.oneof(fc.string(), fc.stringMatching(/^[\d ./:,T-]{0,16}( ?[a-z]{1,4})?$/));
  fc.assert(
    fc.property(texts, (text) => {
      const found = readDateText(text, { order: null, today });
      if (found.ok) expect(found.value.date).toMatch(/^20\d\d-\d\d-\d\d$/);
      else expect(found.issues[0]?.message).toMatch(/\.$/);
    }),
    { numRuns: 5000 },
  );
});
