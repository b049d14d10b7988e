import { describe, expect, it } from 'vitest';
import { explain, type Explanation } from '../../../core/schedule/explain.ts';
import type { Problem, Schedule } from '../../../core/schedule/problem.ts';
import { aJob, aMachine, aProblem, must, queued, refusal, timed } from './hand-shop.ts';

/** The causes as words: kind, stretch, and what is in the way. */
const causesAndTimes = ({ causes }: Explanation) =>
  causes.map((c) => [c.kind, `${c.from}-${c.to}`, ...c.blockedBy].join(' '));

const why = (problem: Problem, words: Record<string, string>, job: string): Explanation =>
  must(explain(problem, timed(problem, queued(problem, words)), job));

describe('why a line ends when it does (worked by hand)', () => {
  it('behind a long line on the shear it waits for the machine, then is worked on', () => {
    const problem = aProblem({ jobs: [aJob('A', [3600, null]), aJob('B', [600, null])] });
    expect(causesAndTimes(why(problem, { S1: 'A B' }, 'B'))).toEqual([
      'waiting-for-machine 0-3600 A:shear',
      'work 3600-4200',
    ]);
  });

  it('its time at the shear and its time at the brake follow each other', () => {
    const problem = aProblem({ jobs: [aJob('A', [100, 400]), aJob('B', [50, 200])] });
    expect(causesAndTimes(why(problem, { S1: 'A B', B1: 'A B' }, 'B'))).toEqual([
      'waiting-for-machine 0-100 A:shear',
      'work 100-150',
      'waiting-for-machine 150-500 A:brake',
      'work 500-700',
    ]);
  });

  it('a brake that waits idle for blanks of the line ahead is a choice of the queue', () => {
    const problem = aProblem({ jobs: [aJob('A', [300, 100]), aJob('B', [100, 50])] });
    expect(causesAndTimes(why(problem, { S1: 'B A', B1: 'A B' }, 'B'))).toEqual([
      'work 0-100',
      'queue-choice 100-400 A:brake',
      'waiting-for-machine 400-500 A:brake',
      'work 500-550',
    ]);
  });

  it('a machine that waits idle for a line ahead that is not released yet waits for that release', () => {
    const problem = aProblem({
      jobs: [aJob('A', [100, null], null, { release: 300 }), aJob('B', [50, null])],
    });
    expect(causesAndTimes(why(problem, { S1: 'A B' }, 'B'))).toEqual([
      'idle-for-release 0-300 A:shear',
      'waiting-for-machine 300-400 A:shear',
      'work 400-450',
    ]);
  });

  it('a release counts before the step before: whichever lets the line ahead start last is the cause', () => {
    const problem = aProblem({
      now: 50,
      jobs: [
        aJob('A', [200, 60], null, { release: 500, shear: { started: { machine: 'S1', at: 20 } } }),
        aJob('B', [null, 40]),
      ],
    });
    expect(causesAndTimes(why(problem, { S1: 'A', B1: 'A B' }, 'B'))).toEqual([
      'idle-for-release 50-500 A:brake',
      'waiting-for-machine 500-560 A:brake',
      'work 560-600',
    ]);
  });

  it('of a changeover only the part counts that goes on after the blanks are there', () => {
    const changeover = { combine: 'sum' as const, attributes: { profile: 300 } };
    const problem = aProblem({
      machines: [aMachine('S1'), aMachine('B1', { changeover, initial: { profile: 'cap' } })],
      jobs: [aJob('A', [100, 60], null, { attributes: { profile: 'valley' } })],
    });
    expect(causesAndTimes(why(problem, { S1: 'A', B1: 'A' }, 'A'))).toEqual([
      'work 0-100',
      'changeover 100-300',
      'work 300-360',
    ]);
  });

  it('closed hours are named as such, in the middle of work and of waiting', () => {
    const open = [
      { start: 0, end: 100 },
      { start: 150, end: 1000 },
    ];
    const problem = aProblem({
      machines: [aMachine('S1', { open })],
      jobs: [aJob('A', [80, null]), aJob('B', [100, null])],
    });
    expect(causesAndTimes(why(problem, { S1: 'A B' }, 'B'))).toEqual([
      'waiting-for-machine 0-80 A:shear',
      'work 80-100',
      'closed 100-150',
      'work 150-230',
    ]);
  });

  it('before its material is in, the release is the cause, whatever the machine does', () => {
    const problem = aProblem({
      jobs: [aJob('A', [500, null]), aJob('B', [10, null], null, { release: 300 })],
    });
    expect(causesAndTimes(why(problem, { S1: 'A B' }, 'B'))).toEqual([
      'release 0-300',
      'waiting-for-machine 300-500 A:shear',
      'work 500-510',
    ]);
  });

  it('behind what is frozen it waits for what nobody may move', () => {
    const problem = aProblem({
      jobs: [aJob('A', [100, null]), aJob('B', [10, null]), aJob('C', [20, null])],
      frozen: { S1: ['A:shear'] },
    });
    expect(causesAndTimes(why(problem, { S1: 'A B C' }, 'C'))).toEqual([
      'pinned-or-frozen 0-100 A:shear',
      'waiting-for-machine 100-110 B:shear',
      'work 110-130',
    ]);
  });

  it('a brake that began on the first lot runs dry until the last one is cut', () => {
    // Half of A's blanks are ready at 100. The brake bends its 40 s share of them by 120 and gets the rest at 200.
    const problem = aProblem({ jobs: [aJob('A', [200, 40], null, { shear: { transferShare: 0.5 } })] });
    expect(causesAndTimes(why(problem, { S1: 'A', B1: 'A' }, 'A'))).toEqual([
      'work 0-100',
      'work 100-120',
      'waiting-for-step-before 120-200 A:shear',
      'work 200-220',
    ]);
  });

  it('with one person for two machines the second machine waits for the crew', () => {
    const problem = aProblem({
      jobs: [aJob('A', [100, null]), aJob('B', [null, 50])],
      crew: [{ start: 0, end: 1000, people: 1 }],
    });
    expect(causesAndTimes(why(problem, { S1: 'A', B1: 'B' }, 'B'))).toEqual(['crew 0-100', 'work 100-150']);
  });

  it('a step started before now is explained from its start', () => {
    const problem = aProblem({
      now: 50,
      jobs: [aJob('A', [200, 10], null, { shear: { started: { machine: 'S1', at: 20 } } })],
    });
    const explanation = why(problem, { S1: 'A', B1: 'A' }, 'A');
    expect(causesAndTimes(explanation)).toEqual(['work 20-220', 'work 220-230']);
    expect(explanation.seconds).toEqual({ work: 210 });
  });
});

