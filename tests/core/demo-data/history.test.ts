import { describe, expect, it } from 'vitest';
import { BIAS } from '../../../demo-data/make/history.ts';
import { demoShop, hoursOf, monday, openSeconds } from './demo-shop.ts';

const shop = demoShop();
const MINUTE = 60;
const earliest = Math.min(...shop.record.map((r) => r.start));
const machines = shop.machine.map((m) => m.id);
const recordsOf = (id: string) =>
  shop.record.filter((r) => r.machineId === id).sort((a, b) => a.start - b.start);
const median = (values: number[]): number =>
  values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

describe("the demo shop's finished operations", () => {
  it('cover half a year and end before the Monday', () => {
    expect(monday - earliest).toBeGreaterThan(175 * 86_400);
    expect(Math.max(...shop.record.map((r) => r.end ?? Infinity))).toBeLessThan(monday);
  });

  it.each(machines)('never overlap on %s, and begin and end in its open hours', (id) => {
    const hours = hoursOf(shop, id, earliest - 86_400, monday);
    let free = 0;
    for (const { id: operation, start, end } of recordsOf(id)) {
      expect(start, operation).toBeGreaterThanOrEqual(free);
      free = end!;
      expect(openSeconds(hours, start - MINUTE, start + MINUTE), operation).toBeGreaterThan(0);
      expect(openSeconds(hours, free - MINUTE, free + MINUTE), operation).toBeGreaterThan(0);
    }
  });

  it('bend nothing before it is sheared', () => {
    const sheared = new Map(shop.record.filter((r) => r.id.endsWith(':shear')).map((r) => [r.id, r.end!]));
    for (const record of shop.record.filter((r) => r.id.endsWith(':brake')))
      expect(sheared.get(record.id.replace(':brake', ':shear')), record.id).toBeLessThanOrEqual(record.start);
  });

  it.each(machines)('take about the estimate times the bias of %s, with a few per cent far off', (id) => {
    const hours = hoursOf(shop, id, earliest - 86_400, monday);
    const ratios = recordsOf(id).map((r) => openSeconds(hours, r.start, r.end!) / r.estimatedSeconds);
    expect(median(ratios) / BIAS[id]!).toBeGreaterThan(0.96);
    expect(median(ratios) / BIAS[id]!).toBeLessThan(1.04);
    const far =
      ratios.filter((ratio) => ratio > 1.65 * BIAS[id]! || ratio < 0.55 * BIAS[id]!).length / ratios.length;
    expect(far).toBeGreaterThan(0.02);
    expect(far).toBeLessThan(0.06);
  });
});
