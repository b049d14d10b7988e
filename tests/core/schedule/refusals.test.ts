import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildProblem } from '../../../core/schedule/build.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { improve } from '../../../core/schedule/improve.ts';
import type { MachineInput, OperationInput, ProblemInput } from '../../../core/schedule/problem.ts';
import { aJob, aMachine, must, refusal } from './hand-shop.ts';

/** One shear, one brake, one line through both; what a test spoils is given by name. */
const good: ProblemInput = {
  name: 'good',
  machines: [aMachine('S1'), aMachine('B1')],
  jobs: [aJob('A', [60, 90], 500), aJob('B', [30, 40], 500)],
  now: 0,
  objective: { weightedTardiness: 1, changeover: 0, makespan: 0, flowTime: 0, stability: 0 },
};
const told = (own: Partial<ProblemInput>): string => refusal(buildProblem({ ...good, ...own }));
const withMachine = (own: Partial<MachineInput>) => told({ machines: [aMachine('S1'), aMachine('B1', own)] });
const withShear = (own: Partial<OperationInput>) =>
  told({ jobs: [aJob('A', [60, 90], 500, { shear: own })] });
const withJob = (own: { release?: number; due?: number; weight?: number }) =>
  told({ jobs: [{ ...aJob('A', [60, 90]), ...own }] });

it('the shop that the tests spoil is accepted as it is', () => expect(told({})).toBe('accepted'));

describe('operations and machines', () => {
  it('no machine of the stage: the operation is named', () =>
    expect(told({ machines: [aMachine('S1')] })).toContain('No machine can do operation A:brake.'));
  it('a machine that is not in the shop is named with its operation', () =>
    expect(withShear({ machines: [{ id: 'S9' }] })).toContain('Operation A:shear names machine S9'));
  it('an empty list of machines: the operation is named', () =>
    expect(withShear({ machines: [] })).toContain('No machine can do operation A:shear.'));
  it('no open hours at all: the machine is named', () =>
    expect(withMachine({ open: [] })).toContain('Machine B1 has no open hours at all.'));
  it('open hours that overlap or run backwards: the machine is named', () => {
    const overlap = [
      { start: 0, end: 50 },
      { start: 40, end: 90 },
    ];
    expect(withMachine({ open: overlap })).toContain('The open hours of machine B1 overlap');
    expect(withMachine({ open: [{ start: 50, end: 50 }] })).toContain('The open hours of machine B1');
  });
  it('open hours that lie in the past or end too soon: machine and operation are named, and there is no plan', () => {
    for (const open of [[{ start: -900, end: -300 }], [{ start: 0, end: 80 }]]) {
      const problem = must(buildProblem({ ...good, machines: [aMachine('S1'), aMachine('B1', { open })] }));
      const queues = { S1: ['A:shear', 'B:shear'], B1: ['A:brake', 'B:brake'] };
      expect(refusal(decode(problem, queues))).toContain(
        'The open hours of machine B1 end before operation A:brake',
      );
      expect([...improve(problem, { seed: 1 })]).toEqual([]);
    }
  });
  it('a line without steps, and ids given twice, are named', () => {
    expect(told({ jobs: [aJob('A', [null, null])] })).toContain('Line A has no operations.');
    expect(told({ jobs: [good.jobs[0]!, good.jobs[0]!] })).toContain('The line A is listed twice.');
    expect(told({ machines: [aMachine('S1'), aMachine('B1'), aMachine('B1')] })).toContain(
      'The machine B1 is listed twice.',
    );
  });
});

describe('times', () => {
  const noDuration = fc.oneof(fc.integer({ max: -1 }), fc.constantFrom(NaN, Infinity, 0.5, 1e10));
  it('work that is negative, broken, endless or no number: the operation is named with the figure', () =>
    fc.assert(
      fc.property(noDuration, (seconds) => {
        expect(withShear({ seconds })).toContain(`Operation A:shear takes ${seconds} seconds`);
        expect(withShear({ machines: [{ id: 'S1', seconds }] })).toContain(
          `Operation A:shear takes ${seconds}`,
        );
      }),
    ));
  it('a changeover that is no duration: the machine is named', () =>
    fc.assert(
      fc.property(noDuration, (seconds) => {
        const changeover = { combine: 'sum', attributes: { gauge: seconds } } as const;
        expect(withMachine({ changeover })).toContain(`A changeover of ${seconds} seconds on machine B1`);
      }),
    ));
  it('releases, due dates and weights that are none: the line is named', () => {
    expect(withJob({ release: NaN })).toContain('Line A is released at NaN');
    expect(withJob({ due: 10.5 })).toContain('Line A is due at 10.5');
    expect(withJob({ weight: -1 })).toContain('Line A has a weight of -1.');
  });
  it('a transfer share outside 0 to 1, and people that are none, name the operation', () => {
    for (const transferShare of [0, -0.5, 1.5, NaN])
      expect(withShear({ transferShare })).toContain('Operation A:shear passes on a share of');
    expect(withShear({ crew: -1 })).toContain('Operation A:shear needs -1 people.');
  });
});

