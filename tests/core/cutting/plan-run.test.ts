import { describe, expect, it } from 'vitest';
import { planRun } from '../../../core/cutting/plan-run.ts';
import type { CutPlan } from '../../../core/cutting/plan.ts';
import { NARROWEST_CUT_MM, type RunInput } from '../../../core/cutting/run.ts';
import { aLine, aRun, aSheet, tenFootShear } from './random-run.ts';

const inch = 25.4;
const sheet48 = aSheet('48x120', 48 * inch, 120 * inch, { costCents: 6400 });

function planned(run: RunInput): CutPlan {
  const plan = planRun(run, { steps: 60 });
  if (!plan.ok) throw new Error(plan.issues.map((p) => p.message).join(' '));
  return plan.value;
}

describe('planning a run on the shear', () => {
  it('cuts 60 blanks of girth 9 1/2 in, five to a 48 in sheet, from 12 sheets with two settings', () => {
    // By hand: 5 × 9.5 = 47.5 in. The half inch left is too narrow to hold, so it is cut off and the fifth blank remains.
    const plan = planned(aRun([aLine('1042/1', 9.5 * inch, 120 * inch, 60)], [sheet48]));
    expect(plan.status).toBe('optimal');
    expect(plan.costCents).toBe(12 * 6400);
    expect(plan.groups).toMatchObject([{ id: 'A', count: 12 }]);
    expect(plan.counts).toMatchObject({
      sheets: 12,
      backGaugeMoves: 2,
      blanksStacked: 60,
      singleStrokes: 12 * 5,
    });
    expect(plan.steps.map((step) => [step.backGaugeMm, step.cutsEach, step.blanksSoFar])).toEqual([
      [241.3, 4, 48],
      [12.7, 1, 60],
    ]);
  });

  it('leaves a narrow drop at the end when the hold-downs can grip it', () => {
    // By hand: 4 × 11 = 44 in, 4 in (101.6 mm) left, above the 40 mm strip the hold-downs need: four cuts at 11 in.
    const plan = planned(aRun([aLine('1042/1', 11 * inch, 120 * inch, 4)], [sheet48]));
    expect(plan.steps).toMatchObject([{ backGaugeMm: 279.4, cutsEach: 4, rest: { kind: 'scrap' } }]);
  });

  it('cuts a strip beyond the back gauge from the other side, as the piece that remains', () => {
    // 44 in = 1117.6 mm is beyond a gauge of 1000 mm, so the 4 in drop is what the gauge takes off.
    const plan = planned(aRun([aLine('1042/1', 44 * inch, 120 * inch, 2)], [sheet48]));
    expect(plan.steps).toMatchObject([{ backGaugeMm: 101.6, cutsEach: 1, rest: { kind: 'blank' } }]);
  });

  it('never lists a cut too thin for a shear, but lays the sheet out another way', () => {
    // Five at 243.7 mm leave 0.7 mm of 1219.2 mm, far below the 1/16 in that can be cut off: four to a sheet then.
    const thin = planned(aRun([aLine('1042/1', 243.7, 120 * inch, 20)], [sheet48]));
    expect(thin.counts.sheets).toBe(5);
    // At 243.4 mm they leave 2.2 mm, which can.
    const thick = planned(aRun([aLine('1042/1', 243.4, 120 * inch, 20)], [sheet48]));
    expect(thick.counts.sheets).toBe(4);
    for (const { steps } of [thin, thick])
      for (const step of steps) expect(step.sizeMm).toBeGreaterThanOrEqual(NARROWEST_CUT_MM);
  });

  it('squares the edge first, before every other cut of the sheet, also before one to a scribed line', () => {
    // Two panels of 59 in: one is beyond the gauge of 1000 mm and scribed, and would be listed first by its size.
    const edges = { ...sheet48, endTrimMm: 6.35, sideTrimMm: 6.35 };
    const lines = [aLine('1042/1', 12 * inch, 59 * inch, 6)];
    const { steps } = planned(aRun(lines, [edges], { shear: { ...tenFootShear, scribe: true } }));
    expect(steps[0]).toMatchObject({ axis: 'length', sizeMm: 6.35, to: { kind: 'scrap' } });
    const rips = steps.filter((step) => step.axis === 'width');
    expect(rips[0]).toMatchObject({ sizeMm: 6.35, to: { kind: 'scrap' } });
  });

  it('takes one strip fewer from a sheet whose edge needs a trim', () => {
    // 4 × 12 = 48 in exactly; a quarter inch of trim leaves room for three (trade arithmetic).
    const lines = [aLine('1042/1', 12 * inch, 120 * inch, 12)];
    expect(planned(aRun(lines, [sheet48])).counts.sheets).toBe(3);
    expect(planned(aRun(lines, [{ ...sheet48, sideTrimMm: 6.35 }])).counts.sheets).toBe(4);
  });

  it('mixes girths on a sheet where that saves one', () => {
    // 30 + 18 = 48 in: side by side 4 sheets do, alone each girth needs 4 and 2.
    const lines = [aLine('1042/1', 30 * inch, 120 * inch, 4), aLine('1043/1', 18 * inch, 120 * inch, 4)];
    expect(planned(aRun(lines, [sheet48])).costCents).toBe(4 * 6400);
  });

  it('halves a sheet only where the gauge reaches, or a line may be scribed', () => {
    // Two panels of 60 in (1524 mm) from 120 in: one of them has to be gauged, and the gauge travels 1000 mm.
    const lines = [aLine('1042/1', 12 * inch, 60 * inch, 8)];
    expect(planned(aRun(lines, [sheet48])).counts.sheets).toBe(2);
    const reaching = { ...tenFootShear, backGaugeMm: { min: 5, max: 1600 } };
    const gauged = planned(aRun(lines, [sheet48], { shear: reaching }));
    expect(gauged.steps[0]).toMatchObject({ axis: 'length', backGaugeMm: 1524, cutsEach: 1 });
    const scribed = planned(aRun(lines, [sheet48], { shear: { ...tenFootShear, scribe: true } }));
    expect(scribed.steps[0]).toMatchObject({ axis: 'length', sizeMm: 1524, backGaugeMm: null });
  });

  it('rips first where two lengths share a strip', () => {
    // 24 + 24 = 48 in across, 80 + 40 = 120 in along: beside a full-length strip only a rip leaves room for the other two.
    const lines = [
      aLine('1042/1', 24 * inch, 80 * inch, 1),
      aLine('1043/1', 24 * inch, 40 * inch, 1),
      aLine('1044/1', 24 * inch, 120 * inch, 1),
    ];
    const plan = planned(
      aRun(lines, [sheet48], { shear: { ...tenFootShear, backGaugeMm: { min: 5, max: 1200 } } }),
    );
    expect(plan.costCents).toBe(6400);
    expect(plan.steps[0]).toMatchObject({ axis: 'width', sizeMm: 609.6 });
  });

  it('uses a remnant first where it serves', () => {
    const remnant = aSheet('R7', 300, 120 * inch, { costCents: 0, available: 1, remnant: true });
    const plan = planned(aRun([aLine('1042/1', 280, 120 * inch, 1)], [sheet48, remnant]));
    expect(plan.groups.map((group) => group.stockId)).toEqual(['R7']);
    expect(plan.costCents).toBe(0);
  });

  it('cuts a coil to length and pays only for what it takes', () => {
    const coil = {
      kind: 'coil',
      id: 'C',
      widthMm: 500,
      lengthMm: null,
      centsPerMetre: 1000,
      endTrimMm: 0,
      sideTrimMm: 0,
    } as const;
    const plan = planned(aRun([aLine('1042/1', 250, 2000, 5)], [coil]));
    // Two abreast: three lengths of 2 m at 10.00 a metre.
    expect(plan.costCents).toBe(6000);
    expect(plan.groups.reduce((sum, group) => sum + group.count * group.lengthMm, 0)).toBe(6000);
  });

  it('never puts two girths together that differ by a hair, but points them out', () => {
    const plan = planned(aRun([aLine('1042/1', 241.3, 3048, 3), aLine('1043/1', 240.9, 3048, 2)], [sheet48]));
    expect(plan.nearEqual).toEqual([{ lines: ['1042/1', '1043/1'], differenceMm: 0.4 }]);
    expect(plan.lines.map((line) => line.cut)).toEqual([3, 2]);
  });

  it('finishes the line due first before the others start, and says after which step each is ready', () => {
    const lines = [
      aLine('1042/1', 12 * inch, 3048, 8, { due: 2 }),
      aLine('1043/1', 16 * inch, 3048, 6, { due: 1 }),
    ];
    const plan = planned(aRun(lines, [sheet48]));
    const ready = new Map(plan.lines.map((line) => [line.line, line.readyAfterStep]));
    expect(ready.get('1043/1')).toBeLessThan(ready.get('1042/1') as number);
    expect(plan.steps[0]?.lines).toEqual([{ line: '1043/1', pieces: 6 }]);
  });

  it('asks for continuous strokes only where the shear allows them', () => {
    const lines = [aLine('1042/1', 100, 3048, 10)];
    const single = planned(aRun(lines, [sheet48]));
    const fast = planned(aRun(lines, [sheet48], { shear: { ...tenFootShear, continuousFrom: 4 } }));
    expect(single.counts.continuousStrokes).toBe(0);
    expect(fast.counts.continuousStrokes).toBeGreaterThan(0);
  });
});

