import { err, ok, type Issue, type Result } from '../result.ts';
import { withChanges, type Edit, type RowChange } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import type { Command, FormKind } from './command.ts';
import { memoryChanges } from './file-memory.ts';
import { saveRows } from './row-commands.ts';
import { isNewStock, moved, noStock, stockName, stockOfLot } from './stock-commands.ts';

/** What several rows of a kind are called. */
const NOUNS: Readonly<Record<FormKind, string>> = {
  material: 'metal',
  colour: 'colour',
  sheet: 'sheet size',
  part: 'part',
  calendar: 'calendar',
  machine: 'machine',
  tool: 'tool',
  downtime: 'downtime',
  absence: 'absence',
  delivery: 'delivery',
};

/** Rows of a kind that a file brought, new and changed, with how the file was read: one edit, or what is wrong with it. */
export function importRows(
  shop: Shop,
  { fileName, rows, remembered }: Extract<Command, { readonly do: 'rows.import' }>,
): Result<Edit> {
  const isThere = ({ kind, row }: (typeof rows)[number]): boolean =>
    shop[kind].some(({ id }) => id === row.id);
  const changed = rows.filter(isThere).length;
  const noun = NOUNS[rows[0]?.kind ?? 'part'];
  const saved = saveRows(shop, rows, labelOf(fileName, noun, rows.length - changed, changed));
  if (!saved.ok) return saved;
  const changes = [...saved.value.changes, ...memoryChanges(shop, remembered)];
  return ok({ ...saved.value, changes });
}

function labelOf(fileName: string, noun: string, added: number, changed: number): string {
  if (changed === 0) return `Import ${counted(added, noun)} from ${fileName}`;
  if (added === 0) return `Change ${counted(changed, noun)} by ${fileName}`;
  return `Import ${counted(added, noun)} from ${fileName}, change ${changed}`;
}

/** Counts that a file brought: each is an entry in its stock's history. */
export function importStock(
  shop: Shop,
  { fileName, counts, at, remembered }: Extract<Command, { readonly do: 'stock.import' }>,
): Result<Edit> {
  const done = new Set<string>();
  const changes: RowChange[] = [];
  const issues: Issue[] = [];
  for (const { sheetId, lot, pieces } of counts) {
    const named = shop.sheet.find(({ id }) => id === sheetId);
    const sheet = named && stockOfLot(withChanges(shop, changes), named, lot);
    // A second count of the same stock would stand on the first.
    const entry =
      sheet && !done.has(sheet.id)
        ? moved(
            sheet,
            pieces - sheet.onHand,
            { at, what: 'counted', note: `from ${fileName}` },
            stockName(shop, sheet),
            isNewStock(shop, sheet),
          )
        : noStock(sheetId);
    if (sheet) done.add(sheet.id);
    if (entry.ok) changes.push(...entry.value.changes);
    else issues.push(...entry.issues);
  }
  if (issues.length > 0) return err(...issues);
  const label = `Set ${counted(counts.length, 'count')} of stock by ${fileName}`;
  return ok({ label, changes: [...changes, ...memoryChanges(shop, remembered)] });
}
