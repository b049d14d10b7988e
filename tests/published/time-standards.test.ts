import { describe, expect, it } from 'vitest';
import { estimateBrake } from '../../core/estimate/brake.ts';
import { estimateOf, reason } from '../../core/estimate/estimate.ts';
import { countCuts, estimateShear } from '../../core/estimate/shear.ts';
import { standardFigure, standardsOf } from '../../core/estimate/standards.ts';
import { publishedGauges } from '../../core/material/gauges.ts';
import { blankOf } from '../../core/part/blank.ts';
import type { Blank } from '../../core/part/blank.ts';
import { hits } from '../../core/part/girth.ts';
import type { Profile } from '../../core/part/profile.ts';
import { inchesToMm } from '../../core/units/length.ts';
import { inches } from '../support/writing.ts';

const galvanized24 = publishedGauges('galvanized').find((g) => g.label === '24') ?? {
  thicknessMm: 0,
  kgPerM2: 0,
};
const blank = (girthIn: number, lengthIn = 120): Blank => {
  const [girthMm, lengthMm] = [inchesToMm(girthIn), inchesToMm(lengthIn)];
  const areaM2 = (girthMm * lengthMm) / 1e6;
  return {
    girthMm,
    lengthMm,
    areaM2,
    weightKg: areaM2 * galvanized24.kgPerM2,
    thicknessMm: galvanized24.thicknessMm,
  };
};
const sheet = (widthIn: number) => ({
  widthMm: inchesToMm(widthIn),
  lengthMm: inchesToMm(120),
  trimMm: 0,
});
const square = { angle: 90, direction: 'up', radiusMm: null } as const;
const cap: Profile = {
  flangesMm: [50, 50, 50, 50, 41.3],
  bends: [square, square, square, square],
  startHem: { kind: 'closed', lengthMm: 12.7, direction: 'up' },
  endHem: null,
  measured: 'outside',
  paintedSide: 'up',
};

/** Worked by hand for this project, elements as common practice has them (no source); allowance a share of the work. */
describe('60 pieces of 10 ft, girth 9.5 in, four bends and a hem', () => {
  const nothingElse = {
    backGaugeMove: 0,
    stack: 0,
    bundle: 0,
    flip: 0,
    turn: 0,
    turnLong: 0,
    firstPiece: 0,
    handlingPerKg: 0,
  };

  it('are sheared in 41.4 min, an 8 min changeover included', () => {
    const standards = { ...nothingElse, sheetLoad: 45, cut: 20, allowance: 0.15 };
    const machine = { stage: 'shear', standards, crew: 1, timesEdition: 2 } as const;
    const estimate = estimateShear({
      blank: blank(9.5),
      quantity: 60,
      sheet: sheet(48),
      machine,
      units: inches,
    });
    expect(estimate.ok && Math.abs(8 + estimate.value.seconds / 60 - 41.4) <= 0.05).toBe(true);
  });

  it('are bent in 130.8 min, a 25 min changeover included, at six hits a piece', () => {
    const standards = { ...nothingElse, pickUp: 10, putDown: 10, hitLong: 12, allowance: 0.15 };
    const machine = { stage: 'brake', standards, crew: 1, dieOpeningMm: 8, timesEdition: 2 } as const;
    expect(hits(cap)).toBe(6);
    const estimate = estimateBrake({
      part: { profile: cap, bendOrder: null },
      blank: blank(9.5),
      quantity: 60,
      machine,
    });
    expect(Math.abs(25 + estimate.seconds / 60 - 130.8)).toBeLessThanOrEqual(0.05);
  });
});

it('an 11 min normal time with a 15 % allowance is 12.65 min when it is a share of the work', () => {
  // Source: operations management practice problem on standard time, 10 min at 110 % rating; as a share of the day
  // the same problem gives 12.94.
  const machine = { stage: 'brake', standards: { allowance: 0.15 }, timesEdition: 2 } as const;
  expect(estimateOf(machine, { people: 1, heavyBy: [] }, [reason('normal time', 1, 660)]).seconds / 60).toBe(
    12.65,
  );
});

/**
 * Source: Stouder, The FABRICATOR, 13 June 2001: the ram moves about 5 % of the time; a stroke takes 1 s at 60 and 2 s at
 * 30 strokes a minute, which light shears make (the same). His 30 % in front of the shear and 65 % behind are of his
 * floor's mix of work and hold for none of ours (48 and 47 % of ten-foot blanks), so they are not checked.
 */
