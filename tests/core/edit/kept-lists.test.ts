import { describe, expect, it } from 'vitest';
import { groupSteps, moveStep } from '../../../core/edit/cutting-steps.ts';
import { keptListOf, timesFor, timesOver } from '../../../core/edit/kept-lists.ts';
import { relisted } from '../../../core/cutting/renumber.ts';
import type { RunLine } from '../../../core/cutting/run.ts';
import { aShop } from '../../support/builders.ts';
import { after, refusalOf } from '../../support/edits.ts';
import { aGroup, aKeptList, aStep } from '../../support/stock-builders.ts';

const lineOf = (quantity: number, own: Partial<RunLine> = {}): RunLine => ({
  ...{ id: '1042/1', girthMm: 150, lengthMm: 3048, quantity, overrun: 0, due: null, ...own },
});

describe('a list kept by a name', () => {
  it('has the sheets and steps, and no line of the run that it was made for', () => {
    const kept = keptListOf('Fascia, weekly', [aGroup({ count: 3 })], [aStep()], 0);
    expect(kept).toEqual(aKeptList());
    const shop = after(aShop(), { do: 'cutting.keep', list: kept });
    expect(shop.keptList).toEqual([{ ...kept, revision: 1 }]);
    expect(after(shop, { do: 'cutting.forget', list: shop.keptList[0]! }).keptList).toEqual([]);
  });

  it('gives way to another of its name only to someone who has seen it', () => {
    const kept = aKeptList();
    const shop = after(aShop(), { do: 'cutting.keep', list: kept });
    const seen = shop.keptList[0]!;
    const other = { ...kept, steps: [aStep({ lines: [], cutsEach: 5 })], revision: seen.revision };
    const replaced = after(shop, { do: 'cutting.keep', list: other });
    expect(refusalOf(replaced, { do: 'cutting.keep', list: other })).toMatch(/changed/);
    expect(refusalOf(replaced, { do: 'cutting.forget', list: seen })).toMatch(/changed/);
    expect(replaced.keptList.map(({ steps }) => steps[0]?.cutsEach)).toEqual([5]);
    expect(refusalOf(aShop(), { do: 'cutting.forget', list: kept })).toMatch(/no list “Fascia, weekly”/);
  });

  it('gives what a run asks so many times over, or other blanks: twelve of 150 mm three times are 36, not 30', () => {
    const kept = aKeptList();
    expect(timesFor(kept, [lineOf(12)])).toBe(1);
    expect(timesFor(kept, [lineOf(20), lineOf(16, { id: '1043/1' })])).toBe(3);
    expect(timesFor(kept, [lineOf(30)])).toBeNull();
    expect(timesFor(kept, [lineOf(30, { overrun: 6 })])).toBe(3);
    expect(timesFor(kept, [lineOf(12, { girthMm: 151 })])).toBeNull();
    expect(timesFor(kept, [lineOf(12), lineOf(1, { id: '1043/1', lengthMm: 600 })])).toBeNull();
    expect(timesFor(kept, [])).toBeNull();
  });

  it('used so many times over takes as many sheets, and its blanks go to the lines that ask now', () => {
    const kept = aKeptList();
    const sheets = timesOver(kept.groups, 2);
    const [step] = relisted(kept.steps, sheets, [lineOf(24, { id: '2001/1' })]);
    expect(step).toMatchObject({ fed: 6, blanks: 24, lines: [{ line: '2001/1', pieces: 24 }] });
  });
});

describe('steps under headings', () => {
  const steps = [1, 2, 3, 4].map((number) => aStep({ number }));
  const headings = (all: readonly { heading?: string | undefined }[]) =>
    all.map(({ heading }) => heading ?? '-');
  const grouped = groupSteps(steps, 2, 3, ' Corners ');

  it('are those from one number to another, until the heading is taken off them', () => {
    expect(headings(grouped)).toEqual(['-', 'Corners', 'Corners', '-']);
    expect(headings(groupSteps(grouped, 3, 3, ''))).toEqual(['-', 'Corners', '-', '-']);
  });

  it('take in a step put between two of them, and lose one put away from its group', () => {
    expect(headings(moveStep(grouped, 0, 1))).toEqual(['Corners', 'Corners', 'Corners', '-']);
    expect(headings(moveStep(grouped, 1, 3))).toEqual(['-', 'Corners', '-', '-']);
    // Moved within its group it stays.
    expect(headings(moveStep(grouped, 1, 2))).toEqual(['-', 'Corners', 'Corners', '-']);
  });

  it('keep them when the list is put in order again', () => {
    expect(headings(relisted(grouped, [aGroup({ count: 3 })], []))).toEqual(['-', 'Corners', 'Corners', '-']);
  });
});
