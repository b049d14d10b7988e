import { lotWords, sameLot, type Lot } from '../material/lot.ts';
import { counted } from '../units/count.ts';

/** Sheets that a line needs of one lot, and those that each lot on hand has left for it. */
interface LotShortage {
  readonly needs: number;
  readonly lots: readonly { readonly lot: Lot; readonly sheets: number }[];
}

/** The lot that a line is cut from, in a shop that tells its sheets apart (core/planning/lots.ts). */
export interface LineLot {
  /**
   * `stock`: one that is on hand. `delivery`: one that is whole only when what is expected of it has come. `purchase`: none on hand has enough, so its sheets are bought, all of one lot.
   * `mixed`: none has enough, and the shop lets this line be cut from several.
   */
  readonly from: 'stock' | 'delivery' | 'purchase' | 'mixed';
  /** Of `stock` and `delivery` the lot itself, else what is asked of it. */
  readonly lot: Lot;
  /** Of `purchase`: what there is; null: nothing of it is on hand, or nothing is missing. */
  readonly short: LotShortage | null;
}

/** Whether two lines can be cut from the same sheets. */
export const sameLineLot = (a: LineLot | null, b: LineLot | null): boolean =>
  a === null || b === null ? a === b : a.from === b.from && sameLot(a.lot, b.lot);

/** The lot to fetch, "lot M-2231, PVDF"; '' where the shop keeps none. */
export function lineLotWords(of: LineLot | null): string {
  if (of === null) return '';
  const asked = lotWords(of.lot);
  switch (of.from) {
    case 'stock':
      return asked === '' ? 'no lot on record' : asked;
    case 'delivery':
      return [asked === '' ? 'no lot on record' : asked, 'expected'].join(', ');
    case 'purchase':
      return ['one lot to be bought', asked].filter(Boolean).join(': ');
    case 'mixed':
      return ['lots mixed', asked].filter(Boolean).join(': ');
  }
}

/** What to say where no lot on hand has enough; null where one has, or where nothing at all is on hand. */
export function lotWarning(lines: readonly string[], of: LineLot | null): string | null {
  if (!of?.short) return null;
  const { needs, lots } = of.short;
  const named = lots.map(({ lot, sheets }) => `${lotWords(lot) || 'no lot on record'} ${sheets}`);
  const who = lines.length === 1 ? `Line ${lines[0]} needs` : `Lines ${lines.join(', ')} need`;
  return `${who} ${counted(needs, 'sheet', 'sheets')} of one lot; on hand are: ${named.join('; ')}. Buy enough of one lot, or let the line be cut from several.`;
}
