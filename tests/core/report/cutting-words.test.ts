import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { cutRuns, type RunCut } from '../../../core/planning/cut-run.ts';
import { cautionsFor } from '../../../core/report/cautions.ts';
import { figuresOfCut, purchasesCsv, stepRows, stepsCsv } from '../../../core/report/cutting-words.ts';
import { joinOf } from '../../../core/planning/join-runs.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aSheet, aShop, NOW } from '../../support/builders.ts';
import { aGroup, aStep } from '../../support/stock-builders.ts';

const planOf = (shop: Shop) => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
const cutsOf = (shop: Shop): RunCut[] => [...cutRuns(shop, planOf(shop))];
/** Flat strips, 150 mm wide and 2540 mm long: eight across a sheet of 1219.2 × 3048 mm. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });

describe('a step in words', () => {
  it('says what is fed, set, cut, given and left', () => {
    const [row] = stepRows([aStep()], 'mm');
    expect(row).toMatchObject({
      feed: 'A, 3 pieces',
      setting: '150 mm',
      cut: 'rip',
      cutsEach: 4,
      gives: 'blank 150 mm × 3048 mm',
      rest: 'remnant',
      lines: '1042/1: 12',
    });
  });

  it('is set to a line beyond the gauge, and says so when nothing is cut', () => {
    const rows = stepRows(
      [aStep({ backGaugeMm: null, axis: 'length' }), aStep({ cutsEach: 0, rest: null })],
      'mm',
    );
    expect(rows.map((row) => row.setting)).toEqual(['to a line at 150 mm', 'no cut']);
    expect(rows.map((row) => row.cut)).toEqual(['crosscut', 'rip']);
    expect(rows[1]?.rest).toBe('back on its stack');
  });
});

describe('figures of a cut', () => {
  it('are shares of the sheets that add up to one, trim with the scrap', () => {
    const rect = { x: 0, y: 0, w: 3048 };
    const groups = [
      aGroup({
        count: 2,
        blanks: [{ ...rect, h: 609.6, lines: ['1042/1'] }],
        offcuts: [
          { ...rect, h: 304.8, kind: 'remnant' },
          { ...rect, h: 152.4, kind: 'scrap' },
          { ...rect, h: 76.2, kind: 'trim' },
          { ...rect, h: 76.2, kind: 'left' },
        ],
      }),
    ];
    expect(figuresOfCut({ groups })).toEqual({
      sheets: 2,
      used: 0.5,
      remnants: 0.25,
      scrap: 0.1875,
      left: 0.0625,
      kept: 2,
    });
  });
});

describe('the CSV files', () => {
  const shop = aShop({
    order: [anOrder()],
    line: [flat({ number: 1, quantity: 10 }), flat({ number: 2, quantity: 6 })],
    queue: [aQueue({ operations: ['1042/1:shear', '1042/2:shear'] })],
  });

  it('have the rows of the screen, as a reader of RFC 4180 sees them', () => {
    const [cut] = cutsOf(shop);
    if (!cut?.plan.ok) throw new Error('not planned');
    const { data, errors } = Papa.parse<string[]>(stepsCsv(cut, 'in').trim());
    expect(errors).toEqual([]);
    const rows = stepRows(cut.plan.value.steps, 'in');
    const { governs, points } = cautionsFor('shear');
    const cautions = data.filter(([step]) => step === 'caution');
    expect(cautions.map(([, text]) => text)).toEqual([governs, ...points]);
    expect(data.slice(1 + cautions.length)).toEqual(rows.map((row) => Object.values(row).map(String)));
    expect(data.every((line) => line.length === data[0]?.length)).toBe(true);
  });

  it('quote what has a comma or a quotation mark in it', () => {
    const odd = { ...shop.material[0]!, name: 'Galvanized, "prefinished"' };
    const [cut] = cutsOf(shop);
    if (!cut) throw new Error('no run');
    const of = { ...shop, material: [odd] };
    const csv = purchasesCsv(of, [
      { sheet: aSheet(), pieces: 3, costCents: 18_600, neededBy: NOW, runs: ['1042/1'] },
    ]);
    const { data } = Papa.parse<string[]>(csv.trim());
    expect(data[1]).toEqual([
      '2026-11-30',
      'galv-24-moss',
      '24 ga Moss green, Galvanized, "prefinished"',
      '48 in',
      '120 in',
      '3',
      '186',
    ]);
  });
});

describe('two runs of one metal', () => {
  /** Four strips each, with another gauge between: two half sheets apart, one sheet together. */
  const shop = aShop({
    order: [anOrder()],
    line: [
      flat({ number: 1, quantity: 4 }),
      flat({ number: 2, quantity: 2, gauge: '26' }),
      flat({ number: 3, quantity: 4 }),
    ],
    queue: [aQueue({ operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] })],
  });
  const join = (of: Shop, at = 0) => {
    const cuts = cutsOf(of);
    return joinOf(of, planOf(of), cuts, cuts[at]!);
  };

  it('save a sheet and two changeovers of gauge when they are joined', () => {
    const joined = join(shop);
    expect(joined?.other.run.id).toBe('1042/3');
    expect(joined?.savedCents).toBe(6200);
    // From 24 to 26 and back, ten minutes each; joined only the first is left.
    expect(joined?.changeoverSeconds).toBe(-600);
    expect(joined?.queues.S1).toEqual(['1042/1:shear', '1042/3:shear', '1042/2:shear']);
  });

  it('have nothing to join when there is no other of the metal', () => {
    expect(join(shop, 1)).toBeNull();
    expect(join(shop, 2)).toBeNull();
  });
});
