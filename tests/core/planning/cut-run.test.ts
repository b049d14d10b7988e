import { describe, expect, it } from 'vitest';
import { replaySteps } from '../../../core/cutting/replay.ts';
import { shearRuns } from '../../../core/planning/runs.ts';
import { cutRuns, type RunCut } from '../../../core/planning/cut-run.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { purchasesOf, stockRows, takenByDay } from '../../../core/planning/stock-use.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, aQueue, aSheet, aShop, anOrder, at, NOW, ZONE } from '../../support/builders.ts';

const planOf = (shop: Shop) => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
const cutsOf = (shop: Shop): RunCut[] => [...cutRuns(shop, planOf(shop))];
const planned = (cut: RunCut | undefined) => {
  if (!cut?.plan.ok) throw new Error('not planned');
  return cut.plan.value;
};

/** Flat strips, 150 mm wide and 2540 mm long, in two metals. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });
const shop = aShop({
  order: [anOrder()],
  line: [
    flat({ number: 1, quantity: 10 }),
    flat({ number: 2, quantity: 6 }),
    flat({ number: 3, quantity: 4, gauge: '26' }),
    flat({ number: 4, quantity: 8 }),
  ],
  queue: [aQueue({ operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear', '1042/4:shear'] })],
});

describe('runs on the shear', () => {
  it('are the stretches of the queue of one material, gauge and colour', () => {
    const runs = shearRuns(shop, planOf(shop));
    expect(runs.map((run) => run.operations.map((o) => o.line.number))).toEqual([[1, 2], [3], [4]]);
    expect(runs.map((run) => run.id)).toEqual(['1042/1', '1042/3', '1042/4']);
  });

  it('are cut to exactly what their lines ask for', () => {
    for (const cut of cutsOf(shop)) {
      const { steps, groups } = planned(cut);
      const { pieces, refusals } = replaySteps(steps, groups, cut.input);
      const blanks = pieces.filter((p) => p.place === 'blank').reduce((sum, p) => sum + p.count, 0);
      expect(refusals).toEqual([]);
      expect(blanks).toBe(cut.run.operations.reduce((sum, o) => sum + o.quantity, 0));
      expect(cut.faults).toEqual([]);
    }
  });

  it('take the sheets that whole strips fit on: eight of 150 mm across 1219 mm', () => {
    const [first, second, third] = cutsOf(shop);
    expect(first?.takings).toEqual([{ sheetId: 'galv-24-moss', pieces: 2, short: 0 }]);
    expect(second?.takings).toEqual([{ sheetId: 'galv-26-moss', pieces: 1, short: 0 }]);
    expect(third?.takings).toEqual([{ sheetId: 'galv-24-moss', pieces: 1, short: 0 }]);
    // Alone 10 and 6 pieces take two sheets and one.
    expect(first?.sheetsAlone).toBe(3);
  });

  it('cut a remnant first where it serves', () => {
    const remnant = aSheet({ id: 'rest', form: 'remnant', widthMm: 620, costCents: 500, onHand: 1 });
    const [first] = cutsOf({
      ...shop,
      sheet: [...shop.sheet, remnant],
      line: [flat({ number: 1, quantity: 4 })],
    });
    expect(first?.takings).toEqual([{ sheetId: 'rest', pieces: 1, short: 0 }]);
  });

  it('take a blank that is its sheet within half a millimetre for cut already', () => {
    // Blanks of 150 × 2540 mm from sheets 0.4 mm longer: such a sliver cannot be sheared off.
    const sheet = aSheet({ lengthMm: 2540.4, onHand: 40 });
    const [first] = cutsOf({ ...shop, sheet: [sheet], line: [flat({ number: 1, quantity: 16 })] });
    const { steps, groups } = planned(first);
    expect(groups.map(({ count }) => count)).toEqual([2]);
    expect(steps.every(({ axis }) => axis === 'width')).toBe(true);
    expect(first?.faults).toEqual([]);
  });

  it('take from a coil only the length they need', () => {
    const coil = aSheet({ form: 'coil', lengthMm: 1000, costCents: 2000, onHand: 30 });
    const [first] = cutsOf({ ...shop, sheet: [coil], line: [flat({ number: 1, quantity: 16 })] });
    expect(planned(first).groups.reduce((mm, g) => mm + g.count * g.lengthMm, 0)).toBe(5080);
    expect(first?.takings).toEqual([{ sheetId: coil.id, pieces: 6, short: 0 }]);
  });

  it('that cannot be cut say which line and which limit', () => {
    const far = shop.machine.map((m) => (m.id === 'S1' ? { ...m, backGaugeMm: { min: 160, max: 1000 } } : m));
    const [first] = cutsOf({ ...shop, machine: far, line: [flat({ number: 1, quantity: 4 })] });
    expect(first?.plan).toMatchObject({ ok: false, issues: [{ subject: 'line 1042/1', field: 'girth' }] });
  });
});

it('a line that no sheet yields once it is trimmed is not planned, so no run is promised that cannot be cut', () => {
  const narrow = shop.sheet.map((s) => ({ ...s, widthMm: 160, trimMm: 20 }));
  const { unplannable } = planOf({ ...shop, sheet: narrow, line: [flat({ number: 1, quantity: 4 })] });
  expect(unplannable.map(({ message }) => message)).toEqual([
    'Line 1042/1: A blank of girth 5.906 in, length 100 in, does not fit across a sheet 5.512 in wide, 6.299 in less trim.',
  ]);
});

describe('stock against the plan', () => {
  const scarce = {
    ...shop,
    sheet: shop.sheet.map((s) => ({ ...s, onHand: s.id === 'galv-24-moss' ? 2 : 40 })),
  };

  it('is reserved in plan order, so that the last run goes short', () => {
    const rows = stockRows(scarce, cutsOf(scarce));
    const moss = rows.find((r) => r.sheet.id === 'galv-24-moss');
    const runs = shearRuns(scarce, planOf(scarce));
    expect(moss).toMatchObject({
      left: -1,
      shortFrom: runs[2]?.start,
      reserved: [
        { runId: '1042/1', pieces: 2, short: 0 },
        { runId: '1042/4', pieces: 1, short: 1 },
      ],
    });
  });

  it('goes down day by day to what is missing', () => {
    const row = stockRows(scarce, cutsOf(scarce)).find((r) => r.sheet.id === 'galv-24-moss');
    if (!row) throw new Error('no such stock');
    const monday = at('2026-11-30', '00:00');
    expect(takenByDay(row, ZONE)).toEqual([
      { day: monday, came: 0, pieces: 3, left: -1, runs: ['1042/1', '1042/4'] },
    ]);
    const tuesday = row.reserved.map((one, n) => (n === 1 ? { ...one, at: at('2026-12-01', '00:00') } : one));
    expect(takenByDay({ ...row, reserved: tuesday }, ZONE)).toEqual([
      { day: monday, came: 0, pieces: 2, left: 0, runs: ['1042/1'] },
      { day: at('2026-12-01', '00:00'), came: 0, pieces: 1, left: -1, runs: ['1042/4'] },
    ]);
  });

  it('is bought by the day it is needed', () => {
    const cuts = cutsOf(scarce);
    expect(purchasesOf(stockRows(scarce, cuts))).toMatchObject([
      { pieces: 1, costCents: 6200, neededBy: cuts[2]?.run.start, runs: ['1042/4'] },
    ]);
  });

  it('reaches when enough was received', () => {
    expect(purchasesOf(stockRows(shop, cutsOf(shop)))).toEqual([]);
  });
});
