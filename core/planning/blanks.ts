import { hits } from '../part/girth.ts';
import type { Part } from '../part/part.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Settings } from '../shop/settings.ts';
import type { Shop } from '../shop/state.ts';

/** Blanks that are cut for a line beyond its pieces. */
export interface Extra {
  /** To set a brake up with. */
  readonly setUp: number;
  /** In place of those that are usually spoiled. */
  readonly spare: number;
}

export const NO_EXTRA: Extra = { setUp: 0, spare: 0 };

/**
 * What a part, or else the shop, says of blanks beyond so many pieces: spare ones to the nearest whole one, so that a line
 * of a few pieces has none; a part without bends is not set up for.
 */
export function extraOf(
  { extraBlanks: usual }: Pick<Settings, 'extraBlanks'>,
  { profile, extraBlanks }: Pick<Part, 'profile' | 'extraBlanks'>,
  pieces: number,
): Extra {
  const { setUp, scrapShare } = extraBlanks ?? usual;
  return { setUp: hits(profile) > 0 ? setUp : 0, spare: Math.round(scrapShare * pieces) };
}

/** Blanks that a line is cut in all; as many as pieces where its part is gone. */
export function blanksOf(
  { part, settings }: Pick<Shop, 'part' | 'settings'>,
  { partId, quantity }: Pick<OrderLine, 'partId' | 'quantity'>,
): number {
  const own = part.find(({ id }) => id === partId);
  const { setUp, spare } = own ? extraOf(settings, own, quantity) : NO_EXTRA;
  return quantity + setUp + spare;
}
