import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { decode } from '../../../core/schedule/decode.ts';
import type { MachineInput, OperationInput, ProblemInput } from '../../../core/schedule/problem.ts';

const machine = (id: string): MachineInput => ({
  id,
  stage: 'bend',
  initial: { tools: 'A' },
  changeover: { combine: 'sum', attributes: { tools: 600, profile: 60 } },
  open: null,
});
/** Bends a profile: on M1 with its tools A, on M2 with B. */
const bend = (id: string, profile: string, onFirst = 'A'): OperationInput => ({
  id,
  stage: 'bend',
  seconds: 100,
  machines: [
    { id: 'M1', attributes: { tools: onFirst } },
    { id: 'M2', attributes: { tools: 'B' } },
  ],
  attributes: { profile },
});
const problem: ProblemInput = {
  name: 'tools by machine',
  machines: [machine('M1'), machine('M2')],
  jobs: [bend('a', 'cap'), bend('b', 'cap', 'C'), bend('c', 'sill')].map((operation) => ({
    id: operation.id,
    release: 0,
    due: null,
    weight: 1,
    operations: [operation],
  })),
  objective: { weightedTardiness: 1, changeover: 1, makespan: 0, flowTime: 0, stability: 0 },
  now: 0,
};

describe('an operation that asks for other things on each machine', () => {
  it.each([
    // M1 has A: nothing for a; C for b; back to A and another profile for c.
    [
      { M1: ['a', 'b', 'c'], M2: [] },
      { a: 0, b: 600, c: 660 },
    ],
    // M2 has A and needs B once.
    [
      { M1: [], M2: ['a', 'b', 'c'] },
      { a: 600, b: 0, c: 60 },
    ],
  ])('is changed over to as that machine needs: %o', (queues, expected) => {
    const built = buildProblem(problem);
    if (!built.ok) throw new Error(built.issues[0]!.message);
    const schedule = decode(built.value, queues);
    if (!schedule.ok) throw new Error(schedule.issues[0]!.message);
    const seconds = schedule.value.operations.map((o) => [o.operation, o.changeoverSeconds]);
    expect(Object.fromEntries(seconds)).toEqual(expected);
    expect(check(built.value, schedule.value)).toEqual([]);
    const wrong = {
      ...schedule.value,
      operations: schedule.value.operations.map((o) =>
        o.changeoverSeconds === 600 ? { ...o, changeoverSeconds: 0, changeoverStart: o.start } : o,
      ),
    };
    expect(check(built.value, wrong).map(({ rule }) => rule)).toContain('changeover');
  });
});
