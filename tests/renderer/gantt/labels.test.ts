import { describe, expect, it } from 'vitest';
import { shortDuration } from '../../../core/units/duration.ts';
import { dueMarks, labelsOf, lateMarks } from '../../../renderer/gantt/labels.ts';
import { fitted, xOf } from '../../../renderer/gantt/scale.ts';
import { anOrder, at } from '../../support/builders.ts';
import { aBoard, barOf } from './a-board.ts';

const lateOrder = { order: [anOrder({ due: at('2026-11-27') })] };
const { lanes } = aBoard(lateOrder);
const near = fitted(at('2026-11-30', '07:00'), at('2026-11-30', '09:00'), 1200);
const far = fitted(at('2026-11-25', '00:00'), at('2026-12-16', '00:00'), 1200);

describe('words on the board', () => {
  it('name the line first, then what and for whom, as far as there is room', () => {
    const [label] = labelsOf(lanes[1]!, near, 4);
    expect(label?.lines).toEqual(['1042/1', 'Corner', '20 pieces', 'Invented Roofing']);
    expect(labelsOf(lanes[1]!, near, 2)[0]?.lines).toEqual(['1042/1', 'Corner']);
  });

  it('are left out on bars too thin to carry them', () => {
    expect(labelsOf(lanes[0]!, far, 4)).toEqual([]);
  });

  it('stand inside their bar', () => {
    for (const lane of lanes)
      for (const { bar, x, width } of labelsOf(lane, near, 4)) {
        expect(x).toBeGreaterThanOrEqual(xOf(near, bar.start));
        expect(x + width).toBeLessThanOrEqual(xOf(near, bar.end));
      }
  });

  it('say of a late line how late it is, under its last operation only', () => {
    const bar = barOf(lanes, '1042/2:brake');
    const wide = fitted(bar.end - 3600, bar.end + 3600, 1200);
    const late = `${shortDuration(bar.tardiness)} late`;
    expect(lateMarks(lanes[2]!, wide)).toEqual([{ lineId: '1042/2', x: xOf(wide, bar.end), words: late }]);
    expect(lateMarks(lanes[0]!, near)).toEqual([]);
  });

  it('keep late marks apart from far away', () => {
    const xs = lateMarks(lanes[1]!, far).map((mark) => mark.x);
    expect(xs.length).toBeGreaterThan(0);
    for (let i = 1; i < xs.length; i++) expect(xs[i]! - xs[i - 1]!).toBeGreaterThanOrEqual(12);
  });

  it('mark each due date once', () => {
    expect(dueMarks(lanes[1]!, far)).toEqual([{ due: at('2026-11-27'), x: xOf(far, at('2026-11-27')) }]);
    expect(dueMarks(lanes[1]!, near)).toEqual([]);
  });
});
