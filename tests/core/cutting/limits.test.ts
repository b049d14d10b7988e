import { describe, expect, it } from 'vitest';
import { checkSteps } from '../../../core/cutting/check-steps.ts';
import { planRun } from '../../../core/cutting/plan-run.ts';
import type { RunInput } from '../../../core/cutting/run.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import { foreignTo } from '../../support/foreign-units.ts';
import { aLine, aRun, aSheet } from './random-run.ts';
import { withPoints } from '../../support/writing.ts';

const sheet = aSheet('S', 1219.2, 3048);
const shear = aRun([], []).shear;

/** Runs that cannot be cut, each for a reason of its own. */
const refused: Readonly<Record<string, readonly [RegExp, RunInput]>> = {
  'no stock': [/There is no stock/, aRun([aLine('1/1', 300, 3048, 1)], [])],
  'a blank wider than any sheet': [
    /wider than the widest stock/,
    aRun([aLine('1/1', 1300, 3048, 1)], [sheet]),
  ],
  'a blank longer than any sheet': [
    /longer than the longest stock/,
    aRun([aLine('1/1', 300, 3060, 1)], [sheet]),
  ],
  'a blank longer than the shear': [
    /longer than the shear/,
    aRun([aLine('1/1', 300, 3000, 1)], [sheet], { shear: { ...shear, lengthMm: 2500 } }),
  ],
  'a girth that the back gauge does not reach': [
    /narrower than the back gauge can be set/,
    aRun([aLine('1/1', 8, 3048, 1)], [sheet], { shear: { ...shear, backGaugeMm: { min: 10, max: 900 } } }),
  ],
  'a length that the back gauge does not reach': [
    /shorter than the back gauge can be set/,
    aRun([aLine('1/1', 300, 8, 1)], [sheet], { shear: { ...shear, backGaugeMm: { min: 10, max: 900 } } }),
  ],
  'a trim that cannot be sheared': [
    /a trim too thin to shear off/,
    aRun([aLine('1/1', 300, 3048, 1)], [aSheet('S', 1219.2, 3048, { endTrimMm: 1 })]),
  ],
  'a blank of no width': [/has no girth or no length/, aRun([aLine('1/1', NaN, 3048, 1)], [sheet])],
  'a size that the limits together refuse': [
    /No stock yields the blank/,
    // Cut from a strip of 50 mm, it leaves 20 mm in hold-downs that need 40.
    aRun([aLine('1/1', 30, 3048, 1)], [aSheet('T', 50, 3048)]),
  ],
};

const sentences = (run: RunInput): string[] => {
  const plan = planRun(run, { steps: 5 });
  return plan.ok ? [] : plan.issues.map(({ message, advice }) => `${message} ${advice}`);
};

describe.each(Object.entries(refused))('%s is refused', (_, [why, run]) => {
  it.each(['in', 'mm'] as const)('in the shop’s own units: %s', (units) => {
    const said = sentences({ ...run, units: withPoints(units) });
    expect(said.join(' ')).toMatch(why);
    for (const one of said) expect(one).not.toMatch(foreignTo[units]);
  });

  it('with no advice to hold a piece by hand', () => {
    expect(sentences(run).join(' ').replaceAll('never hold it by hand', '')).not.toMatch(/by hand/);
  });
});

describe.each(['in', 'mm'] as const)('a step that the shear cannot do is told in %s', (units) => {
  const run = aRun([aLine('1/1', 241.3, 3048, 5)], [sheet], { units: withPoints(units) });
  const made = planRun(run, { steps: 40 });
  if (!made.ok) throw new Error('the run of this test can be cut');
  const { steps, groups } = made.value;
  const gauged = steps.findIndex((step) => step.backGaugeMm === 241.3);

  it.each<[RegExp, Partial<CutStep>, Partial<RunInput['shear']>]>([
    [/needs a shear longer than/, {}, { lengthMm: 2000 }],
    [/takes more than there is/, { sizeMm: 1500, backGaugeMm: 1500 }, {}],
    [/is thinner than a shear cuts off/, { sizeMm: 1, backGaugeMm: 1 }, {}],
    [/less than the .* the hold-downs grip/, { sizeMm: 1200, backGaugeMm: 1200 }, {}],
    [/does not agree with its back gauge/, { backGaugeMm: 250 }, {}],
    [/is beyond the back gauge/, { sizeMm: 1000, backGaugeMm: 1000 }, { backGaugeMm: { min: 5, max: 900 } }],
    [/of a size nobody asked for/, { sizeMm: 240, backGaugeMm: 240 }, {}],
  ])('%s', (why, change, limits) => {
    const changed = steps.map((step, k) => (k === gauged ? { ...step, ...change } : step));
    const said = checkSteps({ ...run, shear: { ...run.shear, ...limits } }, groups, changed).map(
      ({ message, advice }) => `${message} ${advice}`,
    );
    expect(said.join(' ')).toMatch(why);
    for (const one of said) expect(one).not.toMatch(foreignTo[units]);
  });
});
