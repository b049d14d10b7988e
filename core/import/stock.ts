import type { Sheet } from '../material/material.ts';
import { isNewStock, stockName, stockOfLot } from '../edit/stock-commands.ts';
import { lotFields, NO_LOT, sameLot, type Lot, type PaintSystem, type StockKnows } from '../material/lot.ts';
import { quoted } from '../quoted.ts';
import type { Shop } from '../shop/state.ts';
import { LIST_WORDS } from './list-words.ts';
import type { Field, FileFields } from './field.ts';
import type { ImportKind, JudgedRow, RowIssue } from './kind.ts';
import { numberIn, textIn } from './list-rows.ts';
import type { ReadRow } from './read-rows.ts';
import { metalIn, sameMetal, sheetCode, sheetMetalFields } from './sheets.ts';

/** Words for paint systems, as `plainWords` writes them. */
const PAINTS: Readonly<Record<PaintSystem, readonly string[]>> = {
  polyester: ['polyester', 'pe', 'sp'],
  siliconePolyester: ['silicone polyester', 'silicone modified polyester', 'smp', 'silikonpolyester'],
  polyurethane: ['polyurethane', 'polyurethan', 'pur', 'pu'],
  pvdf: ['pvdf', 'fluoropolymer'],
  plastisol: ['plastisol', 'pvc'],
};

const fields = ({ settings }: Shop): FileFields => ({
  kind: 'stock',
  key: 'count',
  fields: [
    sheetCode,
    ...sheetMetalFields(() => 'no'),
    { name: 'width', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.width },
    { name: 'length', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.sheetLength },
    ...lotFieldsOf(settings.stockKnows),
    { name: 'count', sort: { is: 'whole', min: 0, max: 1_000_000 }, needed: 'row', words: LIST_WORDS.count },
  ],
});

/** What the shop tells its sheets apart by. */
const lotFieldsOf = (knows: StockKnows | null): Field[] => [
  ...(knows?.lot
    ? [
        {
          name: 'lot',
          sort: { is: 'text', schema: lotFields.lot },
          needed: 'no',
          words: LIST_WORDS.lot,
        } as const,
      ]
    : []),
  ...(knows?.paint
    ? [
        {
          name: 'paint system',
          sort: { is: 'one-of', words: PAINTS },
          needed: 'no',
          words: LIST_WORDS.paintSystem,
        } as const,
      ]
    : []),
  ...(knows?.film
    ? [{ name: 'film', sort: { is: 'yes-no' }, needed: 'no', words: LIST_WORDS.film } as const]
    : []),
];

/**
 * Files of counted stock: a count sets what is on hand, as one entry in the stock's history. The sheet sizes must be in the
 * shop; what the file lacks keeps its count.
 */
export const stockFiles: ImportKind = {
  fields,
  judge(rows, { shop, now }) {
    const judged = new Map<number, JudgedRow>();
    const issues: RowIssue[] = [];
    const counts: { sheetId: string; lot: Lot; pieces: number }[] = [];
    const seen = new Map<string, number>();
    for (const row of rows) {
      const pieces = numberIn(row, 'count');
      if (pieces === undefined) continue;
      const [named, ...others] = meant(shop, row);
      const sheet = named && stockOfLot(shop, named, lotIn(named, row));
      const other = sheet && seen.get(sheet.id);
      if (!named || !sheet || others.length > 0 || other !== undefined) {
        issues.push({ row: row.row, ...whyNot(shop, row, sheet ? [sheet, ...others] : [], other) });
        continue;
      }
      seen.set(sheet.id, row.row);
      const isKnown = sheet.onHand === pieces && !isNewStock(shop, sheet);
      judged.set(row.row, {
        state: isKnown ? 'known' : isNewStock(shop, sheet) ? 'new' : 'changed',
        subject: `stock ${sheet.id}`,
        words: stockName(shop, sheet),
        was: isKnown || isNewStock(shop, sheet) ? {} : { count: String(sheet.onHand) },
      });
      if (!isKnown) counts.push({ sheetId: named.id, lot: lotIn(named, row), pieces });
    }
    const missing = shop.sheet
      .filter(({ id, onHand }) => onHand > 0 && !seen.has(id))
      .map((sheet) => ({
        id: sheet.id,
        words: `${stockName(shop, sheet)}: ${sheet.onHand} on hand, not in the file. It stays as it is.`,
      }));
    return {
      rows: judged,
      issues,
      notes: [],
      missing: seen.size > 0 ? missing : [],
      command:
        counts.length === 0
          ? null
          : (fileName, remembered) => ({ do: 'stock.import', fileName, counts, at: now, remembered }),
    };
  },
};

/** A size read from a file is a stock's where it differs by less than a sawn edge would. */
const SAME_MM = 0.05;

/** The lot that a row says; what it leaves out is the stock's own. */
const lotIn = (sheet: Sheet, row: ReadRow): Lot => {
  const film = row.values.film;
  return {
    lot: textIn(row, 'lot') ?? sheet.lot,
    paint: (textIn(row, 'paint system') as PaintSystem | undefined) ?? sheet.paint,
    film: film === undefined ? sheet.film : film === true ? 'with' : 'without',
  };
};

/** The stock that a row can mean: by its code, else by all that it says of metal, size and lot. */
function meant(shop: Shop, row: ReadRow): readonly Sheet[] {
  const said = textIn(row, 'code')?.toLowerCase();
  if (said !== undefined) return shop.sheet.filter(({ id }) => id.toLowerCase() === said);
  const metal = metalIn(shop, row);
  if (!metal) return [];
  const is = (own: number, field: string): boolean => {
    const read = numberIn(row, field);
    return read === undefined || Math.abs(read - own) < SAME_MM;
  };
  const found = shop.sheet.filter(
    (sheet) => sameMetal(sheet, metal) && is(sheet.widthMm, 'width') && is(sheet.lengthMm, 'length'),
  );
  // Where a size has lots, a row means the one that it names, else the size itself; a new lot is one of the size.
  const ofLot = found.filter((sheet) => sameLot(sheet, lotIn(sheet, row)) && saysLot(row));
  const plain = found.filter((sheet) => sameLot(sheet, NO_LOT));
  return ofLot.length > 0 ? ofLot : plain.length > 0 ? plain : found;
}

const saysLot = (row: ReadRow): boolean =>
  ['lot', 'paint system', 'film'].some((field) => row.values[field] !== undefined);

function whyNot(
  shop: Shop,
  row: ReadRow,
  found: readonly Sheet[],
  other: number | undefined,
): Omit<RowIssue, 'row'> {
  const said = textIn(row, 'code');
  const field = said === undefined ? null : 'code';
  const ids = quoted(
    found.map(({ id }) => id),
    5,
  );
  if (found.length > 1)
    return { field, reason: `Several stocks can be meant: ${ids}. Write the code, or width and length.` };
  if (other !== undefined)
    return { field, reason: `Row ${other} counts ${ids} already. Add the two up in one row.` };
  if (said !== undefined)
    return { field, reason: `There is no stock ${said}. Add the sheet size first, or correct the code.` };
  return metalIn(shop, row)
    ? {
        field,
        reason: 'The shop has no sheet size of this metal and size. Add it in Shop, Sheet sizes, first.',
      }
    : { field, reason: 'Which stock it is cannot be told: write its code, or its metal, gauge and colour.' };
}
