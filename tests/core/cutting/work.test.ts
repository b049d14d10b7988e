import { describe, expect, it } from 'vitest';
import { checkSteps } from '../../../core/cutting/check-steps.ts';
import { metalCents, totalCents } from '../../../core/cutting/compare.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import type { CutPlan } from '../../../core/cutting/plan.ts';
import { remnantsOf } from '../../../core/cutting/remnants.ts';
import type { RunInput } from '../../../core/cutting/run.ts';
import { lineCuts, settingsOf, workCents, type WorkPrices } from '../../../core/cutting/work.ts';
import { aGroup, aStep } from '../../support/stock-builders.ts';
import { aLine, aRun, aSheet, tenFootShear } from './random-run.ts';

/** Cents, at 2.78 a second and the usual times: 45 s a sheet, 66 s a setting, 9 s a cut, 30 s more to a line. */
const usual: WorkPrices = {
  ...{ sheet: 144, feedAgain: 32, setting: 211, turn: 38 },
  ...{ singleStroke: 29, continuousStroke: 13, line: 96 },
};

const planned = (run: RunInput): CutPlan => {
  const plan = planRun(run, { steps: 60 });
  if (!plan.ok) throw new Error(plan.issues.map((p) => p.message).join(' '));
  expect(checkSteps(run, plan.value.groups, plan.value.steps)).toEqual([]);
  return plan.value;
};

describe('the work of a list', () => {
  it('counts each width cut to a line as a setting of its own, and prices every cut to it', () => {
    const steps = [
      aStep(),
      aStep({ sizeMm: 5, backGaugeMm: null, cutsEach: 1, to: { kind: 'scrap' } }),
      aStep({ sizeMm: 7, backGaugeMm: null, cutsEach: 1, to: { kind: 'scrap' } }),
    ];
    expect(lineCuts(steps)).toEqual({ pieces: 6, settings: 2 });
    expect(settingsOf(steps)).toBe(3);
    // By hand: 3 sheets loaded; fed again for the two other settings, 2 × 3; 3 settings; 12 + 3 + 3 strokes; 6 to a line.
    expect(workCents(steps, usual)).toBe(3 * 144 + 6 * 32 + 3 * 211 + 18 * 29 + 6 * 96);
  });
});

describe('a run planned by metal and work', () => {
  // Girths of 121.5 mm fit ten to a sheet of 1219.2 mm and leave a sliver of 4.2 mm on each; nine leave 125.7 mm.
  const scribing = { ...tenFootShear, scribe: true };
  const slivers = (costCents: number, work: WorkPrices): RunInput =>
    aRun([aLine('1042/1', 121.5, 3048, 90)], [aSheet('S', 1219.2, 3048, { costCents })], {
      shear: scribing,
      work,
    });

  it('takes a sheet more where that is cheaper than a sliver off each', () => {
    // By hand: nine sheets with a sliver take 9 × 0.96 and 2.11 for its setting more than ten without; a tenth sheet is 1.00.
    const plan = planned(slivers(100, usual));
    expect(plan.counts.sheets).toBe(10);
    expect(lineCuts(plan.steps).pieces).toBe(0);
    expect(plan.least).toMatchObject({ lineCuts: 9 });
    expect(plan.least && metalCents(plan.least)).toBe(900);
    expect(plan.lowerBoundCents).toBeLessThanOrEqual(900);
  });

  it('cuts the slivers where the sheet is dearer than the work', () => {
    const plan = planned(slivers(6000, usual));
    expect(plan.counts.sheets).toBe(9);
    expect(plan.least).toBeNull();
    expect(plan.status).toBe('optimal');
  });

  it('is never dearer in all than the list of least metal', () => {
    for (const girth of [97.3, 110.7, 143.1, 187.4, 231.8])
      for (const costCents of [500, 2000, 6000]) {
        const lines = [aLine('1042/1', girth, 3048, 31), aLine('1043/1', girth + 41.7, 2438.4, 17)];
        const run = aRun(lines, [aSheet('S', 1219.2, 3048, { costCents })], { shear: scribing, work: usual });
        const plan = planned(run);
        const { least } = plan;
        if (!least) continue;
        expect(totalCents(plan)).toBeLessThanOrEqual(totalCents({ ...least, costCents: metalCents(least) }));
      }
  });
});

describe('remnants worth keeping', () => {
  const rule = { widthMm: 150, lengthMm: 600, most: 10, worth: 0.25 };
  const strip = { x: 0, y: 0, w: 3048, h: 200, kind: 'remnant' } as const;

  it('are as many of a size as the shop keeps, with those that lie in stock', () => {
    const lying = aSheet('R', 200, 3048, { available: 4, remnant: true });
    const groups = [aGroup({ count: 8, offcuts: [strip] })];
    const { sizes } = remnantsOf(groups, rule, [lying]);
    expect(sizes).toEqual([{ widthMm: 200, lengthMm: 3048, pieces: 8, kept: 6 }]);
  });

  it('have room again for those that the list itself uses', () => {
    const lying = aSheet('R', 200, 3048, { available: 10, remnant: true });
    const uses = aGroup({ stockId: 'R', count: 3, widthMm: 200 });
    const { sizes } = remnantsOf([uses, aGroup({ count: 8, offcuts: [strip] })], rule, [lying]);
    expect(sizes[0]?.kept).toBe(3);
  });

  it('are worth a quarter of their metal', () => {
    const groups = [aGroup({ count: 2, costCents: 6096, offcuts: [strip] })];
    expect(remnantsOf(groups, rule, []).cents).toBeCloseTo((2 * 0.25 * 6096 * 200) / 1219.2, 9);
  });
});
