import { describe, expect, it } from 'vitest';
import { decode } from '../../../core/schedule/decode.ts';
import type { Queues, Schedule } from '../../../core/schedule/problem.ts';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { toInstant } from '../../../core/time/wall.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { root } from './demo-shop.ts';

// Every figure is worked out by hand in demo-data/small/README.md.
const now = toInstant('2026-11-23', '08:00', 'UTC');
const built = toProblem(loadDemo(`${root}small`, now), now);
if (!built.ok) throw new Error(JSON.stringify(built.issues));
const { problem, operations, unplannable } = built.value;

const shear = ['1/1:shear', '1/2:shear', '2/1:shear', '3/1:shear'];
function planOf(queues: Queues): Schedule {
  const schedule = decode(problem, queues);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.issues));
  return schedule.value;
}
const clock = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(11, 19);

describe('the small shop on paper', () => {
  it('takes the times worked out by hand', () => {
    expect(unplannable).toEqual([]);
    expect(Object.fromEntries([...operations].map(([id, o]) => [id, o.machines[0]?.seconds]))).toEqual({
      '1/1:shear': 330,
      '1/1:brake': 860,
      '1/2:shear': 230,
      '1/2:brake': 660,
      '2/1:shear': 150,
      '3/1:shear': 180,
      '3/1:brake': 460,
    });
  });

  it('runs by the clock as worked out by hand in the order of the lines', () => {
    const plan = planOf({ S: shear, B: ['1/1:brake', '1/2:brake', '3/1:brake'] });
    expect(
      plan.operations.map((o) => [o.operation, o.changeoverSeconds, clock(o.start), clock(o.end)]).sort(),
    ).toEqual([
      ['1/1:brake', 0, '08:05:30', '08:19:50'],
      ['1/1:shear', 0, '08:00:00', '08:05:30'],
      ['1/2:brake', 300, '08:24:50', '08:35:50'],
      ['1/2:shear', 0, '08:05:30', '08:09:20'],
      ['2/1:shear', 600, '08:19:20', '08:21:50'],
      ['3/1:brake', 300, '08:40:50', '08:48:30'],
      ['3/1:shear', 0, '08:21:50', '08:24:50'],
    ]);
    expect(plan.terms).toMatchObject({ weightedTardiness: 770, changeover: 1200 });
    expect(plan.objective).toBe(1970);
  });

  it('saves a changeover but loses more to lateness with both angles first', () => {
    const plan = planOf({ S: shear, B: ['1/1:brake', '3/1:brake', '1/2:brake'] });
    expect(clock(plan.ends['3/1'] ?? 0)).toBe('08:32:30');
    expect(clock(plan.ends['1/2'] ?? 0)).toBe('08:48:30');
    expect(plan.terms).toMatchObject({ weightedTardiness: 1110, changeover: 900 });
    expect(plan.objective).toBe(2010);
  });
});
