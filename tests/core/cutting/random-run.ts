import fc from 'fast-check';
import { NO_WORK } from '../../../core/cutting/work.ts';
import type { RunInput, RunLine, ShearLimits, SheetStock } from '../../../core/cutting/run.ts';
import { metric } from '../../support/writing.ts';

/** A shear that takes 10 ft sheets, in millimetres. */
export const tenFootShear: ShearLimits = {
  lengthMm: 3100,
  backGaugeMm: { min: 5, max: 1000 },
  minStripMm: 40,
  scribe: false,
  continuousFrom: null,
};

export const aSheet = (
  id: string,
  widthMm: number,
  lengthMm: number,
  more: Partial<SheetStock> = {},
): SheetStock => ({
  kind: 'sheet',
  id,
  widthMm,
  lengthMm,
  costCents: Math.round((widthMm * lengthMm) / 500),
  available: null,
  remnant: false,
  endTrimMm: 0,
  sideTrimMm: 0,
  ...more,
});

export const aLine = (
  id: string,
  girthMm: number,
  lengthMm: number,
  quantity: number,
  more: Partial<RunLine> = {},
): RunLine => ({
  id,
  girthMm,
  lengthMm,
  quantity,
  overrun: 0,
  due: null,
  ...more,
});

export const aRun = (
  lines: readonly RunLine[],
  stock: RunInput['stock'],
  more: Partial<RunInput> = {},
): RunInput => ({
  lines,
  stock,
  shear: tenFootShear,
  keep: { widthMm: 150, lengthMm: 600, most: 1000, worth: 0 },
  work: NO_WORK,
  units: metric,
  ...more,
});

const stockSizes = [
  [914.4, 2438.4],
  [1219.2, 2438.4],
  [1219.2, 3048],
  [1524, 3048],
] as const;

const lines = fc
  .array(
    fc.record({
      girth: fc.integer({ min: 30, max: 760 }),
      tenths: fc.integer({ min: 0, max: 99 }),
      length: fc.constantFrom(610, 914.4, 1219.2, 1828.8, 2438.4, 3048, 2999.5),
      quantity: fc.integer({ min: 1, max: 40 }),
      overrun: fc.constantFrom(0, 0, 0, 2),
      due: fc.constantFrom(null, 1, 2),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((drawn) =>
    drawn.map(({ girth, tenths, length, quantity, overrun, due }, at) =>
      aLine(`${1000 + at}/1`, girth + tenths / 100, length, quantity, { overrun, due }),
    ),
  );

const stock = fc
  .record({
    sizes: fc.uniqueArray(fc.constantFrom(...stockSizes), { minLength: 1, maxLength: 3 }),
    endTrimMm: fc.constantFrom(0, 0, 6),
    sideTrimMm: fc.constantFrom(0, 0, 6),
    remnants: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ sizes, endTrimMm, sideTrimMm, remnants }) => {
    const sheets = sizes.map(([width, length], at) =>
      aSheet(`S${at}`, width, length, { endTrimMm, sideTrimMm }),
    );
    const remnant = aSheet('R', 500, 2438.4, { costCents: 0, available: remnants, remnant: true });
    return remnants > 0 ? [remnant, ...sheets] : sheets;
  });

const shear = fc.record({
  lengthMm: fc.constantFrom(2500, 3100, 3700),
  backGaugeMm: fc.record({ min: fc.constantFrom(5, 12), max: fc.constantFrom(500, 800, 1500) }),
  minStripMm: fc.constantFrom(25, 40, 75),
  scribe: fc.boolean(),
  continuousFrom: fc.constantFrom(null, 4),
});

/** Runs of up to six lines on up to three sheet sizes and a few remnants; some cannot be cut, as in life. */
export const randomRun: fc.Arbitrary<RunInput> = fc
  .record({ lines, stock, shear })
  .map((drawn) => aRun(drawn.lines, drawn.stock, { shear: drawn.shear }));
