import { tooLong } from '../../../core/planning/too-long.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { FieldErrors } from '../../form/field-errors.ts';
import type { OrderEntries } from './order-entries.ts';

/** Pieces too long for every machine, by the form's field, as a file's rows are refused; those that stood there stay. */
export function tooLongLines(shop: Shop, current: OrderEntries, { lines }: OrderEntries): FieldErrors {
  const refused: Record<string, string> = {};
  lines.forEach((line, i) => {
    const before = current.lines.find(({ number }) => number === line.number);
    if (before && before.lengthMm === line.lengthMm && before.partId === line.partId) return;
    const words = tooLong(shop, line);
    if (words !== null) refused[`lines.${i}.lengthMm`] = words;
  });
  return refused;
}
