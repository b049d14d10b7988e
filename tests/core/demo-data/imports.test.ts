import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { checkOrderRows, type CheckedRows } from '../../../core/import/order-rows.ts';
import { shiftDate, toInstant } from '../../../core/time/wall.ts';
import { importFiles } from '../../../demo-data/make/files.ts';
import { demoShop, root, zone } from './demo-shop.ts';

/** A generated file as the import reads it, on the Monday that it is dated for. */
function checked(file: string, week: string): CheckedRows {
  const now = toInstant(week, '06:00', zone);
  const text = importFiles(root, week)[file] ?? '';
  const [header = [], ...rows] = Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
  const numbered = rows.map((cells, index) => ({ row: index + 2, cells }));
  const result = checkOrderRows(demoShop(now), header, numbered, now);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

describe.each(['2026-11-23', '2027-03-08', '2027-08-30'])('the files to import in the week of %s', (week) => {
  it('bring 12 orders with 30 lines, every row ready', () => {
    const { issues, orders, lines } = checked('next-week.csv', week);
    expect(issues).toEqual([]);
    expect([orders.length, lines.length]).toEqual([12, 30]);
  });

  it('bring one rush order, due within three days, with more importance than usual', () => {
    const { issues, orders } = checked('rush.csv', week);
    expect(issues).toEqual([]);
    expect(orders).toHaveLength(1);
    expect(orders[0]?.rush).toBe(true);
    expect(orders[0]?.importance).toBeGreaterThan(1);
    expect(orders[0]?.due).toBeLessThan(toInstant(shiftDate(week, 3), '00:00', zone));
  });

  it('hold one good row, and in every other row of the broken file a cell that is refused', () => {
    const { issues, ready } = checked('broken.csv', week);
    expect(ready).toEqual([2]);
    expect([...new Set(issues.map((p) => p.row))]).toEqual(
      Array.from({ length: 22 }, (_, index) => index + 3),
    );
  });
});
