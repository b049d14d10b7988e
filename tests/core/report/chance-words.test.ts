import { describe, expect, it } from 'vitest';
import { chanceWords, farChanceWords } from '../../../core/report/chance-words.ts';

describe('a chance in words', () => {
  it.each([
    [0, 'under 1 %'],
    [4 / 500, 'under 1 %'],
    [5 / 500, '1 %'],
    [0.824, '82 %'],
    [495 / 500, '99 %'],
    [496 / 500, 'over 99 %'],
    [1, 'over 99 %'],
  ])('of %d is "%s": never and always are not known', (share, words) => {
    expect(chanceWords(share)).toBe(words);
  });

  it('says that past work overran where the plan shows a line on time that is late more often than not', () => {
    expect(farChanceWords(0.49, false)).toMatch(/on time, but past work overran these estimates\.$/);
    expect(farChanceWords(0.5, false)).toBe('');
    expect(farChanceWords(1, false)).toBe('');
  });

  it('says the contrary where the plan shows a line late that is on time more often than not', () => {
    expect(farChanceWords(0.51, true)).toMatch(/late, but past work took less than these estimates\.$/);
    expect(farChanceWords(0.5, true)).toBe('');
    expect(farChanceWords(0, true)).toBe('');
  });
});