describe('the cheapest change that saves a late line (worked by hand)', () => {
  it('puts a short late line before a long one that has time, and says whom it delays', () => {
    const problem = aProblem({ jobs: [aJob('A', [3600, null], 9000), aJob('B', [600, null], 1000)] });
    const { late, cheapest } = why(problem, { S1: 'A B' }, 'B');
    expect(late).toBe(3200);
    expect(cheapest).toMatchObject({
      kind: 'earlier-position',
      moves: [{ operation: 'B:shear', machine: 'S1', position: 0 }],
      end: 600,
      late: 0,
      later: [{ job: 'A', before: 3600, after: 4200, lateBefore: 0, lateAfter: 0 }],
      objectiveAdded: -3200,
    });
  });

  it('uses the idle brake when going first on the busy one would make another line late', () => {
    const problem = aProblem({
      machines: [aMachine('B1'), aMachine('B2')],
      jobs: [aJob('A', [null, 100], 100), aJob('B', [null, 50], 120)],
    });
    const { cheapest } = why(problem, { B1: 'A B' }, 'B');
    expect(cheapest).toMatchObject({
      kind: 'other-machine',
      moves: [{ operation: 'B:brake', machine: 'B2', position: 0 }],
      end: 50,
      later: [],
      objectiveAdded: -30,
    });
  });

  it('asks for as many whole minutes of overtime as are missing', () => {
    // A is alone on the shear: 7,000 s of work in 3,600 s of hours before the night, due 100 s into it: two minutes.
    const open = [
      { start: 0, end: 3600 },
      { start: 50_000, end: 90_000 },
    ];
    const problem = aProblem({
      machines: [aMachine('S1', { open })],
      jobs: [aJob('A', [3700, null], 3720)],
    });
    const { changes, cheapest } = why(problem, { S1: 'A' }, 'A');
    expect(changes).toHaveLength(1);
    expect(cheapest).toMatchObject({
      kind: 'overtime',
      overtime: { machine: 'S1', from: 3600, seconds: 120 },
      end: 3700,
      late: 0,
    });
  });

  it('offers no overtime in a break, nor while the machine is out of service', () => {
    // 100 s are missing. The break after 1000 s would do, and so would the night after 3600 s, down from 3650 s.
    const open = [
      { start: 0, end: 1000 },
      { start: 1200, end: 3600 },
      { start: 50_000, end: 90_000 },
    ];
    const missing = (noOvertime: { start: number; end: number }[]) =>
      why(
        aProblem({
          machines: [aMachine('S1', { open, noOvertime })],
          jobs: [aJob('A', [3500, null], 3700)],
        }),
        { S1: 'A' },
        'A',
      ).changes.map((change) => [change.overtime?.from, change.overtime?.seconds, change.late]);
    expect(missing([])).toEqual([[3600, 120, 0]]);
    expect(missing([{ start: 3600, end: 4000 }])).toEqual([[1000, 120, 0]]);
    const rest = { start: 1000, end: 1200 };
    expect(missing([rest, { start: 3650, end: 4000 }])).toEqual([[3600, 50, 46_350]]);
    expect(missing([rest, { start: 3600, end: 60_000 }])).toEqual([]);
  });

  it('names what helps most when no single change saves the line, and nothing when nothing helps', () => {
    const problem = aProblem({ jobs: [aJob('A', [300, null]), aJob('B', [100, null], 50)] });
    const helped = why(problem, { S1: 'A B' }, 'B');
    expect(helped.cheapest).toBeNull();
    expect(helped.helpsMost).toMatchObject({ kind: 'earlier-position', end: 100, late: 50 });
    const alone = why(problem, { S1: 'B A' }, 'B');
    expect([alone.late, alone.cheapest, alone.helpsMost]).toEqual([50, null, null]);
  });

  it('leaves a line alone that is on time', () => {
    const problem = aProblem({ jobs: [aJob('A', [300, null], 300)] });
    expect(why(problem, { S1: 'A' }, 'A')).toMatchObject({ late: 0, changes: [], cheapest: null });
  });

  it('refuses a line that is not in the plan, and queues of another plan', () => {
    const problem = aProblem({ jobs: [aJob('A', [300, null])] });
    const schedule = timed(problem, { S1: ['A:shear'] });
    expect(refusal(explain(problem, schedule, 'X'))).toContain('Line X is not among the lines');
    const other: Schedule = { ...schedule, queues: { S1: ['A:shear', 'Z:shear'] } };
    expect(refusal(explain(problem, other, 'A'))).toContain('Z:shear, which is not in the plan');
  });
});
