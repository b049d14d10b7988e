import { describe, expect, it } from 'vitest';
import { aimWords, gainWords, linesOf } from '../../../core/report/search-words.ts';

const HOUR = 3600;
const before = { lateLines: 41, lateSeconds: 2103 * HOUR, changeoverSeconds: 26 * HOUR };

describe('what a plan gains on another', () => {
  it('is said line by line and hour by hour', () => {
    const after = { lateLines: 34, lateSeconds: 1968 * HOUR, changeoverSeconds: 13.5 * HOUR };
    expect(gainWords(before, after)).toBe('7 fewer late lines, 135 h less late, 12 h 30 min less changeover');
  });

  it('says what got worse', () => {
    const after = { lateLines: 42, lateSeconds: 2003 * HOUR, changeoverSeconds: 27 * HOUR };
    expect(gainWords(before, after)).toBe('1 more late line, 100 h less late, 1 h more changeover');
    expect(gainWords(after, before)).toBe('1 fewer late line, 100 h more late, 1 h less changeover');
  });

  it('agrees with the hours that are shown of both plans', () => {
    // Shown as 1,259 h and 915 h, though 343.4 h lie between them.
    const late = (hours: number) => ({ ...before, lateSeconds: hours * HOUR });
    expect(gainWords(late(1258.6), late(915.2))).toBe('344 h less late');
    expect(gainWords(late(1258.6), late(1258.7))).toBe('6 min more late');
  });

  it('leaves out what is as it was', () => {
    expect(gainWords(before, { ...before, lateSeconds: 2102 * HOUR })).toBe('1 h less late');
    expect(gainWords(before, before)).toBe('');
  });
});

it('a share of lines is told in a round number of them', () => {
  expect([0.8, 0.9, 0.95, 0.5, 0.99].map(linesOf)).toEqual([
    '8 of 10',
    '9 of 10',
    '19 of 20',
    '5 of 10',
    '99 of 100',
  ]);
  expect(aimWords(0.9)).toBe('aiming for 9 of 10 lines on time');
});
