import type { Printable } from '../../../core/contract/print.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { placeOf, type Place } from '../../router.ts';
import { mostAsked } from '../shop/parts/most-asked.ts';
import type { PartOnPaper } from './part-paper.tsx';

/** What the address of a drawing or a traveller names. */
export interface PartChoice {
  readonly what: 'part' | 'traveller';
  /** A part's code, or a line's. */
  readonly id: string;
}

export const readPartChoice = ({ path, query }: Pick<Place, 'path' | 'query'>): PartChoice =>
  path[1] === 'traveller'
    ? { what: 'traveller', id: query.get('line') ?? '' }
    : { what: 'part', id: query.get('part') ?? '' };

export const partAddress = ({ what, id }: PartChoice): string =>
  `${placeOf('print', what)}?${new URLSearchParams({ [what === 'part' ? 'part' : 'line']: id }).toString()}`;

export const printableOf = ({ what, id }: PartChoice): Printable =>
  what === 'part' ? { what, partId: id } : { what, lineId: id };

/** The part to draw; without a line in the metal that most of its lines are in. Null when the shop has no such thing. */
export function partOnPaper(shop: Shop, { what, id }: PartChoice): PartOnPaper | null {
  const line = what === 'traveller' ? shop.line.find((one) => one.id === id) : undefined;
  const order = line && shop.order.find((one) => one.id === line.orderId);
  const part = shop.part.find((one) => one.id === (line?.partId ?? id));
  const metal = line ?? (part && mostAsked(shop, part.id));
  const material = shop.material.find((one) => one.id === metal?.materialId);
  const gauge = material?.gauges.find(({ label }) => label === metal?.gauge);
  if (!part || !material || !gauge || (what === 'traveller' && !order)) return null;
  return {
    part,
    material,
    gauge,
    lengthMm: line?.lengthMm ?? part.lengthMm,
    line: line && order ? { line, order } : null,
  };
}
