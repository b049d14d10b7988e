import { blankOf } from '../part/blank.ts';
import { blankBasisOf } from '../part/forming.ts';
import type { GirthRule } from '../part/profile.ts';
import type { Shop } from '../shop/state.ts';

/** What another way to work out blanks would change. */
export interface GirthChange {
  /** Open lines whose blank would be cut to another width. */
  readonly lines: number;
  readonly of: number;
  /** The most that a blank would get wider or narrower, millimetres. */
  readonly mostMm: number;
}

/** Blanks that differ by less are cut the same. */
const SAME_MM = 0.1;

/** What a rule would change in the open lines, before it is chosen. Lines that cannot be worked out do not count. */
export function girthChange(shop: Shop, rule: GirthRule): GirthChange {
  const now = blankBasisOf(shop);
  const then = { ...now, girthRule: rule };
  const steps = shop.line.flatMap((line) => {
    const part = shop.part.find(({ id }) => id === line.partId);
    const material = shop.material.find(({ id }) => id === line.materialId);
    const gauge = material?.gauges.find(({ label }) => label === line.gauge);
    if (!part || !material || !gauge) return [];
    const [is, would] = [now, then].map((basis) => blankOf(line, part, material, gauge, basis));
    return is?.ok && would?.ok ? [Math.abs(would.value.girthMm - is.value.girthMm)] : [];
  });
  const changed = steps.filter((step) => step >= SAME_MM);
  return { lines: changed.length, of: steps.length, mostMm: Math.max(0, ...changed) };
}