describe('by the usual figures the ram of a shear moves about 5 % of the time', () => {
  it.each([
    ['60 blanks of ten feet', 60, blank(9.5), sheet(48)],
    ['300 blanks of two feet', 300, blank(12, 24), sheet(48)],
  ])('with %s', (_, quantity, piece, from) => {
    const machine = { stage: 'shear', standards: { allowance: 0 }, crew: 1, timesEdition: 2 } as const;
    const work = { blank: piece, quantity, sheet: from, machine, units: inches } as const;
    const [estimate, counted] = [estimateShear(work), countCuts(work)];
    if (!estimate.ok || !counted.ok) throw new Error('no estimate');
    expect((counted.value.cuts * 1) / estimate.value.seconds).toBeLessThanOrEqual(0.05);
    expect((counted.value.cuts * 2) / estimate.value.seconds).toBeGreaterThanOrEqual(0.05);
  });
});

it('nobody lifts alone what the lifting equation allows nobody', () => {
  // Source: revised NIOSH lifting equation (1991), load constant 23 kg (51 lb), for the best of lifts.
  const figure = standardsOf({ stage: 'brake', timesEdition: 2 }).find(({ key }) => key === 'twoPersonKg')!;
  expect(figure.default).toBeLessThan(23);
  expect(figure.high).toBeLessThanOrEqual(23);
});

/**
 * Common practice, no source: what the usual figures are given for, so that one changed by a slip is seen. Minutes, in
 * words of the trade; the shop's own timings beat them.
 */
describe('common practice', () => {
  const of = (stage: 'shear' | 'brake', key: string) =>
    standardsOf({ stage, timesEdition: 2 }).find((s) => s.key === key)!;

  it('a line is bundled and labelled in one to two minutes, beside the machine', () => {
    expect([of('brake', 'bundle').low, of('brake', 'bundle').high]).toEqual([60, 120]);
    expect(of('shear', 'bundleOnClock').default).toBe(0);
  });

  it('two people carry what is over 40 lb, a flimsy piece from 8 ft, a sheet from 20 ft²', () => {
    const figure = (key: string): string =>
      standardFigure(of('brake', key), of('brake', key).default, inches);
    expect(['twoPersonKg', 'twoPersonMm', 'twoPersonM2'].map(figure)).toEqual([
      '39.68 lb',
      '96 in',
      '20 ft²',
    ]);
  });
});

/** Strips from a sheet after a 1/4 in trim cut, worked by hand for this project. */
it.each([
  [6, 5, 7, 9],
  [6.5, 5, 7, 9],
  [8, 4, 5, 7],
  [9.5, 3, 5, 6],
  [12, 2, 3, 4],
  [16, 2, 2, 3],
  [20, 1, 2, 2],
])('girth %d in yields %d, %d and %d strips from sheets 36, 48 and 60 in wide', (girthIn, ...strips) => {
  // Long enough for ten feet once its end is trimmed too.
  const trimmed = { lengthMm: inchesToMm(120.25), trimMm: inchesToMm(0.25) };
  const yields = [36, 48, 60].map((width) => {
    const counted = countCuts({
      blank: blank(girthIn),
      quantity: 1,
      sheet: { ...sheet(width), ...trimmed },
      units: inches,
    });
    return counted.ok && counted.value.perSheet;
  });
  expect(yields).toEqual(strips);
});

it('a blank of 12 × 120 in in 24 gauge galvanized weighs 11.6 lb', () => {
  // 10 ft² at the published 1.156 lb/ft².
  const flat: Profile = { ...cap, flangesMm: [inchesToMm(12)], bends: [], startHem: null };
  const line = { id: '1/1', lengthMm: inchesToMm(120) };
  const piece = blankOf(
    line,
    { id: 'flat', profile: flat },
    { metal: 'galvanized', tensileMpa: 414, kFactor: 0.446, deductions: [] },
    { ...galvanized24, label: '24' },
    {
      girthRule: 'computed',
      dieOpeningMm: null,
      tools: [],
      units: inches,
    },
  );
  expect(piece.ok && Math.abs(piece.value.weightKg / 0.45359237 - 11.6) <= 0.05).toBe(true);
});
