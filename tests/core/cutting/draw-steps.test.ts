import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawSteps } from '../../../core/cutting/draw-steps.ts';
import type { Rect, SheetGroup } from '../../../core/cutting/plan.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import { replaySteps } from '../../../core/cutting/replay.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import { aGroup, aStep } from '../../support/stock-builders.ts';
import { aLine, aRun, aSheet, randomRun } from './random-run.ts';

type Drawn = Pick<SheetGroup, 'blanks' | 'offcuts'>;
const sizes = (drawn: Drawn): string[] =>
  [
    ...drawn.blanks.map(({ w, h, lines }) => `blank ${h} × ${w} ${lines.join()}`),
    ...drawn.offcuts.map(({ w, h, kind }) => `${kind} ${h} × ${w}`),
  ].sort();
const apart = (a: Rect, b: Rect): boolean =>
  a.x + a.w <= b.x + 0.01 || b.x + b.w <= a.x + 0.01 || a.y + a.h <= b.y + 0.01 || b.y + b.h <= a.y + 0.01;
const area = (rects: readonly Rect[]): number => rects.reduce((sum, { w, h }) => sum + w * h, 0);

/** Up to three edits by hand: a step taken out, or put elsewhere. */
const edits = fc.array(fc.record({ from: fc.nat(40), to: fc.nat(40), out: fc.boolean() }), { maxLength: 3 });
const edited = (steps: readonly CutStep[], by: typeof edits extends fc.Arbitrary<infer E> ? E : never) =>
  by.reduce<CutStep[]>(
    (list, { from, to, out }) => {
      const [step] = list.splice(from % Math.max(1, list.length), 1);
      if (step && !out) list.splice(to % (list.length + 1), 0, step);
      return list;
    },
    [...steps],
  );

describe('a sheet drawn from its step list', () => {
  it('has the blanks, remnants, scrap and trim that the plan drew (400 random runs)', () => {
    fc.assert(
      fc.property(randomRun, (run) => {
        const plan = planRun(run, { steps: 3 });
        if (!plan.ok) return;
        const { groups, steps } = plan.value;
        for (const group of groups) expect(sizes(drawSteps(group, steps, run))).toEqual(sizes(group));
      }),
      { numRuns: 400, seed: 4 },
    );
  });

  it('is covered wholly and once, and agrees with the replay, whatever a person did to the list (400 runs)', () => {
    fc.assert(
      fc.property(randomRun, edits, (run, by) => {
        const plan = planRun(run, { steps: 2 });
        if (!plan.ok) return;
        const steps = edited(plan.value.steps, by);
        for (const group of plan.value.groups) {
          const { blanks, offcuts } = drawSteps(group, steps, run);
          const rects: Rect[] = [...blanks, ...offcuts];
          rects.forEach((a, at) => rects.slice(at + 1).forEach((b) => expect(apart(a, b)).toBe(true)));
          expect(area(rects)).toBeCloseTo(group.widthMm * group.lengthMm, 0);
          const { pieces } = replaySteps(steps, [group], run);
          const made = (place: string) =>
            pieces.filter((p) => p.place === place).reduce((sum, p) => sum + p.count, 0);
          expect(blanks.length * group.count).toBe(made('blank'));
          const kept = offcuts.filter(({ kind }) => kind === 'remnant');
          expect(kept.length * group.count).toBe(made('remnant'));
        }
      }),
      { numRuns: 400, seed: 5 },
    );
  });

  it('shows what is left on a stack, and blanks that nobody asked for without a line', () => {
    const run = aRun([aLine('1042/1', 150, 3048, 4)], [aSheet('galv-24-moss', 1219.2, 3048)]);
    const steps = [aStep({ cutsEach: 4, rest: null }), aStep({ stack: 'elsewhere' })];
    const drawn = drawSteps(aGroup(), steps, run);
    expect(drawn.blanks.map(({ y, h, lines }) => [y, h, lines])).toEqual([
      [0, 150, ['1042/1']],
      [150, 150, ['1042/1']],
      [300, 150, ['1042/1']],
      [450, 150, ['1042/1']],
    ]);
    expect(drawn.offcuts).toEqual([{ x: 0, y: 600, w: 3048, h: 619.2, kind: 'left' }]);
    const other = drawSteps(aGroup(), [aStep({ sizeMm: 140, backGaugeMm: 140, cutsEach: 1 })], run);
    expect(other.blanks).toEqual([{ x: 0, y: 0, w: 3048, h: 140, lines: [] }]);
  });
});
