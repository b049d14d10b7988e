import { describe, expect, it } from 'vitest';
import { checkSteps } from '../../../core/cutting/check-steps.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import { aLine, aRun, aSheet } from './random-run.ts';

const run = aRun(
  [aLine('1042/1', 241.3, 3048, 5), aLine('1043/1', 300, 3048, 4)],
  [aSheet('S', 1219.2, 3048)],
);
const made = planRun(run, { steps: 40 });
if (!made.ok) throw new Error('the run of this test can be cut');
const { steps, groups } = made.value;
const messages = (edited: readonly CutStep[]): string[] =>
  checkSteps(run, groups, edited).map((p) => p.message);
const at = (index: number, change: Partial<CutStep>): CutStep[] =>
  steps.map((step, k) => (k === index ? { ...step, ...change } : step));
const gauged = steps.findIndex((step) => step.backGaugeMm === 241.3);

describe('an edited step list', () => {
  it('is good as it was planned', () => {
    expect(messages(steps)).toEqual([]);
  });
  it('names the line and the blanks missing when a cut is left out: the last then remains as wide as two', () => {
    const fewer = (steps[gauged] as CutStep).cutsEach - 1;
    expect(messages(at(gauged, { cutsEach: fewer })).join(' ')).toMatch(
      /2 blanks are missing for line 1042\/1: 5 asked, 3 cut/,
    );
  });
  it('notices a setting that cuts a size nobody asked for', () => {
    expect(messages(at(gauged, { sizeMm: 240, backGaugeMm: 240 })).join(' ')).toMatch(
      /size nobody asked for/,
    );
  });
  it('refuses a blank that is turned on the sheet: its length lies along the rolling direction, as the sheet’s does', () => {
    const short = aRun([aLine('1044/1', 300, 400, 1)], [aSheet('S', 400, 400)]);
    const list = planRun(short, { steps: 40 });
    if (!list.ok) throw new Error('the run of this test can be cut');
    expect(checkSteps(short, list.value.groups, list.value.steps)).toEqual([]);
    const turned = list.value.steps.map((step): CutStep => {
      const swap = { width: 'length', length: 'width' } as const;
      const to =
        step.to.kind === 'blank'
          ? { ...step.to, girthMm: step.to.lengthMm, lengthMm: step.to.girthMm }
          : step.to;
      return { ...step, axis: swap[step.axis], to };
    });
    expect(checkSteps(short, list.value.groups, turned).map(({ message }) => message)).toEqual([
      '1 blank is missing for line 1044/1: 1 asked, 0 cut.',
      '1 cut as blanks are of a size nobody asked for: girth 400 mm, length 300 mm.',
    ]);
  });
  it('notices a back gauge that is set otherwise than the size says', () => {
    expect(messages(at(gauged, { backGaugeMm: 250 })).join(' ')).toMatch(
      /does not agree with its back gauge/,
    );
  });
  it('refuses a cut that leaves less than the hold-downs grip', () => {
    expect(messages(at(gauged, { cutsEach: 30 })).join(' ')).toMatch(
      /the hold-downs grip|takes more than there is/,
    );
  });
  it('says what is left half cut when a step is taken out', () => {
    const last = steps.findLastIndex((step) => step.rest !== null);
    expect(messages(steps.filter((_, k) => k !== last)).join(' ')).toMatch(/left on stack/);
  });
});
