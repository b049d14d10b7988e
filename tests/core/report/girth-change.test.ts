import { expect, it } from 'vitest';
import { girthChange } from '../../../core/report/girth-change.ts';
import { instant } from '../../../core/units/brand.ts';
import { loadDemo } from '../../../demo-data/load.ts';

const shop = loadDemo('demo-data/shop', instant(Date.parse('2026-11-30T12:10:00Z') / 1000));

it('a shop that keeps its rule changes no blank', () => {
  expect(girthChange(shop, shop.settings.girthRule)).toMatchObject({ lines: 0, mostMm: 0 });
});

it('a shop is told how many open lines would be cut otherwise, and by how much at most', () => {
  const computed = { ...shop, settings: { ...shop.settings, girthRule: 'computed' as const } };
  const { lines, of, mostMm } = girthChange(computed, 'computedByV');
  expect(of).toBe(shop.line.length);
  expect(lines).toBeGreaterThan(0);
  expect(lines).toBeLessThanOrEqual(of);
  expect(mostMm).toBeGreaterThan(0.1);
  const back = { ...computed, settings: { ...computed.settings, girthRule: 'computedByV' as const } };
  expect(girthChange(back, 'computed')).toEqual({ lines, of, mostMm });
});
