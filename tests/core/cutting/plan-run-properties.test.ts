import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkSteps } from '../../../core/cutting/check-steps.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import type { CutPlan } from '../../../core/cutting/plan.ts';
import { replaySteps } from '../../../core/cutting/replay.ts';
import { createPool, relax, wholeOf } from '../../../core/cutting/relaxation.ts';
import { blankSizes, type RunInput } from '../../../core/cutting/run.ts';
import { coverOfRun } from '../../../core/cutting/sheet-patterns.ts';
import { aLine, aRun, aSheet, randomRun, tenFootShear } from './random-run.ts';

const steps = 5;
const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Two thousand random runs, each planned once for all of these tests: half of the time would go into planning again. */
const drawn = fc.sample(randomRun, { numRuns: 2000, seed: 20261125 });
const plans = new Map<RunInput, CutPlan | null>();
function planOf(run: RunInput): CutPlan | null {
  const known = plans.get(run);
  if (known !== undefined) return known;
  const made = planRun(run, { steps });
  plans.set(run, made.ok ? made.value : null);
  return made.ok ? made.value : null;
}

/** Holds what is said of those of the first runs that can be cut; at least half must be, or the test says nothing. */
function forRuns(runs: number, hold: (run: RunInput, plan: CutPlan) => void): void {
  let planned = 0;
  for (const run of drawn.slice(0, runs)) {
    const plan = planOf(run);
    if (plan === null) continue;
    planned++;
    hold(run, plan);
  }
  expect(planned).toBeGreaterThan(runs / 2);
}

/** Many runs take long on a busy machine. */
const patient = { timeout: 300_000 };

