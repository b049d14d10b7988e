import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { importFiles, shopFiles, type Files } from '../../../demo-data/make/files.ts';
import { readAnchor } from '../../../demo-data/read.ts';
import { root } from './demo-shop.ts';

const stored = (files: Files): Files =>
  Object.fromEntries(Object.keys(files).map((path) => [path, readFileSync(`${root}${path}`, 'utf8')]));
const rowsOf = (text: string | undefined) =>
  Papa.parse<Record<string, string>>(text ?? '', { header: true, skipEmptyLines: true }).data;

describe('the generated demo files', () => {
  it('come out byte for byte as they are stored', () => {
    const shop = shopFiles(root);
    expect(Object.keys(shop)).toHaveLength(4);
    expect(shop).toEqual(stored(shop));
  });

  it('are dated for the shop folder’s own Monday where they are stored', () => {
    const imports = importFiles(root, readAnchor(`${root}shop`));
    expect(imports).toEqual(stored(imports));
  });

  it('differ by their dates only from those made for another week', () => {
    const undated = (files: Files) => JSON.stringify(files).replace(/\d{4}-\d{2}-\d{2}|04\/05\/\d{4}/g, '');
    const here = importFiles(root, '2026-11-23');
    const there = importFiles(root, '2027-03-08');
    expect(undated(there)).toBe(undated(here));
    expect(there).not.toEqual(here);
  });

  it('give 12 orders with 30 lines for next week, with numbers that the shop does not use yet', () => {
    const rows = rowsOf(importFiles(root, '2026-11-30')['next-week.csv']);
    const used = new Set(rowsOf(readFileSync(`${root}shop/orders.csv`, 'utf8')).map((row) => row['order']));
    expect(rows).toHaveLength(30);
    expect(new Set(rows.map((row) => row['order'])).size).toBe(12);
    expect(rows.filter((row) => used.has(row['order']))).toEqual([]);
    expect(rows.filter((row) => (row['due'] ?? '') < '2026-12-08')).toEqual([]);
  });
});
