import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawSteps } from '../../../core/cutting/draw-steps.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import { relisted } from '../../../core/cutting/renumber.ts';
import { replaySteps } from '../../../core/cutting/replay.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import { changeStep, moveStep } from '../../../core/edit/cutting-steps.ts';
import { randomRun } from './random-run.ts';

type Change = (steps: readonly CutStep[]) => readonly CutStep[];

const within = (steps: readonly CutStep[], at: number): number => at % Math.max(1, steps.length);

/** What a person may do to a list: take a step out, move it, set another size, cut more or less often, keep what is left. */
const change: fc.Arbitrary<Change> = fc
  .record({
    what: fc.constantFrom('remove', 'move', 'size', 'cuts', 'rest'),
    at: fc.nat(50),
    to: fc.nat(50),
    by: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ what, at, to, by }): Change => (steps) => {
    const n = within(steps, at);
    const step = steps[n];
    if (!step) return steps;
    if (what === 'remove') return steps.filter((_, k) => k !== n);
    if (what === 'move') return moveStep(steps, n, within(steps, to));
    const sizeMm = step.sizeMm + 10 * by;
    const gauge = step.backGaugeMm === null ? null : sizeMm;
    if (what === 'size') return changeStep(steps, n, { ...step, sizeMm, backGaugeMm: gauge });
    if (what === 'cuts') return changeStep(steps, n, { ...step, cutsEach: by });
    return changeStep(steps, n, { ...step, rest: { kind: 'remnant' } });
  });

it('a changed list gives, cut piece by piece, the blanks and offcuts that it is drawn with and the count that it says', () => {
  let compared = 0;
  fc.assert(
    fc.property(randomRun, fc.array(change, { minLength: 1, maxLength: 5 }), (run, changes) => {
      const made = planRun(run, { steps: 1 });
      if (!made.ok) return;
      const { groups } = made.value;
      const edited = changes.reduce<readonly CutStep[]>((steps, one) => one(steps), made.value.steps);
      const steps = relisted(edited, groups, run.lines);
      const { pieces, refusals } = replaySteps(steps, groups, run);
      const cut = (place: string): number =>
        pieces.reduce((sum, one) => sum + (one.place === place ? one.count : 0), 0);
      const drawn = groups.map((group) => ({ count: group.count, ...drawSteps(group, steps, run) }));
      const shown = (of: (sheet: (typeof drawn)[number]) => number): number =>
        drawn.reduce((sum, sheet) => sum + sheet.count * of(sheet), 0);
      expect(shown(({ blanks }) => blanks.length)).toBe(cut('blank'));
      expect(shown(({ offcuts }) => offcuts.filter(({ kind }) => kind === 'remnant').length)).toBe(
        cut('remnant'),
      );
      // A step that the shear cannot make is told as a fault; all others give what the list says.
      if (refusals.length > 0) return;
      compared++;
      expect(steps.at(-1)?.blanksSoFar ?? 0).toBe(cut('blank'));
    }),
    { numRuns: 300, seed: 20261201 },
  );
  expect(compared).toBeGreaterThan(60);
}, 120_000);