describe('the plan of any run that can be cut', () => {
  it(
    'cuts every blank as often as asked, within the overrun, on a shear within its limits (2,000 runs)',
    patient,
    () => {
      forRuns(2000, (run, plan) => {
        expect(checkSteps(run, plan.groups, plan.steps)).toEqual([]);
        const { heldMm } = replaySteps(plan.steps, plan.groups, run);
        expect(Math.min(...heldMm.map((mm) => mm ?? Infinity))).toBeGreaterThanOrEqual(run.shear.minStripMm);
        for (const line of run.lines) {
          const cut = plan.lines.find((one) => one.line === line.id)?.cut ?? 0;
          expect(cut).toBeGreaterThanOrEqual(line.quantity);
          expect(cut).toBeLessThanOrEqual(line.quantity + line.overrun);
        }
      });
    },
  );

  it('draws every blank and offcut inside its sheet, none over another, and the areas add up to the sheets used', () => {
    forRuns(400, (_, plan) => {
      for (const { blanks, offcuts, widthMm, lengthMm } of plan.groups) {
        const rects = [...blanks, ...offcuts];
        for (const r of rects) {
          expect(r.x).toBeGreaterThanOrEqual(0);
          expect(r.y).toBeGreaterThanOrEqual(0);
          expect(r.x + r.w).toBeLessThanOrEqual(lengthMm + 0.01);
          expect(r.y + r.h).toBeLessThanOrEqual(widthMm + 0.01);
        }
        const apart = (a: (typeof rects)[0], b: (typeof rects)[0]): boolean =>
          a.x + a.w <= b.x + 0.01 ||
          b.x + b.w <= a.x + 0.01 ||
          a.y + a.h <= b.y + 0.01 ||
          b.y + b.h <= a.y + 0.01;
        rects.forEach((a, at) => rects.slice(at + 1).forEach((b) => expect(apart(a, b)).toBe(true)));
        expect(sum(rects.map((r) => r.w * r.h))).toBeCloseTo(widthMm * lengthMm, 0);
      }
      const used = sum(plan.groups.map((group) => group.count * group.widthMm * group.lengthMm));
      expect(sum(Object.values(plan.areas)) / used).toBeCloseTo(1, 9);
    });
  });

  it('yields, when its steps are cut one by one, the very blanks and remnants that were drawn', () => {
    forRuns(400, (run, plan) => {
      const count = new Map<string, number>();
      const add = (what: string, w: number, h: number, pieces: number): void => {
        const key = `${what} ${h.toFixed(2)}×${w.toFixed(2)}`;
        count.set(key, (count.get(key) ?? 0) + pieces);
      };
      for (const group of plan.groups) {
        for (const blank of group.blanks) add('blank', blank.w, blank.h, group.count);
        for (const cut of group.offcuts)
          add(cut.kind === 'trim' ? 'scrap' : cut.kind, cut.w, cut.h, group.count);
      }
      // A side trim runs along each panel in the drawing as in the replay, an end trim across the sheet.
      for (const piece of replaySteps(plan.steps, plan.groups, run).pieces)
        add(piece.place, piece.lengthMm, piece.widthMm, -piece.count);
      expect([...count].filter(([, left]) => left !== 0)).toEqual([]);
    });
  });

  // Lines by themselves would each count the same remnants as theirs, so runs with remnants are left out.
  const hasRemnants = (run: RunInput): boolean =>
    run.stock.some((stock) => stock.kind === 'sheet' && stock.remnant);
  const alone = (run: RunInput, effort: number): number =>
    sum(
      run.lines.map((line) => {
        const one = planRun({ ...run, lines: [line] }, { steps: effort });
        return one.ok ? one.value.costCents : Infinity;
      }),
    );

  it('never costs more than cutting line by line with the same effort (2,000 runs)', patient, () => {
    let compared = 0;
    forRuns(2000, (run, plan) => {
      if (hasRemnants(run)) return;
      compared++;
      expect(plan.costCents).toBeLessThanOrEqual(alone(run, steps));
    });
    expect(compared).toBeGreaterThan(300);
  });

  it('never costs more than cutting each line by itself as well as it can be (300 runs)', patient, () => {
    forRuns(300, (run, plan) => {
      if (!hasRemnants(run)) expect(plan.costCents).toBeLessThanOrEqual(alone(run, 40));
    });
  });

  it(
    'never claims a bound above its cost, nor one below what the blanks weigh in the cheapest stock (2,000 runs)',
    patient,
    () => {
      forRuns(2000, (run, plan) => {
        expect(plan.lowerBoundCents).toBeLessThanOrEqual(plan.costCents + 1e-6);
        const rates = run.stock.map((stock) =>
          stock.kind === 'sheet' ? stock.costCents / (stock.widthMm * stock.lengthMm) : Infinity,
        );
        const area = sum(run.lines.map((line) => line.girthMm * line.lengthMm * line.quantity));
        expect(plan.lowerBoundCents).toBeGreaterThanOrEqual(area * Math.min(...rates) * (1 - 1e-6));
      });
    },
  );

  it('never claims a bound above a cost at which the run is known to fit', () => {
    // Sheets divided at random: whole into strips of several lengths, or into panels of one length each, those into strips.
    // So many sheets suffice, whatever the search finds.
    const parts = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 4 });
    const divided = fc.array(
      fc.array(fc.record({ widths: parts, lengths: parts }), { minLength: 1, maxLength: 3 }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(divided, (sheets) => {
        const blanks = sheets.flatMap((panels) =>
          panels.flatMap(({ widths, lengths: several }) => {
            const lengths = panels.length === 1 ? several : [1];
            const panelMm = 3000 / panels.length;
            const share = (all: readonly number[], part: number, whole: number): number =>
              2 * Math.floor((whole * part) / sum(all) / 2); // leaves nothing, or 2 mm and more, which can be cut off
            return widths.flatMap((w) =>
              lengths.map((l) => [share(widths, w, 1200), share(lengths, l, panelMm)] as const),
            );
          }),
        );
        const shear = { ...tenFootShear, backGaugeMm: { min: 0, max: 3000 }, minStripMm: 0, scribe: true };
        const lines = blanks.map(([girth, length], at) => aLine(`${at}/1`, girth, length, 1));
        const run = aRun(lines, [aSheet('S', 1200, 3000, { costCents: 100 })], { shear });
        const cover = coverOfRun(run, blankSizes(run));
        for (const { bound } of relax(cover, wholeOf(cover), createPool([]), {
          rounds: 200,
          closeEnough: 0,
          exact: true,
        })) {
          expect(bound).toBeLessThanOrEqual(100 * sheets.length + 1e-6);
        }
        const plan = planRun(run, { steps: 40 });
        expect(plan.ok && plan.value.lowerBoundCents).toBeLessThanOrEqual(100 * sheets.length);
        expect(plan.ok && checkSteps(run, plan.value.groups, plan.value.steps)).toEqual([]);
      }),
      { numRuns: 80, seed: 11 },
    );
  });

  it('is the same every time for the same run', () => {
    forRuns(60, (run, plan) => {
      expect(planRun(structuredClone(run), { steps })).toEqual({ ok: true, value: plan });
    });
  });
});
