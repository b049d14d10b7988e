import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lotOf, lotKey, NO_LOT, type Lot } from '../../../core/material/lot.ts';
import { cutRuns, type RunCut } from '../../../core/planning/cut-run.ts';
import { lineLotWords } from '../../../core/planning/line-lot.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { purchasesOf, stockRows } from '../../../core/planning/stock-use.ts';
import { lotWarnings } from '../../../core/report/lot-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aLine, aQueue, aSheet, aShop, anOrder, NOW, someSettings } from '../../support/builders.ts';
import { aCutList, aGroup, aStep } from '../../support/stock-builders.ts';

const ALL = { lot: true, paint: true, film: true };

const planOf = (shop: Shop) => {
  const plan = viewPlan(shop, NOW);
  if (!plan.ok) throw new Error(plan.issues[0]?.message);
  return plan.value;
};
const cutsOf = (shop: Shop): RunCut[] => [...cutRuns(shop, planOf(shop))];
const lotsOf = (shop: Shop): Record<string, string> =>
  Object.fromEntries(
    [...planOf(shop).operations.values()].map(({ line, lot }) => [line.id, lineLotWords(lot)]),
  );

/** Flat strips, 150 mm wide and 2540 mm long: eight a sheet. */
const flat = (own: Parameters<typeof aLine>[0]) => aLine({ partId: 'flat-strip', ...own });
/** The size as it is bought, and so many sheets of lots A, B … */
const sheets = (...counts: number[]) => [
  aSheet({ onHand: 0 }),
  ...counts.map((onHand, i) => aSheet({ id: `moss-${'ABCD'[i]}`, lot: 'ABCD'[i]!, onHand })),
];
const shopOf = (own: Partial<Shop>): Shop =>
  aShop({
    settings: someSettings({ stockKnows: ALL }),
    order: [anOrder(), anOrder({ id: '1043' })],
    queue: [aQueue({ operations: (own.line ?? []).map(({ id }) => `${id}:shear`) })],
    ...own,
  });

