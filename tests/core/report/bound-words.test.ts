import { describe, expect, it } from 'vitest';
import { boundSentence } from '../../../core/report/bound-words.ts';

describe('how much better a plan could be', () => {
  it('is a share of this plan, rounded up, only where a bound is near', () => {
    // (103.2 − 100) ÷ 103.2 = 3.1 %
    expect(boundSentence(103.2, 100)).toBe(
      'No plan can beat this by more than 4 %, lateness and changeovers weighed together.',
    );
    expect(boundSentence(125, 100)).toMatch(/^No plan can beat this by more than 20 %,/);
    // A bound of two thirds is the last that is near.
    expect(boundSentence(150, 100)).toMatch(/more than 34 %/);
    expect(boundSentence(151, 100)).not.toMatch(/more than/);
  });

  it('is nothing where the plan meets its bound', () => {
    expect(boundSentence(100, 100)).toMatch(/^No better plan is possible/);
    expect(boundSentence(0, 0)).toMatch(/^No better plan is possible/);
  });

  it('otherwise is plainly not known, and what share is proven is said', () => {
    expect(boundSentence(400, 100)).toMatch(/is not known: only 25 % of this, .*, is proven unavoidable/);
    expect(boundSentence(400, 0)).toBe('How much better a plan could be is not known.');
    expect(boundSentence(400, null)).toBe('How much better a plan could be is not known.');
  });
});
