import { describe, expect, it } from 'vitest';
import { typedChances } from '../../../core/report/typed-chances.ts';
import {
  NEWEST_WORK,
  planChances,
  shopSpread,
  confidentLines,
  whatHappened,
} from '../../../core/learn/plan-chances.ts';
import type { Spread } from '../../../core/learn/spread.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { promiseAt, type Chances } from '../../../core/learn/chance.ts';
import { promiseDate } from '../../../core/schedule/promise.ts';
import { sentence, type Result } from '../../../core/result.ts';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { aLine, anOrder, aRecord, aShop, NOW } from '../../support/builders.ts';

const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(sentence(result.issues));
  return result.value;
};
const pooled = (...ratios: number[]): Spread => ({
  machines: {},
  pooled: { observations: 100, median: 1, logSpread: 0, ratios, days: [1], standardError: 0 },
});
const shop = aShop({ order: [anOrder()], line: [aLine()] });
const typed = { order: anOrder({ id: '9001' }), lines: [aLine({ orderId: '9001' })] };

/** The shop with the typed order in it, and the plan in which its line was offered a place. */
function offered() {
  const taken = { ...shop, order: [...shop.order, typed.order], line: [...shop.line, ...typed.lines] };
  const { problem, queues } = must(toProblem(taken, NOW));
  return { problem, safe: must(promiseDate(problem, queues, '9001/1')).safe! };
}

describe('the chances of an order that is typed', () => {
  it('are those of its lines in the places they were offered; work that takes as long as estimated ends as offered', () => {
    const { safe } = offered();
    const found = must(typedChances(shop, NOW, pooled(1), { ...typed, plans: { '9001/1': safe.queues } }));
    expect(Object.keys(found)).toEqual(['9001/1']);
    expect(must(promiseAt(found, '9001/1', 0.9))).toBe(safe.end);
  });

  it('give a later date the surer it is to be, where work may take twice as long', () => {
    const { safe } = offered();
    const plans = { '9001/1': safe.queues };
    const found = must(typedChances(shop, NOW, pooled(1, 2), { ...typed, plans }));
    const dates = [0.1, 0.5, 0.95].map((confidence) => must(promiseAt(found, '9001/1', confidence)));
    expect(dates[0]).toBeGreaterThanOrEqual(safe.end);
    expect(dates[2]).toBeGreaterThan(dates[0]!);
    expect(dates).toEqual(dates.toSorted((a, b) => a - b));
  });

  it('are refused with the order’s own trouble', () => {
    const wrong = { ...typed, lines: [aLine({ orderId: '9001', partId: 'gone' })], plans: {} };
    const refused = typedChances(shop, NOW, pooled(1), wrong);
    expect(refused.ok ? 'taken' : sentence(refused.issues)).toMatch(/gone/);
  });
});

it('the chances of a plan are of its lines, and certain where times are', () => {
  const { problem, queues } = must(toProblem(shop, NOW));
  const { ends } = must(decode(problem, queues));
  const found = must(planChances(shop, NOW, pooled(1)));
  expect(must(promiseAt(found, '1042/1', 0.9))).toBe(ends['1042/1']);
});

it('a line counts as sure from its confidence on', () => {
  const lineOf = (onTime: number): Chances[string] => ({
    onTime,
    p10: null,
    p50: null,
    p80: null,
    p90: null,
    ends: Float64Array.of(0),
  });
  expect(confidentLines({ a: lineOf(0.9), b: lineOf(0.898), c: lineOf(1) }, 0.9)).toEqual({
    confident: 2,
    lines: 3,
  });
});

it('screens and search look at the same finished work, and at no more than the newest', () => {
  const records = Array.from({ length: NEWEST_WORK + 20 }, (_, k) =>
    aRecord({
      id: `${k + 1}/1:shear`,
      start: NOW - (k + 1) * 600,
      end: NOW - k * 600 - (k < NEWEST_WORK ? 300 : 1),
    }),
  );
  const { spread, observations } = whatHappened(shop, records);
  expect(observations.length).toBeLessThanOrEqual(NEWEST_WORK);
  expect(shopSpread(shop, records)).toEqual(spread);
  expect(spread).toEqual(shopSpread(shop, records.slice(0, NEWEST_WORK)));
});