describe('in a shop that tells lots apart', () => {
  it('a line is cut from one lot that has enough for all of it, and a run ends where the lot does', () => {
    const shop = shopOf({
      line: [flat({ number: 1, quantity: 40 }), flat({ orderId: '1043', number: 1, quantity: 20 })],
      sheet: sheets(5, 3),
    });
    expect(lotsOf(shop)).toEqual({ '1042/1': 'lot A', '1043/1': 'lot B' });
    expect(cutsOf(shop).map(({ run, takings }) => [run.id, takings])).toEqual([
      ['1042/1', [{ sheetId: 'moss-A', pieces: 5, short: 0 }]],
      ['1043/1', [{ sheetId: 'moss-B', pieces: 3, short: 0 }]],
    ]);
  });

  it('neighbours share the sheets of one lot as far as it reaches', () => {
    const shop = shopOf({
      line: [flat({ number: 1, quantity: 4 }), flat({ orderId: '1043', number: 1, quantity: 4 })],
      sheet: sheets(1),
    });
    expect(cutsOf(shop).map(({ run, takings }) => [run.operations.length, takings])).toEqual([
      [2, [{ sheetId: 'moss-A', pieces: 1, short: 0 }]],
    ]);
  });

  it('the lines of an order come from one lot where one has enough for them', () => {
    const line = [flat({ number: 1, quantity: 16 }), flat({ number: 2, quantity: 24 })];
    expect(lotsOf(shopOf({ line, sheet: sheets(3, 9) }))).toEqual({ '1042/1': 'lot B', '1042/2': 'lot B' });
    expect(lotsOf(shopOf({ line, sheet: sheets(3, 2) }))).toEqual({ '1042/1': 'lot B', '1042/2': 'lot A' });
  });

  it('a line that names its lot, paint system or film is cut from no other', () => {
    const sheet = [...sheets(9, 9), aSheet({ id: 'pvdf', paint: 'pvdf', film: 'with', lot: 'P' })];
    const one = (own: object) => lotsOf(shopOf({ line: [flat({ number: 1, quantity: 8, ...own })], sheet }));
    expect(one({ lot: 'B' })).toEqual({ '1042/1': 'lot B' });
    expect(one({ paint: 'pvdf' })).toEqual({ '1042/1': 'lot P, PVDF, with film' });
    expect(one({ film: 'with' })).toEqual({ '1042/1': 'lot P, PVDF, with film' });
    expect(one({ paint: 'polyester' })).toEqual({ '1042/1': 'one lot to be bought: polyester' });
  });

  it('a line that no lot suffices for is bought as one lot, and told what there is', () => {
    const shop = shopOf({ line: [flat({ number: 1, quantity: 104 })], sheet: sheets(9, 6) });
    const [cut] = cutsOf(shop);
    expect(lotWarnings(cut!.run)).toMatchObject([
      expect.stringMatching(/^Line 1042\/1 needs 13 sheets of one lot; on hand are: lot A 9; lot B 6\./),
    ]);
    expect(cut!.takings).toEqual([{ sheetId: 'galv-24-moss', pieces: 13, short: 13 }]);
    const rows = stockRows(shop, [cut!]);
    expect(rows.map(({ left, short }) => [left, short])).toEqual([
      [-13, 13],
      [9, 0],
      [6, 0],
    ]);
    expect(purchasesOf(rows).map(({ sheet, pieces, runs }) => [sheet.id, pieces, runs])).toEqual([
      ['galv-24-moss', 13, ['1042/1 (13 of one lot)']],
    ]);
  });

  it('of several lines that are bought together each is told what it needs', () => {
    const line = [flat({ number: 1, quantity: 104 }), flat({ orderId: '1043', number: 1, quantity: 80 })];
    const [cut, ...others] = cutsOf(shopOf({ line, sheet: sheets(9, 6) }));
    expect(others).toEqual([]);
    expect(lotWarnings(cut!.run).map((text) => text.slice(0, 28))).toEqual([
      'Line 1042/1 needs 13 sheets ',
      'Line 1043/1 needs 10 sheets ',
    ]);
  });

  it('a run that finds less of its lot than was left for it is bought, all of it, as another', () => {
    // The first line needs more than the metre on the coil; bought as the same coil it begins with that metre.
    const line = [
      flat({ number: 1, quantity: 1, paint: 'pvdf', mixLots: true }),
      flat({ number: 2, quantity: 1, lengthMm: 900 }),
    ];
    const coil = { form: 'coil', lengthMm: 1000, widthMm: 600, onHand: 1 } as const;
    const sheet = [aSheet({ onHand: 0 }), aSheet({ id: 'coil', paint: 'pvdf', ...coil })];
    const [, cut] = cutsOf(shopOf({ line, sheet }));
    expect(cut!.run.lot).toMatchObject({ from: 'purchase', lot: NO_LOT });
    expect(cut!.takings.every(({ pieces, short }) => short === pieces)).toBe(true);
    expect(lotWarnings(cut!.run)).toEqual([
      expect.stringMatching(/^Line 1042\/2 needs 1 sheet of one lot; on hand are: PVDF 0\./),
    ]);
  });

  it('sheets without a lot on record stay on hand while a lot is bought', () => {
    const shop = shopOf({ line: [flat({ number: 1, quantity: 104 })], sheet: [aSheet({ onHand: 9 })] });
    const [row] = stockRows(shop, cutsOf(shop));
    expect([row!.left, row!.short]).toEqual([9, 13]);
  });

  it('a line that may mix lots is cut from several, once none suffices', () => {
    const line = [flat({ number: 1, quantity: 104, mixLots: true })];
    const [cut] = cutsOf(shopOf({ line, sheet: sheets(9, 6) }));
    expect(cut!.run.lot?.from).toBe('mixed');
    expect(cut!.takings.map(({ short }) => short)).toEqual([0, 0]);
    expect(lotsOf(shopOf({ line, sheet: sheets(13, 6) }))).toEqual({ '1042/1': 'lot A' });
    const named = [flat({ number: 1, quantity: 104, mixLots: true, lot: 'A' })];
    expect(
      cutsOf(shopOf({ line: named, sheet: sheets(9, 6) }))[0]!.takings.map(({ short }) => short),
    ).toEqual([0, 0]);
  });

  it('a line whose sheets were issued in part stays with their lot, and so does its order', () => {
    const group = aGroup({ count: 1, stockId: 'moss-B' });
    const step = aStep({ fed: 1, lines: [{ line: '1042/1', pieces: 8 }] });
    const shop = shopOf({
      line: [flat({ number: 1, quantity: 16 }), flat({ number: 2, quantity: 8 })],
      sheet: sheets(2, 7),
      cutList: [aCutList({ id: '1042/1 9', taken: NOW, groups: [group], steps: [step] })],
    });
    expect(lotsOf(shop)).toEqual({ '1042/1': 'lot B', '1042/2': 'lot B' });
    const few = { ...shop, sheet: sheets(2, 0) };
    expect(lotsOf(few)['1042/1']).toBe('one lot to be bought: lot B');
  });

  it('what it does not keep tells no sheets apart', () => {
    const shop = shopOf({
      settings: someSettings({ stockKnows: { lot: false, paint: true, film: false } }),
      line: [flat({ number: 1, quantity: 104 })],
      sheet: sheets(9, 6),
    });
    expect(lotsOf(shop)).toEqual({ '1042/1': 'no lot on record' });
    expect(cutsOf(shop)[0]!.takings.map(({ short }) => short)).toEqual([0, 0]);
  });
});

