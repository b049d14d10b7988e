import type { Machine } from '../shop/machine.ts';
import { shortStageName, type Stage } from '../part/stage.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import { formatLength } from '../units/length.ts';
import { routingOf } from './routing.ts';

/** Steps of a line that the shop has no machine for, the first of them; null: none. */
export const stageWithoutMachine = (shop: Shop, { partId }: Pick<OrderLine, 'partId'>): Stage | null =>
  stagesOf(shop, partId).find((stage) => longestOf(shop, stage) === null) ?? null;

/** Why a piece is too long for every machine of a step that it needs, as a sentence and what to do; null: it is not. */
export function tooLong(
  shop: Shop,
  { partId, lengthMm }: Pick<OrderLine, 'partId' | 'lengthMm'>,
): string | null {
  for (const stage of stagesOf(shop, partId)) {
    const longest = longestOf(shop, stage);
    if (longest?.maxLengthMm == null || !(lengthMm > longest.maxLengthMm)) continue;
    const [asked, most] = [lengthMm, longest.maxLengthMm].map((mm) => formatLength(mm, shop.settings));
    return `${asked} is longer than the ${most} that the longest ${shortStageName(stage)}, ${longest.name}, takes. Make it of shorter pieces.`;
  }
  return null;
}

function stagesOf(shop: Shop, partId: string): readonly Stage[] {
  const part = shop.part.find(({ id }) => id === partId);
  return part ? routingOf(part) : [];
}

const longestOf = (shop: Shop, stage: Stage): Machine | null =>
  shop.machine
    .filter((machine) => machine.stage === stage)
    .reduce<Machine | null>((a, b) => (a && longest(a) >= longest(b) ? a : b), null);

/** Without a limit it takes any. */
const longest = ({ maxLengthMm }: Machine): number => maxLengthMm ?? Infinity;
