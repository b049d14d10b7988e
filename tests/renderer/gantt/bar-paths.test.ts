import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geometryOf } from '../../../renderer/gantt/geometry.ts';
import { endOf, panned, type Scale } from '../../../renderer/gantt/scale.ts';
import { lanePaths, stretchFor } from '../../../renderer/gantt/bar-paths.ts';
import { NOW } from '../../support/builders.ts';
import { aBoard } from './a-board.ts';

const { lanes } = aBoard();
const geometry = geometryOf(300, 3);
const all = { start: NOW, end: NOW + 30 * 86_400 };
/** Left and right ends of the boxes in a path. */
const boxesIn = (path: string): [number, number][] =>
  [...path.matchAll(/M([\d.]+) [\d.]+h([\d.]+)/g)].map(([, x, width]) => [
    Number(x),
    Number(x) + Number(width),
  ]);

describe('a lane as paths', () => {
  it('draws each colour’s bars exactly where its operations are', () => {
    const { colours } = lanePaths(lanes[0]!, geometry, NOW, all);
    expect(colours.map((colour) => colour.hex)).toEqual(['#4a5d43', '#dfd5c2']);
    const moss = lanes[0]!.bars.filter((bar) => bar.hex === '#4a5d43').flatMap((bar) => bar.pieces);
    expect(boxesIn(colours[0]!.bars)).toEqual(moss.map(({ start, end }) => [start - NOW, end - NOW]));
  });

  it('draws only what touches the stretch asked for', () => {
    const [first] = lanes[0]!.bars;
    const { colours } = lanePaths(lanes[0]!, geometry, NOW, { start: first!.start, end: first!.end });
    expect(colours.flatMap((colour) => boxesIn(colour.bars))).toHaveLength(1);
  });

  it('always draws the whole window, and draws the same stretch again while one looks along a little', () => {
    const aScale = fc.record({
      from: fc.integer({ min: 1_000_000, max: 2_000_000_000 }),
      perPixel: fc.double({ min: 4, max: 2000, noNaN: true }),
      width: fc.integer({ min: 200, max: 3000 }),
    });
    fc.assert(
      fc.property(aScale, (scale: Scale) => {
        const stretch = stretchFor(scale);
        expect(stretch.start).toBeLessThanOrEqual(scale.from);
        expect(stretch.end).toBeGreaterThanOrEqual(endOf(scale));
      }),
    );
    const scale: Scale = { from: 2 ** 30 + 100, perPixel: 60, width: 1000 };
    expect(stretchFor(panned(scale, 200))).toEqual(stretchFor(scale));
  });
});
