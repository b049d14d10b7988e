import { describe, expect, it } from 'vitest';
import { withBlocks } from '../../../core/edit/blocks.ts';
import {
  laterPart,
  movable,
  pastRun,
  postponed,
  runWith,
  sameStep,
  shifted,
  toEnd,
} from '../../../renderer/gantt/block-moves.ts';
import { geometryOf } from '../../../renderer/gantt/geometry.ts';
import { runAt } from '../../../renderer/gantt/hit-test.ts';
import type { Bar, Lane } from '../../../renderer/gantt/lanes.ts';
import { xOf } from '../../../renderer/gantt/scale.ts';
import { inBand, joined, rangeInLane, toggled } from '../../../renderer/gantt/selection.ts';
import { aRecord, at } from '../../support/builders.ts';
import { aBoard } from './a-board.ts';

/** A shear's lane of bars an hour long, one letter each; a run ends where the letter's case changes. */
function aLane(letters: string, started = 0): Lane {
  const { lanes } = aBoard();
  const pattern = lanes[0]!.bars[0]!;
  const bars = [...letters].map((operation, position): Bar => {
    const start = position * 3600;
    return { ...pattern, operation, position, start, end: start + 3600, started: position < started };
  });
  const isUpper = (letter: string) => letter === letter.toUpperCase();
  const firsts = [...letters].flatMap((o, i) =>
    i === 0 || isUpper(o) !== isUpper(letters[i - 1]!) ? [i] : [],
  );
  const runs = firsts.map((first, i) => {
    const count = (firsts[i + 1] ?? letters.length) - first;
    return { start: first * 3600, end: (first + count) * 3600, first, count, title: '' };
  });
  return { ...lanes[0]!, bars, runs };
}

const orderAfter = (lane: Lane, blocks: Parameters<typeof withBlocks>[1]): string =>
  withBlocks({ S1: lane.bars.map((bar) => bar.operation) }, blocks).S1!.join('');

describe('several bars of a lane', () => {
  const lane = aLane('abCDef');

  it('go one place on, each stretch for itself, and keep their order', () => {
    expect(orderAfter(lane, shifted([lane], ['b', 'C'], -1))).toBe('bCaDef');
    expect(orderAfter(lane, shifted([lane], ['b', 'D'], 1))).toBe('aCbeDf');
    expect(orderAfter(lane, shifted([lane], ['a', 'C'], -1))).toBe('aCbDef');
  });

  it('go to the front or the end of the queue', () => {
    expect(orderAfter(lane, toEnd([lane], ['b', 'D'], 'first'))).toBe('bDaCef');
    expect(orderAfter(lane, toEnd([lane], ['b', 'D'], 'last'))).toBe('aCefbD');
  });

  it('never go before what has started, nor does that move', () => {
    const running = aLane('abCDef', 1);
    expect(orderAfter(running, toEnd([running], ['a', 'D'], 'first'))).toBe('aDbCef');
    expect(movable([running], ['a', 'D']).map((bar) => bar.operation)).toEqual(['D']);
  });

  it('go past a whole run', () => {
    expect(orderAfter(lane, pastRun([lane], ['e', 'f'], -1))).toBe('abefCD');
    expect(orderAfter(lane, pastRun([lane], ['a', 'b'], 1))).toBe('CDabef');
    expect(orderAfter(lane, pastRun([lane], ['a', 'b'], -1))).toBe('abCDef');
  });

  it('are postponed behind the rest of their day, or of the next where they are its last', () => {
    const dayEnd = (instant: number) => (Math.floor(instant / 10800) + 1) * 10800;
    expect(orderAfter(lane, postponed([lane], ['a'], dayEnd))).toBe('bCaDef');
    expect(orderAfter(lane, postponed([lane], ['C'], dayEnd))).toBe('abDefC');
    expect(orderAfter(lane, postponed([lane], ['f'], dayEnd))).toBe('abCDef');
  });
});

describe('a run', () => {
  const lane = aLane('abCDef');

  it('is had by any of its operations', () => {
    expect(runWith(lane, 'D')).toEqual(['C', 'D']);
    expect(runWith(lane, 'x')).toBeNull();
  });

  it('split at a place, its later part goes behind the next run', () => {
    expect(laterPart([lane], 'b')).toEqual(['b']);
    expect(orderAfter(lane, pastRun([lane], laterPart([lane], 'b'), 1))).toBe('aCDbef');
    expect(orderAfter(lane, pastRun([lane], laterPart([lane], 'f'), 1))).toBe('abCDef');
  });

  it('is taken by its bracket, in the words over it too, and nowhere else', () => {
    const scale = { from: 0, perPixel: 60, width: 600 };
    const geometry = geometryOf(200, 1);
    const over = (operation: string, y: number) => {
      const bar = lane.bars.find((one) => one.operation === operation)!;
      return runAt([lane], geometry, scale, xOf(scale, bar.start) + 1, y)?.bar.operation;
    };
    expect(over('D', geometry.bracketY)).toBe('C');
    expect(over('D', 1)).toBe('C');
    expect(over('D', geometry.barY + 1)).toBeUndefined();
    expect(runAt([lane], geometry, scale, 599, 1)).toBeNull();
  });
});

describe('what is selected', () => {
  const { lanes } = aBoard();

  it('reaches from where it began to the one pointed at, in one lane; in another it is that one', () => {
    expect(rangeInLane(lanes, '1042/3:shear', '1042/1:shear')).toEqual([
      ...['1042/1:shear', '1042/2:shear', '1042/3:shear'],
    ]);
    expect(rangeInLane(lanes, '1042/1:shear', '1042/3:brake')).toEqual(['1042/3:brake']);
    expect(rangeInLane(lanes, null, '1042/1:shear')).toEqual(['1042/1:shear']);
  });

  it('gets what was not in it, and loses what was', () => {
    expect(joined(['a', 'b'], ['b', 'c'])).toEqual(['a', 'b', 'c']);
    expect(toggled(['a', 'b'], ['b'])).toEqual(['a']);
    expect(toggled(['a'], ['a', 'b'])).toEqual(['a', 'b']);
  });

  it('is what a rubber band touches, drawn from any corner', () => {
    const lane = aLane('abCDef');
    const scale = { from: 0, perPixel: 60, width: 600 };
    const geometry = geometryOf(400, 2);
    const board = [lane, { ...lane, bars: [] }];
    const band = { x0: 200, y0: geometry.barY + 5, x1: 70, y1: geometry.barY + 1 };
    expect(inBand(board, geometry, scale, band)).toEqual(['b', 'C', 'D']);
    const below = { ...band, y0: geometry.laneHeight + 5, y1: geometry.laneHeight + 9 };
    expect(inBand(board, geometry, scale, below)).toEqual([]);
  });

  it('moves to a lane as far as it is the same step', () => {
    const all = lanes.flatMap(({ bars }) => bars.map((bar) => bar.operation));
    const bending = sameStep(lanes, all, '1042/2:brake').map((bar) => bar.operation);
    expect(bending.toSorted()).toEqual(['1042/1:brake', '1042/2:brake', '1042/3:brake']);
  });

  it('leaves behind what has started', () => {
    const record = [aRecord({ id: '1042/1:shear', start: at('2026-11-30', '05:00'), end: null })];
    const started = aBoard({ record }).lanes;
    expect(movable(started, ['1042/1:shear', '1042/2:shear'])).toHaveLength(1);
  });
});
