import { describe, expect, it } from 'vitest';
import { planRun } from '../../../core/cutting/plan-run.ts';
import { relisted } from '../../../core/cutting/renumber.ts';
import { aGroup, aStep } from '../../support/stock-builders.ts';
import { aLine, aRun, aSheet } from './random-run.ts';

const blank = { kind: 'blank', girthMm: 150, lengthMm: 3048 } as const;
const three = [aGroup({ count: 3 })];
const lots = (steps: ReturnType<typeof relisted>) => steps.map((step) => step.lines);

describe('a list put right after an edit', () => {
  it('is what it was when nothing was done to it', () => {
    const run = aRun(
      [aLine('1042/1', 150, 3000, 10, { due: 2 }), aLine('1042/2', 150, 1200, 9, { due: 1, overrun: 2 })],
      [aSheet('S', 1219.2, 3048, { endTrimMm: 6 })],
    );
    const plan = planRun(run, { steps: 10 });
    if (!plan.ok) throw new Error('not planned');
    expect(relisted(plan.value.steps, plan.value.groups, run.lines)).toEqual(plan.value.steps);
  });

  it('is numbered anew and counts the blanks so far', () => {
    const steps = [aStep({ number: 7, cutsEach: 2 }), aStep({ number: 3, cutsEach: 1 })];
    const put = relisted(steps, three, [aLine('1042/1', 150, 3048, 9)]);
    expect(put.map(({ number, blanks, blanksSoFar }) => [number, blanks, blanksSoFar])).toEqual([
      [1, 6, 6],
      [2, 3, 9],
    ]);
  });

  it('tells what becomes of the rest at the stack’s last step only', () => {
    const [first, last] = relisted([aStep(), aStep({ rest: null })], three, []);
    expect([first?.rest, last?.rest]).toEqual([null, { kind: 'remnant' }]);
  });

  it('throws away the rest of a stack of which nothing is told', () => {
    expect(relisted([aStep({ rest: null })], three, [])[0]?.rest).toEqual({ kind: 'scrap' });
  });

  it('feeds as many pieces as lie on the stack by then', () => {
    const panels = aStep({ axis: 'length', sizeMm: 1000, cutsEach: 2, to: { kind: 'stack', stack: 'A1' } });
    const strips = aStep({ stack: 'A1', fed: 99, cutsEach: 3 });
    expect(relisted([panels, strips], three, []).map((step) => step.fed)).toEqual([3, 6]);
    expect(relisted([strips, panels], three, []).map((step) => step.fed)).toEqual([0, 3]);
  });

  it('shares blanks out to the most urgent line first, overruns after every line has what it asked', () => {
    const lines = [
      aLine('1042/1', 150, 3048, 4, { due: 2, overrun: 5 }),
      aLine('1042/2', 150, 3048, 3, { due: 1, overrun: 1 }),
      aLine('1042/3', 150, 3048, 2, { due: null }),
    ];
    expect(lots(relisted([aStep({ cutsEach: 1 })], three, lines))).toEqual([[{ line: '1042/2', pieces: 3 }]]);
    expect(lots(relisted([aStep({ cutsEach: 4 })], three, lines))).toEqual([
      [
        { line: '1042/2', pieces: 4 },
        { line: '1042/1', pieces: 6 },
        { line: '1042/3', pieces: 2 },
      ],
    ]);
  });

  it('counts the rest as a blank where it is one', () => {
    const [step] = relisted([aStep({ cutsEach: 7, rest: blank })], three, [aLine('1042/1', 150, 3048, 24)]);
    expect(step).toMatchObject({ blanks: 24, lines: [{ line: '1042/1', pieces: 24 }] });
  });
});
