import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadFor, spreadOf, timedOf, type Timed } from '../../../core/learn/spread.ts';
import { Rng } from '../../../core/rng.ts';
import { sentence } from '../../../core/result.ts';
import { demoShop, monday } from '../demo-data/demo-shop.ts';
import { normal } from './invented.ts';

const must = (timed: readonly Timed[]) => {
  const spread = spreadOf(timed);
  if (!spread.ok) throw new Error(sentence(spread.issues));
  return spread.value;
};
const aTime = (ratio: number, day = '1', machineId = 'B1'): Timed => ({
  machineId,
  day,
  estimatedSeconds: 1000,
  actualSeconds: 1000 * ratio,
});
/** Days of eight operations on one machine, with a scatter of days and one of operations. */
const daysOf = (count: number, daySpread: number, scatter: number, rng: Rng): Timed[] =>
  Array.from({ length: count }, (_, d) => {
    const day = Math.exp(daySpread * normal(rng));
    return Array.from({ length: 8 }, () => aTime(1.1 * day * Math.exp(scatter * normal(rng)), `${d}`));
  }).flat();
const logSd = (factors: readonly number[]): number => {
  const logs = factors.map(Math.log);
  const mean = logs.reduce((sum, l) => sum + l, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, l) => sum + (l - mean) ** 2, 0) / logs.length);
};

describe('the spread of a machine', () => {
  it('keeps every ratio of actual to estimate, ascending, and their middle', () => {
    const ratios = Array.from({ length: 31 }, (_, k) => 0.7 + 0.02 * ((k * 7) % 31));
    const own = must(ratios.map((r) => aTime(r))).machines['B1']!;
    expect(own.observations).toBe(31);
    own.ratios.forEach((ratio, k) => expect(ratio).toBeCloseTo(0.7 + 0.02 * k, 9));
    expect(own.median).toBeCloseTo(1, 9);
    expect(own.days).toEqual([1]);
  });

  it('is the shop’s where the machine has few operations', () => {
    const many = Array.from({ length: 30 }, (_, k) => aTime(1 + k / 100));
    const few = Array.from({ length: 29 }, (_, k) => aTime(2 + k / 100, '1', 'B2'));
    const spread = must([...many, ...few]);
    expect(Object.keys(spread.machines)).toEqual(['B1']);
    expect(spreadFor(spread, 'B1').observations).toBe(30);
    expect(spreadFor(spread, 'B2')).toBe(spread.pooled);
    expect(spread.pooled.observations).toBe(59);
  });

  it('splits good and bad days from the operations’ own scatter where records show them', () => {
    const { ratios, days } = must(daysOf(200, 0.2, 0.25, new Rng(1))).machines['B1']!;
    expect(logSd(days)).toBeCloseTo(0.2, 1);
    expect(logSd(ratios)).toBeCloseTo(0.25, 1);
    expect(days).toHaveLength(200);
  });

  it('sees days in hardly any shop that has none (F at its 1 % point)', () => {
    const seen = Array.from(
      { length: 100 },
      (_, k) => must(daysOf(60, 0, 0.25, new Rng(k))).machines['B1']!.days.length > 1,
    );
    expect(seen.filter(Boolean).length).toBeLessThan(6);
  });

  it('is in doubt by the standard error of its mean', () => {
    // 50 times 0.9 and 50 times 1.1: standard deviation 0.1, of the mean 0.01.
    const own = must(Array.from({ length: 100 }, (_, k) => aTime(k % 2 === 0 ? 0.9 : 1.1))).machines['B1']!;
    expect(own.standardError).toBeCloseTo(0.01, 3);
  });

  it('does not depend on the order of the records', () => {
    const timed = daysOf(8, 0.3, 0.2, new Rng(5));
    const first = must(timed);
    fc.assert(
      fc.property(fc.shuffledSubarray(timed, { minLength: timed.length }), (shuffled) => {
        expect(must(shuffled)).toEqual(first);
      }),
      { numRuns: 20 },
    );
  });

  it('leaves out what has no time or no estimate, and is refused when fewer than ten are left', () => {
    const nine = Array.from({ length: 9 }, () => aTime(1));
    const nothing = [0, NaN, -1].map((ratio) => aTime(ratio));
    const spread = spreadOf([...nine, ...nothing, { ...aTime(1), estimatedSeconds: 0 }]);
    expect(spread.ok ? 'made' : sentence(spread.issues)).toContain('there are 9.');
    expect(must([...nine, aTime(1), ...nothing]).pooled.observations).toBe(10);
  });
});

describe('operations set against their estimates', () => {
  it('carry the shop’s date and the estimate of the machine’s present standards; gone machines are left out', () => {
    const shop = demoShop();
    const late = { id: '1/1:brake', machineId: 'B1', at: monday, counts: { flip: 10 }, actualSeconds: 90 };
    const timed = timedOf(shop, [late, { ...late, machineId: 'gone' }]);
    expect(timed).toHaveLength(1);
    // Ten flips of 12 s, as the long brake has it, and an allowance of 15 %.
    expect(timed[0]).toMatchObject({ machineId: 'B1', day: '2026-11-23', actualSeconds: 90 });
    expect(timed[0]!.estimatedSeconds).toBeCloseTo(138, 9);
  });
});
