import { missingToPlan, type Missing } from '../../core/report/missing.ts';
import type { Shop } from '../../core/shop/state.ts';
import { instant } from '../../core/units/brand.ts';
import { useNow } from './hooks.ts';

/** Looked for once a shop and minute, whoever asks. */
const known = new WeakMap<Shop, { readonly minute: number; readonly missing: readonly Missing[] }>();

/** What is missing to plan the shop, as of the present minute. */
export function useMissing(shop: Shop): readonly Missing[] {
  const minute = Math.floor(useNow() / 60) * 60;
  const before = known.get(shop);
  if (before?.minute === minute) return before.missing;
  const missing = missingToPlan(shop, instant(minute));
  known.set(shop, { minute, missing });
  return missing;
}
