import type { Printable } from '../../../core/contract/print.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { placeOf, type Place } from '../../router.ts';
import { mostAsked } from '../shop/parts/most-asked.ts';
import type { PartOnPaper } from './part-paper.tsx';

/** What the address of a drawing or a traveller names. */
export type PartChoice =
  | { readonly what: 'traveller'; /** A line's. */ readonly id: string }
  | {
      readonly what: 'part';
      /** A part's code. */
      readonly id: string;
      /** null: the metal that most of its lines are in. */
      readonly metal: MetalChoice | null;
    };

/** A metal in a gauge, as it is chosen on screen. */
export interface MetalChoice {
  readonly materialId: string;
  readonly gauge: string;
}

export const readPartChoice = ({ path, query }: Pick<Place, 'path' | 'query'>): PartChoice =>
  path[1] === 'traveller'
    ? { what: 'traveller', id: query.get('line') ?? '' }
    : { what: 'part', id: query.get('part') ?? '', metal: metalIn(query) };

function metalIn(query: URLSearchParams): MetalChoice | null {
  const [materialId, gauge] = [query.get('material'), query.get('gauge')];
  return materialId === null || gauge === null ? null : { materialId, gauge };
}

export function partAddress(choice: PartChoice): string {
  const query = new URLSearchParams(
    choice.what === 'part'
      ? {
          part: choice.id,
          ...(choice.metal ? { material: choice.metal.materialId, gauge: choice.metal.gauge } : {}),
        }
      : { line: choice.id },
  );
  return `${placeOf('print', choice.what)}?${query.toString()}`;
}

export const printableOf = (choice: PartChoice): Printable =>
  choice.what === 'part'
    ? { what: choice.what, partId: choice.id, metal: choice.metal }
    : { what: choice.what, lineId: choice.id };

/** The part to draw, in its line's metal, the chosen one or the most usual. Null when the shop has no such thing. */
export function partOnPaper(shop: Shop, choice: PartChoice): PartOnPaper | null {
  const { what, id } = choice;
  const line = what === 'traveller' ? shop.line.find((one) => one.id === id) : undefined;
  const order = line && shop.order.find((one) => one.id === line.orderId);
  const part = shop.part.find((one) => one.id === (line?.partId ?? id));
  const metal = line ?? (what === 'part' ? choice.metal : null) ?? (part && mostAsked(shop, part.id));
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
