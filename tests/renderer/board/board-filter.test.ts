import { describe, expect, it } from 'vitest';
import {
  barsThatFit,
  fitWords,
  nextThatFits,
  unfiltered,
  type BoardFilter,
} from '../../../renderer/screens/board/board-filter.ts';
import { aLine, at, NOW, ZONE } from '../../support/builders.ts';
import { aBoard } from '../gantt/a-board.ts';

const { lanes } = aBoard({
  line: [aLine(), aLine({ number: 2, due: at('2026-11-20') }), aLine({ number: 3, colourId: 'bone' })],
});
const fitting = (filter: Partial<BoardFilter>) =>
  [...new Set(barsThatFit(lanes, { ...unfiltered, ...filter }, NOW, ZONE)?.map((bar) => bar.lineId))].sort();

describe('the filter of the board', () => {
  it('is none while nothing is asked', () => {
    expect(barsThatFit(lanes, unfiltered, NOW, ZONE)).toBe(null);
    expect(barsThatFit(lanes, { ...unfiltered, text: '  ' }, NOW, ZONE)).toBe(null);
  });

  it('finds every word in line, customer, part, gauge or colour', () => {
    expect(fitting({ text: '1042/2' })).toEqual(['1042/2']);
    expect(fitting({ text: 'BONE roofing' })).toEqual(['1042/3']);
    expect(fitting({ text: '24 ga corner' })).toEqual(['1042/1', '1042/2', '1042/3']);
    expect(fitting({ text: 'bone 26' })).toEqual([]);
  });

  it('narrows by colour, gauge, due date and lateness, all together', () => {
    expect(fitting({ colour: 'Bone' })).toEqual(['1042/3']);
    expect(fitting({ gauge: '26' })).toEqual([]);
    expect(fitting({ due: 'today' })).toEqual(['1042/2']);
    expect(fitting({ late: true })).toEqual(['1042/2']);
    expect(fitting({ late: true, colour: 'Bone' })).toEqual([]);
  });

  it('counts lines, not bars, and goes on from one that fits to the next, round and round', () => {
    const fit = barsThatFit(lanes, { ...unfiltered, text: '1042/2' }, NOW, ZONE)!;
    expect(fitWords(lanes, fit)).toBe('1 of 3 lines');
    expect(nextThatFits(fit, null)).toBe('1042/2:shear');
    expect(nextThatFits(fit, '1042/2:shear')).toBe('1042/2:brake');
    expect(nextThatFits(fit, '1042/2:brake')).toBe('1042/2:shear');
    expect(nextThatFits([], null)).toBe(null);
  });
});