describe('what is fixed', () => {
  const pin = (operation: string, machine: string, position: number) => ({ operation, machine, position });
  it('two pins at one position: both operations are named', () =>
    expect(told({ pins: [pin('A:brake', 'B1', 0), pin('B:brake', 'B1', 0)] })).toContain(
      'Operations A:brake and B:brake are pinned at the same position on B1.',
    ));
  it('one operation pinned at two positions is named', () =>
    expect(told({ pins: [pin('A:brake', 'B1', 0), pin('A:brake', 'B1', 1)] })).toContain(
      'Operation A:brake is pinned twice.',
    ));
  it('a pin on a machine that cannot do it, or at no position, names the operation', () => {
    expect(told({ pins: [pin('A:brake', 'S1', 0)] })).toContain(
      'Operation A:brake is pinned on S1, which cannot do it.',
    );
    expect(told({ pins: [pin('A:brake', 'B1', -1)] })).toContain(
      'Operation A:brake is pinned at position -1.',
    );
  });
  it('a pin into the frozen part, and an operation frozen twice, are named', () => {
    expect(told({ frozen: { B1: ['A:brake'] }, pins: [pin('B:brake', 'B1', 0)] })).toContain(
      'Operation B:brake is pinned at position 1 on B1, against what is started or frozen there.',
    );
    expect(told({ frozen: { B1: ['A:brake', 'A:brake'] } })).toContain('Operation A:brake is frozen twice.');
  });
  it('two operations running on one machine, or a start that lies ahead, are named', () => {
    const started = (at: number) => ({ shear: { started: { machine: 'S1', at } } });
    const both = [aJob('A', [60, null], null, started(-5)), aJob('B', [60, null], null, started(-3))];
    expect(told({ jobs: both })).toContain(
      'Operations A:shear and B:shear are both recorded as running on S1.',
    );
    expect(told({ jobs: [aJob('A', [60, null], null, started(5))] })).toContain(
      'Operation A:shear is recorded as started after the present',
    );
  });
});

describe('circles', () => {
  const step = (id: string, stage: string): OperationInput => ({ id, stage, seconds: 10 });
  const job = (id: string, ...operations: OperationInput[]) => ({ ...aJob(id, [null, null]), operations });
  // A goes from the shear to the brake, B the other way round.
  const crossing = [
    job('A', step('A1', 'shear'), step('A2', 'brake')),
    job('B', step('B1', 'brake'), step('B2', 'shear')),
  ];
  const circle = 'wait for each other in a circle';

  it('queues that wait for each other: the operations are named in turn', () => {
    const problem = must(buildProblem({ ...good, jobs: crossing }));
    expect(refusal(decode(problem, { S1: ['B2', 'A1'], B1: ['A2', 'B1'] }))).toContain(circle);
  });
  it('frozen operations that wait for each other are refused before any search, all of them named', () => {
    const message = told({ jobs: crossing, frozen: { S1: ['B2', 'A1'], B1: ['A2', 'B1'] } });
    expect(message).toContain(circle);
    for (const id of ['A1', 'A2', 'B1', 'B2']) expect(message).toContain(id);
  });
  it('so are pins, and a pin at the very front before a step that must come first on the same machine', () => {
    const pins = [
      { operation: 'B2', machine: 'S1', position: 0 },
      { operation: 'A1', machine: 'S1', position: 1 },
      { operation: 'A2', machine: 'B1', position: 0 },
    ];
    expect(told({ jobs: crossing, pins })).toContain(circle);
    const back = [job('C', step('C1', 'brake'), step('C2', 'shear'), step('C3', 'brake'))];
    expect(told({ jobs: back, pins: [{ operation: 'C3', machine: 'B1', position: 0 }] })).toContain(circle);
    expect(told({ jobs: back, pins: [{ operation: 'C3', machine: 'B1', position: 1 }] })).toBe('accepted');
  });
  it('a routing that names one operation twice is refused', () =>
    expect(
      told({ jobs: [job('A', step('A1', 'shear'), step('A2', 'brake'), step('A1', 'shear'))] }),
    ).toContain('The operation A1 is listed twice.'));
});
