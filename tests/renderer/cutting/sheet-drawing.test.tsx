// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import type { SheetGroup } from '../../../core/cutting/plan.ts';
import { stepRows } from '../../../core/report/cutting-words.ts';
import { SheetDrawing } from '../../../renderer/screens/cutting/sheet-drawing.tsx';
import { aStep } from '../../support/stock-builders.ts';
import { withPoints } from '../../support/writing.ts';

afterEach(cleanup);

/** 220.28 mm / 25.4 = 8.6724 in: 8 11/16 in would be 1/64 in more. */
const girthMm = 220.28;
const group: SheetGroup = {
  id: 'A',
  stockId: 'galv-24-moss',
  remnantStock: false,
  count: 2,
  widthMm: 1219.2,
  lengthMm: 3048,
  costCents: 6200,
  blanks: [{ x: 0, y: 0, w: 3048, h: girthMm, lines: ['1042/1'] }],
  offcuts: [{ x: 0, y: girthMm, w: 3048, h: 998.92, kind: 'remnant' }],
};
const draw = (units: 'in' | 'mm') =>
  render(<SheetDrawing group={group} units={withPoints(units)} looks={new Map()} longestMm={3048} />);

describe('a sheet drawn', () => {
  it.each(['in', 'mm'] as const)('gives a blank the very size that its step sets, in %s', (units) => {
    const to = { kind: 'blank', girthMm, lengthMm: 3048 } as const;
    const shear = { lengthMm: 3100, backGaugeMm: { min: 5, max: 1000 }, minStripMm: 40 };
    const steps = [aStep({ sizeMm: girthMm, backGaugeMm: girthMm, to })];
    const [row] = stepRows({ steps, groups: [group] }, { shear, units: withPoints(units) });
    draw(units);
    expect(row?.setting).toBe(units === 'in' ? '8.672 in' : '220.3 mm');
    // As its tooltip and, where there is room, written on it.
    expect(screen.getAllByText(new RegExp(`^1042/1: ${row?.setting} ×`))).toHaveLength(2);
    expect(row?.drop).toContain(row?.setting ?? 'nothing');
  });

  it('says how many sheets are cut so, of which stock and size', () => {
    draw('in');
    expect(screen.getByRole('figure').textContent).toContain('A: 2 sheets of galv-24-moss, 48 in × 120 in');
  });
});
