import type { RemnantRule, RemnantSize } from './remnant.ts';
import type { Offcut } from './plan.ts';
import type { Stock } from './run.ts';

/** Share of its metal's price that a remnant is worth: low, so that it is cut first. Common practice, no source. */
export const REMNANT_WORTH = 0.25;

interface SheetsCut {
  readonly count: number;
  readonly stockId: string;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly costCents: number;
  readonly offcuts: readonly Offcut[];
}

/** Whether an offcut is large enough to be kept. */
export const isLargeEnough = (
  rule: Pick<RemnantRule, 'widthMm' | 'lengthMm'>,
  widthMm: number,
  lengthMm: number,
): boolean => widthMm + 1e-6 >= rule.widthMm && lengthMm + 1e-6 >= rule.lengthMm;

/** One size to the millimetre, as remnants are named in stock. */
const sizeKey = (widthMm: number, lengthMm: number): string =>
  `${Math.round(widthMm)}×${Math.round(lengthMm)}`;

interface Found extends RemnantSize {
  /** Worth of those that are kept, by the price of the sheets they are cut from. */
  readonly cents: number;
}

/**
 * The remnants of a list by size, the largest first: of each size as many are kept as the rule allows beside those in stock.
 * @param stock what the run was planned from; remnants of it that the list itself uses make room again
 */
export function remnantsOf(
  groups: readonly SheetsCut[],
  rule: RemnantRule,
  stock: readonly Stock[],
): { readonly sizes: readonly RemnantSize[]; readonly cents: number; readonly keptMm2: number } {
  const room = roomBySize(groups, rule, stock);
  const found = new Map<string, Found>();
  for (const group of groups)
    for (const { kind, w, h } of group.offcuts) {
      if (kind !== 'remnant') continue;
      const key = sizeKey(h, w);
      const known = found.get(key) ?? { widthMm: h, lengthMm: w, pieces: 0, kept: 0, cents: 0 };
      const kept = Math.min(group.count, Math.max(0, (room.get(key) ?? rule.most) - known.kept));
      const each = (rule.worth * group.costCents * w * h) / (group.widthMm * group.lengthMm);
      const pieces = known.pieces + group.count;
      found.set(key, { ...known, pieces, kept: known.kept + kept, cents: known.cents + kept * each });
    }
  const sizes = [...found.values()].sort(
    (a, b) => b.widthMm * b.lengthMm - a.widthMm * a.lengthMm || b.widthMm - a.widthMm,
  );
  return {
    sizes: sizes.map(({ widthMm, lengthMm, pieces, kept }) => ({ widthMm, lengthMm, pieces, kept })),
    cents: sizes.reduce((sum, { cents }) => sum + cents, 0),
    keptMm2: sizes.reduce((sum, { widthMm, lengthMm, kept }) => sum + kept * widthMm * lengthMm, 0),
  };
}

/** How many more of a size are worth keeping, for sizes that lie in stock. */
function roomBySize(
  groups: readonly SheetsCut[],
  rule: RemnantRule,
  stock: readonly Stock[],
): Map<string, number> {
  const lying = new Map<string, number>();
  for (const one of stock) {
    if (one.kind !== 'sheet' || !one.remnant) continue;
    const used = groups.reduce((sum, { stockId, count }) => sum + (stockId === one.id ? count : 0), 0);
    const key = sizeKey(one.widthMm, one.lengthMm);
    lying.set(key, (lying.get(key) ?? 0) + Math.max(0, (one.available ?? 0) - used));
  }
  return new Map([...lying].map(([key, pieces]) => [key, Math.max(0, rule.most - pieces)]));
}
