import { describe, expect, it } from 'vitest';
import { shortDuration } from '../../../core/units/duration.ts';
import { blocksOf, dueMarks, labelsOf, lateMarks } from '../../../renderer/gantt/labels.ts';
import { endOf, fitted, xOf } from '../../../renderer/gantt/scale.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { foldLanes, foldOf, shutTogether } from '../../../renderer/gantt/fold.ts';
import { barsIn, horizonOf, lanesOf } from '../../../renderer/gantt/lanes.ts';
import { aColour, anOrder, at } from '../../support/builders.ts';
import { aBoard, barOf, planOf } from './a-board.ts';

const lateOrder = { order: [anOrder({ due: at('2026-11-27') })] };
const { lanes } = aBoard(lateOrder);
const near = fitted(at('2026-11-30', '07:00'), at('2026-11-30', '09:00'), 1200);
const far = fitted(at('2026-11-25', '00:00'), at('2026-12-16', '00:00'), 1200);

describe('words on the board', () => {
  it('name the line first, then what and for whom, as far as there is room', () => {
    const [label] = labelsOf(lanes[1]!, near, 70);
    expect(label?.lines).toEqual(['1042/1', 'Corner', '20 pieces', 'Invented Roofing']);
    expect(labelsOf(lanes[1]!, near, 40)[0]?.lines).toEqual(['1042/1', 'Corner']);
  });

  it('are left out on bars too thin to carry them', () => {
    expect(labelsOf(lanes[0]!, far, 70)).toEqual([]);
  });

  it('stand inside their bar', () => {
    for (const lane of lanes)
      for (const { bar, x, width } of labelsOf(lane, near, 70)) {
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

describe('narrow bars', () => {
  const shear = lanes[0]!;
  const [first] = shear.bars;

  it('carry their number upright, where they are as high as it is long', () => {
    const scale = { from: first!.start, perPixel: (first!.end - first!.start) / 18, width: 600 };
    const [label] = labelsOf(shear, scale, 60);
    expect(label).toMatchObject({ lines: ['1042/1'], upright: true });
    expect(labelsOf(shear, scale, 30)).toEqual([]);
  });

  it('are one block with what they share and how many they are, where none has room for its number', () => {
    const scale = { from: first!.start, perPixel: (first!.end - first!.start) / 10, width: 600 };
    const blocks = blocksOf(shear, scale, 80, labelsOf(shear, scale, 80));
    expect(blocks.map(({ lines, upright }) => ({ lines, upright }))).toEqual([
      { lines: ['× 2'], upright: true },
    ]);
    expect(blocksOf(shear, scale, 170, [])[0]).toMatchObject({
      lines: ['24 ga Moss green × 2'],
      upright: true,
      hex: aColour().hex,
    });
    expect(blocksOf(shear, near, 80, labelsOf(shear, near, 80))).toEqual([]);
  });

  it('are not the rule on the demo’s board: of a shift and of a folded week most have words, their own or their run’s', () => {
    const start = at('2026-11-30', '06:10');
    const shop = loadDemo('demo-data/shop', start);
    const plan = planOf(shop, start);
    const open = lanesOf(shop, plan);
    const fold = foldOf(shutTogether(plan, open, horizonOf(plan)));
    const demo = foldLanes(open, fold);
    for (const hours of [12, 24, 5 * 24]) {
      const scale = fitted(fold.at(start), fold.at(start + hours * 3600), 900);
      const told = demo.flatMap((lane) => {
        const labels = labelsOf(lane, scale, 98);
        const blocks = blocksOf(lane, scale, 98, labels);
        const named = new Set([
          ...labels.map(({ bar }) => bar.operation),
          ...blocks
            .flatMap(({ run }) => lane.bars.slice(run.first, run.first + run.count))
            .map((b) => b.operation),
        ]);
        return barsIn(lane, scale.from, endOf(scale)).map((bar) => named.has(bar.operation));
      });
      expect(told.filter(Boolean).length / told.length).toBeGreaterThan(0.5);
    }
  });
});
