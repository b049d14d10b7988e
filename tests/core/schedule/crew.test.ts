import { expect, it } from 'vitest';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { aJob, aMachine, aProblem, must } from './hand-shop.ts';

it('what has started keeps its people: another machine’s operation waits, also when both would start this very second', () => {
  const problem = aProblem({
    machines: [aMachine('B1'), aMachine('S1')],
    jobs: [
      aJob('A', [600, null], null, { shear: { started: { machine: 'S1', at: 0 } } }),
      aJob('B', [null, 300]),
    ],
    crew: [{ start: 0, end: 10_000, people: 1 }],
  });
  const schedule = must(decode(problem, { B1: ['B:brake'], S1: ['A:shear'] }));
  expect(schedule.ends).toEqual({ A: 600, B: 900 });
  expect(check(problem, schedule)).toEqual([]);
});
