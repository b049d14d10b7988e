import { stockName } from '../edit/stock-commands.ts';
import type { Awaited, MetalCover } from '../planning/metal-cover.ts';
import type { Shop } from '../shop/state.ts';
import { formatWallDate } from '../time/wall.ts';
import { instant } from '../units/brand.ts';
import { counted } from '../units/count.ts';

/** "13 sheets of 24 ga Moss, galvanized, 48 in × 120 in, due Tue 1 Dec (delivery D1)" */
function awaitedWords(shop: Shop, { sheetId, sheets, due, deliveryId }: Awaited): string {
  const sheet = shop.sheet.find(({ id }) => id === sheetId);
  const what = sheet?.form === 'coil' ? 'coil' : sheets === 0 ? 'a sheet' : counted(sheets, 'sheet');
  const date = formatWallDate(instant(due), shop.settings.timeZone);
  return `${what} of ${sheet ? stockName(shop, sheet) : sheetId}, due ${date} (delivery ${deliveryId})`;
}

/** What a line waits for, "Waits for 13 sheets of …, due Tue 1 Dec (delivery D1)"; '' where it waits for none. */
export const waitsForWords = (shop: Shop, awaited: readonly Awaited[]): string =>
  awaited.length === 0 ? '' : `Waits for ${awaited.map((one) => awaitedWords(shop, one)).join(', and ')}`;

/**
 * What is to be said of a line whose metal is not all there; a sentence each.
 * @param now what was due before has not come; epoch seconds, null: nothing is said of that
 */
export function metalWords(
  shop: Shop,
  { awaited, missing }: Pick<MetalCover, 'awaited' | 'missing'>,
  now: number | null,
): string[] {
  const overdue = awaited.filter(({ due }) => now !== null && due <= now).map(({ deliveryId }) => deliveryId);
  const late = overdue.length === 1 ? `Delivery ${overdue[0]} is` : `Deliveries ${overdue.join(', ')} are`;
  return [
    missing === 0
      ? ''
      : `Metal missing: neither stock nor deliveries have enough for ${counted(missing, 'blank')}.`,
    awaited.length === 0 ? '' : `${waitsForWords(shop, awaited)}.`,
    overdue.length === 0 ? '' : `${late} overdue: receive what has come, or say when it comes.`,
  ].filter(Boolean);
}