describe('in a shop that tells no lots apart', () => {
  it('lots on its sheets change nothing', () => {
    const line = [flat({ number: 1, quantity: 104 }), flat({ orderId: '1043', number: 1, lot: 'B' })];
    const off = shopOf({ settings: someSettings(), line, sheet: sheets(9, 7) });
    const [cut, ...others] = cutsOf(off);
    expect(others).toEqual([]);
    expect(cut!.run.lot).toBeNull();
    expect(cut!.takings.every(({ short }) => short === 0)).toBe(true);
  });
});

describe('in any shop that tells lots apart', () => {
  const paint = fc.constantFrom(null, 'pvdf' as const, 'polyester' as const);
  const stock = fc.array(
    fc.record({
      lot: fc.constantFrom('', 'A', 'B', 'C'),
      paint,
      form: fc.constantFrom('sheet' as const, 'sheet' as const, 'remnant' as const, 'coil' as const),
      onHand: fc.integer({ min: 0, max: 6 }),
      widthMm: fc.constantFrom(600, 1219.2),
    }),
    { minLength: 1, maxLength: 7 },
  );
  const line = fc.record({
    orderId: fc.constantFrom('1042', '1043'),
    quantity: fc.integer({ min: 1, max: 40 }),
    lengthMm: fc.constantFrom(900, 1500, 2540),
    gauge: fc.constantFrom('24', '24', '24', '26'),
    mixLots: fc.boolean(),
    lot: fc.constantFrom('', '', '', 'A'),
    paint: fc.constantFrom(null, null, 'pvdf' as const),
  });
  const anyShop = fc
    .record({
      knows: fc.constantFrom(ALL, { ...ALL, paint: false }, { ...ALL, lot: false }),
      stock,
      lines: fc.array(line, { minLength: 1, maxLength: 6 }),
    })
    .map(({ knows, stock: rows, lines }) =>
      shopOf({
        settings: someSettings({ stockKnows: knows }),
        line: lines.map((own, i) => flat({ ...own, number: i + 1, id: `${own.orderId}/${i + 1}` })),
        sheet: [
          aSheet({ onHand: 0 }),
          aSheet({ id: 'galv-26-moss', gauge: '26', onHand: 2 }),
          ...rows.map((own, i) =>
            aSheet({ ...own, id: `s${i}`, ...(own.form === 'coil' ? { lengthMm: 1000 } : {}) }),
          ),
        ],
      }),
    );

  it('the pieces of a line come from one lot unless it may mix, and no lot gives more than it has', () => {
    let several = 0;
    fc.assert(
      fc.property(anyShop, (shop) => {
        const knows = shop.settings.stockKnows!;
        const lotOfSheet = (id: string): Lot => lotOf(knows, shop.sheet.find((s) => s.id === id) ?? NO_LOT);
        const used = new Map<string, number>();
        const lotsOfLine = new Map<string, Set<string>>();
        for (const { run, plan, takings } of cutsOf(shop)) {
          if (!plan.ok) continue;
          const bought = run.lot?.from === 'purchase';
          const lots = new Set(plan.value.groups.map(({ stockId }) => lotKey(lotOfSheet(stockId))));
          for (const { line: one } of run.operations) {
            // A bought lot is another than any that lies there under the same size.
            const known = lotsOfLine.get(one.id) ?? new Set<string>();
            for (const key of bought ? ['bought'] : lots) known.add(key);
            lotsOfLine.set(one.id, known);
            if (run.lot?.from === 'mixed') expect(one.mixLots).toBe(true);
            else expect(known.size).toBe(1);
            if (lots.size > 1) several += 1;
          }
          for (const { sheetId, pieces, short } of takings) {
            if (bought) expect(short).toBe(pieces);
            // More of a lot cannot be had: what is short of one is bought as another, all of it.
            if (run.lot?.from === 'stock') expect(short).toBe(0);
            used.set(sheetId, (used.get(sheetId) ?? 0) + pieces - short);
          }
        }
        for (const [id, pieces] of used)
          expect(pieces).toBeLessThanOrEqual(shop.sheet.find((s) => s.id === id)!.onHand);
      }),
      { numRuns: 60, seed: 12 },
    );
    expect(several).toBeGreaterThan(0);
  });
});
