import { describe, expect, it } from 'vitest';
import { BIAS } from '../../../demo-data/make/history.ts';
import { secondsOf } from '../../../core/learn/counts.ts';
import { lateChange } from '../../../core/learn/evidence.ts';
import { changeoversOf, observationsOf } from '../../../core/learn/happened.ts';
import { learnStandards, standardsWith } from '../../../core/learn/learn-standards.ts';
import { median } from '../../../core/learn/robust.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import { aBrake, aPart, aRecord, aShear, aShop } from '../../support/builders.ts';
import { aBench, aFurtherStep } from '../../support/further-step-builders.ts';
import { demoShop, hoursOf, monday, openSeconds } from '../demo-data/demo-shop.ts';

const shop = demoShop();
const { observations, left } = observationsOf(shop, shop.record);

describe('finished operations of the demo shop', () => {
  it('can all be learned from, with the open seconds between their start and end', () => {
    expect(left).toEqual([]);
    expect(observations).toHaveLength(shop.record.filter((r) => r.end !== null).length);
    const hours = hoursOf(shop, 'B1', monday - 200 * 86_400, monday);
    const records = new Map(shop.record.map((r) => [r.id, r]));
    for (const { id, actualSeconds } of observations.filter((o) => o.machineId === 'B1').slice(0, 50)) {
      const { start, end } = records.get(id)!;
      expect(actualSeconds).toBe(openSeconds(hours, start, end!));
    }
  });

  it('count what their written estimates were made of', () => {
    const written = new Map(shop.record.map((r) => [r.id, r.estimatedSeconds]));
    const ratios = observations.map((o) => {
      const machine = shop.machine.find((m) => m.id === o.machineId)!;
      return secondsOf(machine, o.counts) / written.get(o.id)!;
    });
    expect(median(ratios)).toBeGreaterThan(0.95);
    expect(median(ratios)).toBeLessThan(1.05);
  });

  it.each(shop.machine.map((m) => m.id))(
    'give back the bias that %s was invented with, and foretell later work better',
    (id) => {
      const machine = shop.machine.find((m) => m.id === id)!;
      const learned = learnStandards(machine, observations);
      if (!learned.ok) throw new Error('the demo shop has records');
      const changed = { ...machine, standards: standardsWith(machine, learned.value) };
      const own = observations.filter((o) => o.machineId === id);
      const growth = own.map((o) => secondsOf(changed, o.counts) / secondsOf(machine, o.counts));
      expect(Math.abs(median(growth) / BIAS[id]! - 1)).toBeLessThan(0.05);
      const change = lateChange(machine, observations);
      expect(change.ok && change.value.after < change.value.before).toBe(true);
    },
  );

  it('tell of a bench by its own two standards; what is away, or timed by its part, tells of none', () => {
    const steps = (own: Parameters<typeof aFurtherStep>[1]) => ({
      part: [aPart({ steps: [aFurtherStep('pack', own), aFurtherStep('outside')] })],
      machine: [aBrake(), aShear(), aBench(), aBench({ id: 'O1', stage: 'outside' })],
    });
    const done = [
      aRecord({ id: '1042/1:pack', machineId: 'P1', good: 20, scrapped: 0 }),
      aRecord({ id: '1042/1:outside', machineId: 'O1', good: 20, scrapped: 0 }),
    ];
    const byStandards = observationsOf(aShop(steps({})), done);
    expect(byStandards.left).toEqual([]);
    expect(byStandards.observations).toMatchObject([
      { id: '1042/1:pack', counts: { perLine: 1, perPiece: 20 }, actualSeconds: 3600 },
    ]);
    expect(observationsOf(aShop(steps({ secondsPerPiece: 30 })), done)).toEqual({
      observations: [],
      left: [],
    });
  });

  it('are left by name when their part or machine is gone, and do not count while under way', () => {
    const [first, second] = shop.record as readonly OperationRecord[] as [OperationRecord, OperationRecord];
    const gone = { ...first, partId: 'gone' };
    expect(observationsOf(shop, [gone, { ...second, id: '9/9:shear', machineId: 'gone' }])).toEqual({
      observations: [],
      left: [first.id, '9/9:shear'],
    });
    expect(observationsOf(shop, [{ ...first, end: null }])).toEqual({ observations: [], left: [] });
    expect(observationsOf(shop, [])).toEqual({ observations: [], left: [] });
  });
});

describe('changeovers as records show them', () => {
  const at = monday - 7 * 86_400 + 3600;
  const record = (
    id: string,
    machineId: string,
    start: number,
    end: number,
    changes = {},
  ): OperationRecord => ({
    ...shop.record[0]!,
    id,
    machineId,
    partId: 'sill',
    materialId: 'galv',
    gauge: '24',
    colourId: 'slate',
    start: at + start,
    end: at + end,
    ...changes,
  });
  const seen = (...records: OperationRecord[]) =>
    changeoversOf(shop, records).map(({ machineId, kinds, seconds }) => ({ machineId, kinds, seconds }));

  it('are the gap before an operation that differs, with what changed', () => {
    const before = record('1/1:shear', 'S1', 0, 600);
    const next = record('1/2:shear', 'S1', 1000, 1600, { colourId: 'moss', gauge: '26' });
    expect(seen(next, before)).toEqual([{ machineId: 'S1', kinds: ['gauge', 'colour'], seconds: 400 }]);
    expect(seen(before, { ...next, colourId: 'slate', gauge: '24' })).toEqual([]);
  });

  it('are not seen where the brake may have waited for the shear, or the night lay between', () => {
    const bends = [
      record('1/1:brake', 'B1', 0, 600),
      record('1/2:brake', 'B1', 900, 1600, { partId: 'head' }),
    ] as const;
    // The sill is hemmed, the head flashing is not: its hemming tools come out too.
    const gap = [{ machineId: 'B1', kinds: ['profile', 'hemming'], seconds: 300 }];
    const cut = (end: number) => record('1/2:shear', 'S1', -1000, end);
    expect(seen(...bends, cut(500))).toEqual(gap);
    expect(seen(...bends, cut(800))).toEqual([]);
    const tomorrow = { ...bends[1], start: bends[1].start + 86_400, end: bends[1].end! + 86_400 };
    expect(seen(bends[0], tomorrow, cut(500))).toEqual([]);
  });

  it('are told of work that was set aside by what stood on the machine last', () => {
    const long = record('1/1:shear', 'S1', 0, 3000);
    const between = record('1/2:shear', 'S1', 600, 1200, { colourId: 'moss' });
    const last = record('1/3:shear', 'S1', 3300, 3600, { colourId: 'bone' });
    // Only the gap after both is a changeover: from slate to bone.
    expect(seen(long, between, last)).toEqual([{ machineId: 'S1', kinds: ['colour'], seconds: 300 }]);
  });

  it('leave out pairs that have a figure of their own', () => {
    const pair = [
      record('1/1:brake', 'B2', 0, 600),
      record('1/2:brake', 'B2', 900, 1600, { partId: 'head' }),
    ];
    expect(shop.machine.find((m) => m.id === 'B2')!.changeover.exceptions).toContainEqual(
      expect.objectContaining({ from: 'sill', to: 'head' }),
    );
    expect(seen(...pair)).toEqual([]);
  });
});
