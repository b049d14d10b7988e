import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { figuresOfList } from '../../../core/cutting/figures.ts';
import { replaySteps } from '../../../core/cutting/replay.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import { NO_WORK, settingsOf } from '../../../core/cutting/work.ts';
import { cutRuns, type RunCut } from '../../../core/planning/cut-run.ts';
import { cautionsFor } from '../../../core/report/cautions.ts';
import {
  figuresOfCut,
  foundWords,
  leastMetalWords,
  purchasesCsv,
  remnantWords,
  shearWords,
  stepRows,
  stepsCsv,
} from '../../../core/report/cutting-words.ts';
import { joinOf } from '../../../core/planning/join-runs.ts';
import { issue } from '../../../core/result.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { metalName } from '../../../core/shop/metal-name.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, anOrder, aQueue, aSheet, aShop, NOW } from '../../support/builders.ts';
import { aGroup, aStep } from '../../support/stock-builders.ts';
import { inches, metric, plainMoney } from '../../support/writing.ts';

const planOf = (shop: Shop) => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
const cutsOf = (shop: Shop): RunCut[] => [...cutRuns(shop, planOf(shop))];
/** Flat strips, 150 mm wide and 2540 mm long: eight across a sheet of 1219.2 × 3048 mm. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });

const shear = { lengthMm: 3100, backGaugeMm: { min: 5, max: 1000 }, minStripMm: 40 };
const rowsOf = (steps: readonly CutStep[]) =>
  stepRows({ steps, groups: [aGroup({ count: 3 })] }, { shear, units: metric });

describe('a step in words', () => {
  it('says what is fed, set, cut, given and left', () => {
    const [row] = rowsOf([aStep()]);
    expect(row).toMatchObject({
      feed: 'A, 3 pieces',
      setting: '150 mm',
      cut: 'rip',
      cutsEach: 4,
      drop: 'blank 150 mm × 3048 mm',
      held: '619.2 mm, remnant',
      lines: '1042/1: 12',
    });
  });

  it('is set to a line beyond the gauge, and says so when nothing is cut', () => {
    const rows = rowsOf([
      aStep({ backGaugeMm: null, axis: 'length' }),
      aStep({ stack: 'B', cutsEach: 0, rest: null }),
    ]);
    expect(rows.map((row) => row.setting)).toEqual(['to a line at 150 mm', 'no cut']);
    expect(rows.map((row) => row.cut)).toEqual(['crosscut', 'rip']);
    expect(rows[1]).toMatchObject({ drop: '', held: 'back on its stack' });
  });

  it('tells the loose drop behind the blade from what the hold-downs grip in front of it', () => {
    // 1219.2 less three strips of 300 leaves 319.2 in the hold-downs, and less one more strip 19.2: under their 40.
    const three = aStep({ sizeMm: 300, backGaugeMm: 300, cutsEach: 3, rest: null });
    const held = rowsOf([three, { ...three, number: 2, cutsEach: 1 }]).map((row) => row.held);
    expect(held).toEqual(['319.2 mm, back on its stack', 'back on its stack']);
    const { refusals } = replaySteps([{ ...three, cutsEach: 4 }], [aGroup()], { shear, units: metric });
    expect(refusals.map(({ message }) => message)).toEqual([
      'Step 1, 300 mm off a piece 319.2 mm wide and 3048 mm long, leaves 19.2 mm, less than the 40 mm the hold-downs grip.',
    ]);
    expect(shearWords({ shear, units: metric })).toBe(
      'the hold-downs grip 40 mm and more in front of the blade; what falls behind it, 5 mm to 1000 mm by the gauge, lies loose',
    );
  });
});

const keep = { widthMm: 150, lengthMm: 600, most: 10, worth: 0.25 };

describe('figures of a cut', () => {
  it('count only as many remnants of a size as the shop keeps; the others are scrap, and the list says so', () => {
    // 40 sheets leave a strip of 6 in × 120 in each: ten are kept, thirty are scrap.
    const strip = { x: 0, y: 0, w: 3048, h: 152.4, kind: 'remnant' } as const;
    const groups = [aGroup({ count: 40, offcuts: [strip] })];
    const { areas, remnants } = figuresOfList(groups, [], { keep, work: NO_WORK, stock: [] });
    expect(figuresOfCut({ groups, areas, remnants })).toMatchObject({
      kept: 10,
      remnants: (10 / 40) * 0.125,
    });
    expect(figuresOfCut({ groups, areas, remnants }).scrap).toBeCloseTo((30 / 40) * 0.125, 12);
    expect(remnantWords(remnants, inches)).toBe(
      'Of the remnants keep 10 of the 40 of 6 in × 120 in; the others are scrap, for the shop keeps no more of a size.',
    );
  });

  it('say what a list of less metal would save, and what work it asks for that', () => {
    const [cut] = cutsOf(
      aShop({
        order: [anOrder()],
        line: [flat({ quantity: 10 })],
        queue: [aQueue({ operations: ['1042/1:shear'] })],
      }),
    );
    if (!cut?.plan.ok) throw new Error('not planned');
    const plan = cut.plan.value;
    const sheets = plan.groups.map((group, at) => ({ ...group, count: group.count - (at === 0 ? 1 : 0) }));
    const least = { sheets, workCents: plan.workCents + 9000, remnantCents: plan.remnantCents };
    const settings = 9 + settingsOf(plan.steps);
    expect(leastMetalWords({ ...plan, least: { ...least, settings, lineCuts: 89 } }, plainMoney)).toBe(
      'Another list saves 1 sheet, 62.00 of stock, and costs 9 settings and 89 cuts to a line more: 28.00 dearer in all by this shop’s times and weights.',
    );
    expect(leastMetalWords(plan, plainMoney)).toBeNull();
    // The same, found by a search that was asked for.
    const dearer = { ...plan, workCents: plan.workCents + 2800 };
    expect(foundWords(dearer, plan, plainMoney, true)).toBe('Found: 28.00 cheaper in all.');
    expect(foundWords(plan, plan, plainMoney, false)).toBe('Nothing better was found.');
    const [first, ...others] = plan.groups;
    const more = [{ ...first!, count: first!.count + 1 }, ...others];
    expect(foundWords({ ...dearer, groups: more }, plan, plainMoney, false)).toBe(
      'Found: 1 sheet fewer, 28.00 cheaper in all.',
    );
  });

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
    const { areas, remnants } = figuresOfList(groups, [], { keep, work: NO_WORK, stock: [] });
    expect(figuresOfCut({ groups, areas, remnants })).toEqual({
      sheets: 2,
      used: 0.5,
      remnants: 0.25,
      scrap: expect.closeTo(0.1875, 12) as number,
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
    const { data, errors } = Papa.parse<string[]>(stepsCsv(cut, shop).trim());
    expect(errors).toEqual([]);
    const rows = stepRows(cut.plan.value, cut.input);
    const { governs, points } = cautionsFor('shear');
    const cautions = data.filter(([step]) => step === 'caution');
    expect(cautions.map(([, text]) => text)).toEqual([governs, ...points]);
    const [note] = data.filter(([kind]) => kind === 'note');
    expect(note?.[1]).toBe(
      'Shear: the hold-downs grip 0.787 in and more in front of the blade; what falls behind it, 0.394 in to 39.37 in by the gauge, lies loose.',
    );
    const steps = data.slice(2 + cautions.length);
    // 150 mm is 5.906 in: a decimal, not the nearest fraction.
    const girth = steps.find((row) => row[8] === 'rip')!;
    expect(girth.slice(0, 3)).toEqual(['1042/1', metalName(shop, cut.run), 'A']);
    expect(steps.map((row) => row[6])).toContain('5.906');
    expect(data[0]).toContain('cut off in');
    expect(steps.map((row) => row[3])).toEqual(rows.map(({ number }) => String(number)));
    expect(data.every((line) => line.length === data[0]?.length)).toBe(true);
  });

  it('warn above the steps when the list does not give what the run asks', () => {
    const [cut] = cutsOf(shop);
    if (!cut) throw new Error('not planned');
    const missing = issue(
      'line 1042/1',
      'quantity',
      '2 blanks are missing for line 1042/1.',
      'Add cuts for them.',
    );
    const { data } = Papa.parse<string[]>(stepsCsv({ ...cut, faults: [missing] }, shop).trim());
    expect(data.slice(1, 3).map(([kind, text]) => [kind, text])).toEqual([
      ['warning', '2 blanks are missing for line 1042/1.'],
      ['warning', 'Cut as it is, this list does not give what the run asks.'],
    ]);
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
