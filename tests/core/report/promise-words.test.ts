import { describe, expect, it } from 'vitest';
import { promiseWords } from '../../../core/report/promise-words.ts';
import { at, ZONE } from '../../support/builders.ts';

const HOUR = 3600;
const safe = { end: at('2026-12-03', '14:30') - 20, makesLate: [], queues: {} };
const answer = (own: object = {}) => ({ lineId: '9001/1', safe, earlier: [], message: null, ...own });

describe('a date to promise, in words', () => {
  it('is the earliest that makes nothing late, to the whole minute', () => {
    expect(promiseWords(answer(), null, ZONE)).toEqual({
      ready: 'Ready Thu 3 Dec 14:30 without making anything late.',
      tooEarly: '',
      earlier: [],
      date: at('2026-12-03', '14:30'),
    });
  });

  it('says that a due date is earlier, and by how much; one that is not says nothing', () => {
    expect(promiseWords(answer(), at('2026-12-03', '09:30'), ZONE).tooEarly).toBe(
      'The due date is 5 h before that: this line or another would be late.',
    );
    expect(promiseWords(answer(), at('2026-12-03', '14:30'), ZONE).tooEarly).toBe('');
  });

  it('says what an earlier date would cost', () => {
    const makesLate = [{ job: '1042/2', before: 0, after: HOUR, lateBefore: 0, lateAfter: HOUR }];
    const earlier = [{ end: at('2026-12-02', '11:00'), makesLate }];
    expect(promiseWords(answer({ earlier }), null, ZONE).earlier).toEqual([
      'Wed 2 Dec 11:00: makes 1042/2 late by 1 h.',
    ]);
  });

  it('says why there is none', () => {
    expect(promiseWords(answer({ safe: null }), null, ZONE)).toMatchObject({
      ready: 'Wherever it goes, something else becomes late.',
      date: null,
    });
    expect(promiseWords(answer({ safe: null, message: 'Too long.' }), 1, ZONE).ready).toBe('Too long.');
  });
});
