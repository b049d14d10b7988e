import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DecimalMark } from '../../../core/units/number.ts';
import { formatDuration, formatHours, parseDuration, shortDuration } from '../../../core/units/duration.ts';

const read = (text: string, decimals: DecimalMark = 'point'): number | string => {
  const duration = parseDuration(text, { decimals });
  return duration.ok ? duration.value : (duration.issues[0]?.message ?? '');
};

describe('a duration', () => {
  it.each([
    [0, '0 min'],
    [45, '45 s'],
    [150, '2 min 30 s'],
    [1200, '20 min'],
    [4800, '1 h 20 min'],
    [3600, '1 h'],
    [3599, '1 h'],
    [132 * 3600, '132 h'],
    [1106 * 3600, '1106 h'],
    [-1200, '−20 min'],
    [-0.2, '0 min'],
  ])('of %d s is written "%s"', (seconds, text) => {
    expect(formatDuration(seconds)).toBe(text);
  });

  it('added up over many lines has no minutes from a hundred hours up', () => {
    expect(formatHours(99.5 * 3600)).toBe('99 h 30 min');
    expect(formatHours(1234.6 * 3600)).toBe('1235 h');
    expect(formatHours(-100.6 * 3600)).toBe('−101 h');
  });

  it('of two days or more can be given in days', () => {
    expect(shortDuration(5 * 86_400 + 3600)).toBe('5 d');
    expect(shortDuration(5400)).toBe('1 h 30 min');
  });

  it.each([
    ['1 h 20 min', 4800],
    ['1h20m', 4800],
    ['1:20', 4800],
    ['1.5 h', 5400],
    ['90 s', 90],
    ['45', 2700],
    ['2 min 30 sec', 150],
    ['1106 h', 3_981_600],
    ['1,5 h', 5400],
    ['0,75', 45],
    ['2 Std. 10 Min.', 7800],
  ])('is read from "%s"', (text, seconds) => {
    expect(read(text)).toBe(seconds);
  });

  it.each(['', 'soon', '-5', '-5 min', '1:75', '3 days', '1 h 20', '1 h, 20 min', '1e3', 'h'])(
    'is not read from "%s"',
    (text) => {
      expect(read(text)).toBe(`“${text}” is not a duration.`);
    },
  );

  it('is refused with both readings where its number can be two', () => {
    expect(read('1,106 h')).toBe('“1,106” can be 1106 h or 1.106 h.');
    expect(read('1,106 h', 'comma')).toBe(3982);
  });

  it('reads back as itself, within the minute it is rounded to', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 7_776_000 }), (seconds) => {
        expect(Math.abs(Number(read(formatDuration(seconds))) - seconds)).toBeLessThanOrEqual(
          seconds < 600 ? 0 : 30,
        );
      }),
    );
  });
});
