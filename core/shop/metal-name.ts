import type { Shop } from './state.ts';

/** "24 ga"; a label that is a decimal thickness (".032") stands as it is. */
export const gaugeName = (label: string): string => (/^\d+$/.test(label) ? `${label} ga` : label);

/** Names, not codes; what is not known or differs is left out. */
interface MetalParts {
  readonly gauge?: string | undefined;
  readonly colour?: string | undefined;
  readonly material?: string | undefined;
}

/** A metal in the one order in which it is named everywhere: "24 ga Moss, galvanized", or as much of it as is known. */
export const metalWords = ({ gauge, colour, material }: MetalParts): string =>
  [[gauge && gaugeName(gauge), colour].filter(Boolean).join(' '), material].filter(Boolean).join(', ');

/** The metal of a line, a run or a stock size; its codes where their rows have gone. */
export const metalName = (
  shop: Pick<Shop, 'material' | 'colour'>,
  of: { readonly materialId: string; readonly gauge: string; readonly colourId: string },
): string =>
  metalWords({
    gauge: of.gauge,
    colour: shop.colour.find((colour) => colour.id === of.colourId)?.name ?? of.colourId,
    material: shop.material.find((material) => material.id === of.materialId)?.name ?? of.materialId,
  });
