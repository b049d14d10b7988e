import { describe, expect, it } from 'vitest';
import type { LineLateness } from '../../../core/planning/lateness.ts';
import { repairWords } from '../../../core/report/repair-words.ts';

const HOUR = 3600;
const row = (lineId: string, lateness: number): LineLateness => ({
  lineId,
  orderId: lineId.split('/')[0]!,
  end: 100 * HOUR + lateness,
  due: 100 * HOUR,
  lateness,
  importance: 1,
});

const before = [row('1042/1', HOUR), row('1043/1', -HOUR), row('1044/1', -HOUR)];
const kept = [row('1042/1', 3 * HOUR), row('1043/1', 2 * HOUR), row('1044/1', HOUR)];
const mended = [row('1042/1', 3 * HOUR), row('1043/1', -60), row('1044/1', HOUR)];

describe('a plan after a breakdown, in words', () => {
  it('says of the kept order who becomes late, and that nothing moves', () => {
    expect(repairWords(before, kept, kept, 0)).toEqual({
      late: '3 lines are late; 1 was before.',
      others: 'Makes 1042/1 later by 2 h, 1043/1 late by 2 h and 1044/1 late by 1 h.',
      saved: '',
      moved: 'No operation moves.',
      shifted: '3 lines end at another time than before, 7 h in all.',
    });
  });

  it('says of the repair who is saved by it, and how many operations move', () => {
    expect(repairWords(before, kept, mended, 2)).toEqual({
      late: '2 lines are late; 1 was before.',
      others: 'Makes 1042/1 later by 2 h and 1044/1 late by 1 h.',
      saved: '1043/1 in time again.',
      moved: '2 operations move.',
      shifted: '3 lines end at another time than before, 4 h 59 min in all.',
    });
    expect(repairWords([], [], [], 1)).toMatchObject({
      late: '0 lines are late; 0 were before.',
      others: 'Nothing becomes late.',
      moved: '1 operation moves.',
      shifted: 'Every line ends when it did before.',
    });
  });
});