describe('a run that cannot be cut', () => {
  const refusal = (run: RunInput): string => {
    const plan = planRun(run, { steps: 20 });
    return plan.ok ? 'planned' : plan.issues.map((p) => p.message).join(' ');
  };
  it('says which blank is wider than any sheet', () => {
    expect(refusal(aRun([aLine('1042/1', 1300, 3048, 1)], [sheet48]))).toMatch(
      /1042\/1.*wider than the widest stock/,
    );
  });
  it('says which blank is longer than the shear', () => {
    const long = aSheet('L', 1219.2, 3660);
    expect(refusal(aRun([aLine('1042/1', 200, 3500, 1)], [long]))).toMatch(/1042\/1.*longer than the shear/);
  });
  it('says which blanks have no stock of that colour', () => {
    expect(refusal(aRun([aLine('1042/1', 200, 3000, 1)], []))).toMatch(
      /no stock of this material, gauge and colour for the blanks of line 1042\/1 \(girth 200 mm and length 3000 mm\)/,
    );
  });
  it('says so when the sheets on hand are too few', () => {
    const few = { ...sheet48, available: 2 };
    expect(refusal(aRun([aLine('1042/1', 600, 3048, 5)], [few]))).toMatch(/not enough for the 5 blanks/);
  });
  it('says so when the shear cannot cut the one sheet there is to the blank', () => {
    // A blank of 30 mm needs 40 mm left in the hold-downs; a strip of 50 mm leaves 20.
    const strip = aSheet('T', 50, 3048);
    expect(refusal(aRun([aLine('1042/1', 30, 3048, 1)], [strip]))).toMatch(
      /No stock yields the blank of line 1042\/1/,
    );
  });
  it('says so when a trim is too thin to be sheared off', () => {
    expect(refusal(aRun([aLine('1042/1', 200, 3000, 1)], [{ ...sheet48, sideTrimMm: 0.5 }]))).toMatch(
      /trim too thin to shear off/,
    );
  });
  it('refuses a quantity that is no whole number', () => {
    expect(refusal(aRun([aLine('1042/1', 200, 3048, 1.5)], [sheet48]))).toMatch(/whole numbers/);
    expect(refusal(aRun([aLine('1042/1', NaN, 3048, 1)], [sheet48]))).toMatch(/must be above 0/);
  });
});
