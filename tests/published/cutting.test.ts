import { describe, expect, it } from 'vitest';
import { NO_WORK } from '../../core/cutting/work.ts';
import { checkCut } from '../../core/cutting/check-cut.ts';
import type { CutResult } from '../../core/cutting/cut-problem.ts';
import { readCutProblem } from '../../core/cutting/cut-problem.ts';
import { planRun } from '../../core/cutting/plan-run.ts';
import type { RunInput } from '../../core/cutting/run.ts';
import { benchCut } from '../bench/cut.ts';
import { inches } from '../support/writing.ts';

const lengths = (pairs: readonly (readonly [length: number, quantity: number])[]) =>
  pairs.map(([length, quantity], at) => ({ id: `I${at + 1}`, length, quantity }));
const problem = (name: string, stock: number, items: readonly (readonly [number, number])[]) => ({
  format: 'cut-problem/1',
  name,
  stock: [{ id: 'stock', length: stock, available: null, cost: 1 }],
  items: lengths(items),
  trim: 0,
});

const published = [
  {
    source: 'Wikipedia, "Cutting stock problem": 13 widths from paper rolls of 5600 mm, optimum 73 rolls',
    optimum: 73,
    problem: problem('paper rolls', 5600, [
      [1380, 22], [1520, 25], [1560, 12], [1710, 14], [1820, 18], [1880, 18], [1930, 20],
      [2000, 10], [2050, 12], [2100, 14], [2140, 16], [2150, 18], [2200, 20],
    ]), // prettier-ignore
  },
  {
    // Attribution from memory; the data circulate as the case "cutstock" of an optimisation model library.
    source:
      'V. Chvatal, Linear Programming, 1983, ch. 13, after Gilmore and Gomory 1961: raws of 100, LP bound 452.25',
    optimum: 453,
    problem: problem('raws of 100', 100, [[45, 97], [36, 610], [31, 395], [14, 211]]), // prettier-ignore
  },
  {
    source: 'Course exercise on 22-inch boards: 74 boards, which the material bound proves',
    optimum: 74,
    problem: problem('boards', 22, [[7, 110], [5, 120], [3, 80]]), // prettier-ignore
  },
];

describe('published cutting-stock examples', () => {
  it.each(published)('$source', async ({ problem: given, optimum }) => {
    const { line, result } = await benchCut(given, { seconds: 5, seed: 1 });
    const read = readCutProblem(given);
    expect(read.ok && checkCut(read.value, result as CutResult)).toEqual([]);
    expect(line).toMatchObject({ objective: optimum, lowerBound: optimum, valid: true });
  });
});

/** The sheet sizes below are common practice, no source; the arithmetic is 48 in less trim over the girth. */
describe('strips from a 48 in sheet', () => {
  const strips = (girthIn: number, trimIn: number): number => {
    const stock = {
      kind: 'sheet',
      id: 'S',
      widthMm: 1219.2,
      lengthMm: 3048,
      costCents: 100,
      available: null,
      remnant: false,
    } as const;
    const run: RunInput = {
      lines: [{ id: '1/1', girthMm: girthIn * 25.4, lengthMm: 3048, quantity: 60, overrun: 0, due: null }],
      stock: [{ ...stock, endTrimMm: 0, sideTrimMm: trimIn * 25.4 }],
      shear: {
        lengthMm: 3100,
        backGaugeMm: { min: 5, max: 900 },
        minStripMm: 40,
        scribe: false,
        continuousFrom: null,
      },
      keep: { widthMm: 150, lengthMm: 600, most: 1000, worth: 0 },
      work: NO_WORK,
      units: inches,
    };
    const plan = planRun(run, { steps: 40 });
    return plan.ok ? Math.max(...plan.value.groups.map((group) => group.blanks.length)) : 0;
  };
  it.each([
    [12, 0, 4],
    [12, 0.25, 3],
    [9.5, 0.25, 5],
    [6, 0, 8],
    [14, 0.25, 3],
  ])('girth %f in with %f in of trim: %i strips', (girth, trim, expected) => {
    expect(strips(girth, trim)).toBe(expected);
  });
});
