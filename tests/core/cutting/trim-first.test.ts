import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checkSteps } from '../../../core/cutting/check-steps.ts';
import { countSteps } from '../../../core/cutting/counts.ts';
import { drawSteps } from '../../../core/cutting/draw-steps.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import type { CutPlan } from '../../../core/cutting/plan.ts';
import type { RunInput } from '../../../core/cutting/run.ts';
import { lineCuts, NO_WORK, type WorkPrices } from '../../../core/cutting/work.ts';
import { aLine, aRun, aSheet, randomRun } from './random-run.ts';

/** Cents at the usual times, as in the tests of what work costs. */
const usual: WorkPrices = {
  ...{ sheet: 144, feedAgain: 32, setting: 211, turn: 38 },
  ...{ singleStroke: 29, continuousStroke: 13, line: 96 },
};

const planned = (run: RunInput): CutPlan => {
  const plan = planRun(run, { steps: 20 });
  if (!plan.ok) throw new Error(plan.issues.map((p) => p.message).join(' '));
  expect(checkSteps(run, plan.value.groups, plan.value.steps)).toEqual([]);
  return plan.value;
};

/** Two girths that leave 3.2 mm of 1219.2 mm, on three panels of 1000 mm each. */
const three = (work: WorkPrices, lengthMm = 3048) =>
  aRun([aLine('1/1', 800, 1000, 3), aLine('2/1', 416, 1000, 3)], [aSheet('S', 1219.2, lengthMm)], { work });

it('a sliver that all panels of a sheet leave is trimmed off the whole sheet: one cut to a line, not three', () => {
  const each = planned(three(NO_WORK));
  expect(lineCuts(each.steps)).toEqual({ pieces: 3, settings: 1 });
  const { steps, groups } = planned(three(usual));
  expect(lineCuts(steps)).toEqual({ pieces: 1, settings: 1 });
  expect(steps[0]).toMatchObject({ stack: 'A', axis: 'width', sizeMm: 3.2, to: { kind: 'scrap' }, fed: 1 });
  // The sheet lies the other way for its crosscuts, and so does each of the three panels for its rip.
  expect(countSteps(steps).turns).toBe(1 + 3);
  expect(groups[0]?.offcuts).toContainEqual({ x: 0, y: 0, w: 3048, h: 3.2, kind: 'scrap' });
});

it('it stays with the panel where the sheet is longer than the shear, or where there is but one panel', () => {
  const run = three(usual);
  const short = { ...run, shear: { ...run.shear, lengthMm: 2500 } };
  expect(lineCuts(planned(short).steps).pieces).toBe(3);
  const one = aRun([aLine('1/1', 800, 3048, 1), aLine('2/1', 416, 3048, 1)], [aSheet('S', 1219.2, 3048)]);
  expect(countSteps(planned({ ...one, work: usual }).steps).turns).toBe(0);
});

it('the side’s trim goes with it: both in one cut of the whole sheet', () => {
  const trimmed = aSheet('S', 1225.2, 3048, { sideTrimMm: 6 });
  const { steps, groups } = planned({ ...three(usual), stock: [trimmed] });
  expect(lineCuts(steps)).toEqual({ pieces: 1, settings: 1 });
  expect(steps[0]?.sizeMm).toBe(9.2);
  expect(groups[0]?.offcuts.filter(({ kind }) => kind === 'trim')).toEqual([
    { x: 0, y: 0, w: 3048, h: 9.2, kind: 'trim' },
  ]);
});

it('any run priced at usual times can be cut as listed, is drawn as it is cut, and covers its sheets (300 runs)', () => {
  let first = 0;
  for (const drawn of fc.sample(randomRun, { numRuns: 300, seed: 20261201 })) {
    const run = { ...drawn, work: usual };
    const made = planRun(run, { steps: 3 });
    if (!made.ok) continue;
    const { groups, steps } = made.value;
    expect(checkSteps(run, groups, steps)).toEqual([]);
    const ways = (id: string) => new Set(steps.filter(({ stack }) => stack === id).map(({ axis }) => axis));
    if (groups.some(({ id }) => ways(id).size === 2)) first++;
    for (const group of groups) {
      const area = (rects: readonly { w: number; h: number }[]): number =>
        rects.reduce((sum, { w, h }) => sum + w * h, 0);
      expect(area([...group.blanks, ...group.offcuts])).toBeCloseTo(group.widthMm * group.lengthMm, 0);
      const again = drawSteps(group, steps, run);
      for (const kind of ['trim', 'scrap', 'remnant'] as const) {
        const of = (offcuts: typeof group.offcuts) => area(offcuts.filter((cut) => cut.kind === kind));
        expect(of(again.offcuts)).toBeCloseTo(of(group.offcuts), 0);
      }
    }
  }
  expect(first).toBeGreaterThan(10);
});
