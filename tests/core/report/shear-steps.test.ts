import { describe, expect, it } from 'vitest';
import { cutsMade, openStep, shearSteps } from '../../../core/report/shear-steps.ts';
import { aCutCount, aGroup, aStep } from '../../support/stock-builders.ts';
import { withPoints } from '../../support/writing.ts';

const at = {
  shear: { lengthMm: 3050, backGaugeMm: { min: 10, max: 800 }, minStripMm: 10 },
  units: withPoints('mm'),
};
/** Three sheets of 1219.2 × 3048 mm: a crosscut in two panels, then four strips off each panel. */
const steps = [
  aStep({
    axis: 'length',
    sizeMm: 1500,
    backGaugeMm: null,
    cutsEach: 1,
    to: { kind: 'stack', stack: 'A1' },
    rest: { kind: 'scrap' },
    lines: [],
    blanks: 0,
    blanksSoFar: 0,
  }),
  aStep({ number: 2, stack: 'A1', stroke: 'continuous' }),
];
const of = (made: ReadonlyMap<number, number> = new Map()) =>
  shearSteps({ steps, groups: [aGroup({ count: 3 })] }, at, made);

describe('the step list of the shear, one step at a time', () => {
  it('says the setting in figures apart from their unit, the cuts over all pieces, and what becomes of the piece', () => {
    const [first, second] = of();
    expect(first).toMatchObject({ how: 'Cut to a line at', figures: '1500', unit: 'mm', cuts: 3, made: 0 });
    expect(first!.becomes[0]).toBe('Falls behind the blade: stack A1.');
    expect(second).toMatchObject({ how: 'Back gauge', figures: '150', cuts: 12 });
    expect(second!.stroke).toMatch(/^Continuous strokes, only where set up and guarded/);
  });

  it('marks where on the sheet it cuts: after the crosscut on the panel only, strip by strip', () => {
    const [first, second] = of();
    expect(first!.places).toEqual({
      fed: [{ x: 0, y: 0, w: 3048, h: 1219.2 }],
      cuts: [{ x: 0, y: 0, w: 1500, h: 1219.2 }],
    });
    expect(second!.places.cuts).toEqual([0, 150, 300, 450].map((y) => ({ x: 0, y, w: 1500, h: 150 })));
  });

  it('goes on at the first step with cuts to make', () => {
    const listId = '1042/1';
    const rows = [aCutCount({ listId, made: 3 }), aCutCount({ id: 'x', listId, step: 2, made: 4 })];
    const steps = of(cutsMade({ cutCount: rows }, listId));
    expect(steps.map(({ made }) => made)).toEqual([3, 4]);
    expect(openStep(steps)).toBe(1);
    expect(openStep(of())).toBe(0);
  });
});
