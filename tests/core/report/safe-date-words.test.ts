import { expect, it } from 'vitest';
import { safeDateWords } from '../../../core/report/safe-date-words.ts';
import type { Chances } from '../../../core/learn/chance.ts';
import { at } from '../../support/builders.ts';

/** Ten runs that end an hour apart, from 08:00 on. */
const eight = at('2026-12-01', '08:00');
const ends = Float64Array.from({ length: 10 }, (_, k) => eight + k * 3600);
const played: Chances = { '1042/1': { onTime: 1, p10: null, p50: null, p80: null, p90: null, ends } };
const words = (confidence: number, line = '1042/1') =>
  safeDateWords(played, line, confidence, 'America/Chicago').words;

it('a surer promise is a later date: by when so many of ten runs were done', () => {
  expect(words(0.5)).toBe('Ready by Tue 1 Dec 12:00 in 50 of 100 such plans, as your finished work shows.');
  expect(words(0.9)).toBe('Ready by Tue 1 Dec 16:00 in 90 of 100 such plans, as your finished work shows.');
});

it('the date itself is to the whole minute, never before what was computed', () => {
  const odd = { '1042/1': { ...played['1042/1']!, ends: Float64Array.of(eight + 1) } };
  expect(safeDateWords(odd, '1042/1', 0.9, 'America/Chicago').date).toBe(eight + 60);
  expect(safeDateWords(played, '9999/1', 0.9, 'America/Chicago').date).toBeNull();
});

it('there is none for a line that is not in the plan', () => {
  expect(words(0.9, '9999/1')).toMatch(/9999\/1 is not in the plan/);
});
