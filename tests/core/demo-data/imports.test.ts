import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { importKinds } from '../../../core/import/kinds.ts';
import { readFile } from '../../../core/import/read-file.ts';
import { shiftDate, toInstant } from '../../../core/time/wall.ts';
import { importFiles } from '../../../demo-data/make/files.ts';
import { checkedOf, gridOf, nothingPast, type Checked } from '../import/order-table.ts';
import { demoShop, root, zone } from './demo-shop.ts';

/** A generated file as the import reads it, on the Monday that it is dated for. */
function checked(fileName: string, week: string): Checked {
  const now = toInstant(week, '06:00', zone);
  const text = importFiles(root, week)[fileName] ?? '';
  const grid = gridOf(Papa.parse<string[]>(text, { skipEmptyLines: true }).data);
  const shop = demoShop(now);
  return checkedOf(
    readFile(importKinds.orders, { shop, fileName, grid, answers: {}, now, past: nothingPast }),
  );
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
    const { of } = checked('broken.csv', week);
    expect(of('new')).toEqual([2]);
    expect([...of('wrong'), ...of('waiting')].sort((a, b) => a - b)).toEqual(
      Array.from({ length: 22 }, (_, index) => index + 3),
    );
  });
});
