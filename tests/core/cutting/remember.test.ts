import { describe, expect, it } from 'vitest';
import { NO_WORK } from '../../../core/cutting/work.ts';
import { Remembered, rememberRuns } from '../../../core/cutting/remember.ts';
import type { RunInput } from '../../../core/cutting/run.ts';
import { metric } from '../../support/writing.ts';

const run = (quantity: number): RunInput => ({
  lines: [{ id: '1001/1', girthMm: 200, lengthMm: 3000, quantity, overrun: 0, due: 0 }],
  stock: [],
  shear: {
    lengthMm: 3100,
    backGaugeMm: { min: 5, max: 600 },
    scribe: false,
    minStripMm: 20,
    continuousFrom: 3,
  },
  keep: { widthMm: 100, lengthMm: 1000, most: 10, worth: 0.25 },
  work: NO_WORK,
  units: metric,
});

describe('values remembered by key', () => {
  it('forget the one put longest ago; one put again counts as new', () => {
    const kept = new Remembered<number>(2);
    for (const [key, value] of [
      ['a', 1],
      ['b', 2],
      ['a', 3],
      ['c', 4],
    ] as const)
      kept.put(key, value);
    expect(kept.entries()).toEqual([
      ['a', 3],
      ['c', 4],
    ]);
    expect(kept.get('b')).toBeUndefined();
  });
});

describe('runs remembered', () => {
  it('are worked on once for the same run, though another object, and again for another quantity', () => {
    const asked: number[] = [];
    const answer = rememberRuns(({ lines }) => ({ pieces: asked.push(lines[0]!.quantity) }));
    expect(answer(run(5))).toBe(answer(run(5)));
    expect(answer(run(6))).toEqual({ pieces: 2 });
    expect(asked).toEqual([5, 6]);
  });
});
