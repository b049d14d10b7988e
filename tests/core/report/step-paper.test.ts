import { expect, it } from 'vitest';
import type { CutStep } from '../../../core/cutting/step.ts';
import { paperSteps } from '../../../core/report/step-paper.ts';
import { inchesToMm, type LengthUnits } from '../../../core/units/length.ts';
import { aGroup, aStep } from '../../support/stock-builders.ts';
import { withPoints } from '../../support/writing.ts';

const shear = { lengthMm: 3100, backGaugeMm: { min: 5, max: 1000 }, minStripMm: 40 };
const onPaper = (steps: readonly CutStep[], units: LengthUnits = 'in') =>
  paperSteps({ steps, groups: [aGroup({ count: 3 })] }, { shear, units: withPoints(units) });
const rowOf = (step: CutStep, units?: LengthUnits) => onPaper([step], units)[0]?.steps[0];

const girthMm = inchesToMm(9.5);
const strips = aStep({
  ...{ sizeMm: girthMm, backGaugeMm: girthMm, to: { kind: 'blank', girthMm, lengthMm: inchesToMm(120) } },
  lines: [
    { line: '1042/1', pieces: 11 },
    { line: '1043/1', pieces: 1 },
  ],
});

it('a step on paper is bare figures: the stack, the setting, what falls, for whom, and what is held', () => {
  expect(rowOf(strips)).toEqual({
    number: 1,
    feed: 'A × 3',
    setting: '9 1/2',
    cuts: '4',
    drop: '× 120',
    lines: '1042/1: 11, 1043/1',
    // 48 less 4 times 9 1/2.
    held: '10 keep',
    blanksSoFar: 12,
  });
  expect(rowOf(strips, 'mm')).toMatchObject({ setting: '241.3', drop: '× 3048', held: '254 keep' });
});

it('a blank that is what the hold-downs keep is told to the full, its other side where the drop does not say it', () => {
  const rest = { kind: 'blank', girthMm: inchesToMm(10), lengthMm: inchesToMm(120) } as const;
  expect(rowOf({ ...strips, rest })?.held).toBe('10 ×');
  expect(rowOf({ ...strips, to: { kind: 'scrap' }, rest })?.held).toBe('10 × 120');
});

it('what is held is never said to be more than it is', () => {
  const rest = { kind: 'scrap' } as const;
  // 48 less 4 times 10.8 is 4.8, and a hair less of it would be told as 4.7.
  expect(rowOf({ ...strips, sizeMm: 274.4, backGaugeMm: 274.4, rest })?.held).toBe('4.7 scrap');
  expect(rowOf({ ...strips, sizeMm: inchesToMm(11), backGaugeMm: inchesToMm(11), rest })?.held).toBe(
    '4 scrap',
  );
});

it('a cut to a line, strokes that run on, a stack to come and no cut at all are told in a word', () => {
  const step = { ...strips, backGaugeMm: null, stroke: 'continuous', rest: null } as const;
  expect(rowOf({ ...step, to: { kind: 'stack', stack: 'A1' } })).toMatchObject({
    ...{ setting: 'line 9 1/2', cuts: '4 continuous', drop: 'A1', held: '10' },
  });
  const none = { ...strips, cutsEach: 0, rest: { kind: 'stack', stack: 'A1' } } as const;
  expect(rowOf(none)).toMatchObject({ setting: 'no cut', cuts: '', drop: '', held: 'A1' });
});

it('crosscuts and rips stand under a heading each, as they follow one another', () => {
  const cross = aStep({ axis: 'length' });
  const list = [cross, { ...cross, number: 2 }, { ...strips, number: 3 }, { ...cross, number: 4 }];
  expect(onPaper(list).map(({ axis, steps }) => [axis, steps.map(({ number }) => number)])).toEqual([
    ['length', [1, 2]],
    ['width', [3]],
    ['length', [4]],
  ]);
});
