import { describe, expect, it } from 'vitest';
import { lateParts, overdueSentence } from '../../../core/report/late-words.ts';
import { formatHours } from '../../../core/units/duration.ts';

const HOUR = 3600;

describe('hours late that were overdue already', () => {
  it('are told from the rest', () => {
    expect(overdueSentence({ tardiness: 12 * HOUR, overdue: 7.5 * HOUR })).toBe(
      'Of the hours late, 7 h 30 min were already overdue when planned; the rest is 4 h 30 min.',
    );
  });

  it('are not spoken of where there are none', () => {
    expect(overdueSentence({ tardiness: 12 * HOUR, overdue: 0 })).toBe('');
    expect(overdueSentence({ tardiness: 0, overdue: 0 })).toBe('');
  });

  it.each([
    // 2,102.8 h is shown as 2,103 h: 1,880.4 and 222.4 would be 1,880 and 222.
    [2102.8 * HOUR, 1880.4 * HOUR, 1880 * HOUR, 223 * HOUR],
    [150.2 * HOUR, 30.6 * HOUR, 31 * HOUR, 119 * HOUR],
    [5 * HOUR + 40, 2 * HOUR + 20, 2 * HOUR, 3 * HOUR + 60],
  ])('of %d s in all, %d s of them, add up to what is shown', (tardiness, some, overdue, rest) => {
    expect(lateParts({ tardiness, overdue: some })).toEqual({ overdue, rest });
    expect(formatHours(overdue + rest)).toBe(formatHours(tardiness));
  });
});
