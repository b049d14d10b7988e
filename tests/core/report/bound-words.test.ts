import { describe, expect, it } from 'vitest';
import { boundSentence } from '../../../core/report/bound-words.ts';

describe('how near a plan is to the best possible', () => {
  it('is a percentage, rounded up, only where a bound is near', () => {
    expect(boundSentence(103.2, 100)).toBe('Within 4 % of what is possible: that much is proven.');
    expect(boundSentence(150, 100)).toMatch(/^Within 50 %/);
    expect(boundSentence(151, 100)).not.toMatch(/Within/);
  });

  it('says that a plan that meets its bound is the best', () => {
    expect(boundSentence(100, 100)).toMatch(/^No better plan is possible/);
    expect(boundSentence(0, 0)).toMatch(/^No better plan is possible/);
  });

  it('otherwise says plainly that it is not known, and what share is proven', () => {
    expect(boundSentence(400, 100)).toMatch(/is not known: only 25 % of its cost is proven/);
    expect(boundSentence(400, 0)).toBe('How near this is to the best possible is not known.');
    expect(boundSentence(400, null)).toBe('How near this is to the best possible is not known.');
  });
});
