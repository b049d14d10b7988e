import { hundredth, NARROWEST_CUT_MM, type BlankSize, type RunInput } from './run.ts';
import type { Group } from './groups.ts';
import { isLargeEnough } from './remnants.ts';
import { stepsOf } from './steps.ts';
import { workCents } from './work.ts';

/** Differences below this are rounding, not metal. */
const SAME_MM = 0.005;

/**
 * A group whose panels all leave a sliver, or all have their side trimmed, with that ripped off the whole sheet in one cut
 * before it is crosscut, where the list is cheaper so: a cut and a setting for each panel against one more of the sheet and
 * its turn. Common practice, no source.
 */
export function trimmedFirst(run: RunInput, sizes: readonly BlankSize[], group: Group): Group {
  const trimFirstMm = sharedTrim(run, group);
  if (trimFirstMm === 0) return group;
  const trimmed = { ...group, trimFirstMm };
  const work = (one: Group): number => workCents(stepsOf(run, sizes, [one]), run.work);
  return work(trimmed) < work(group) ? trimmed : group;
}

/** What all panels of a sheet have to lose on one side; 0: nothing, or the shear cannot take it off the whole sheet. */
function sharedTrim({ shear, keep }: RunInput, { stock, layout, widthMm, lengthMm }: Group): number {
  const { panels } = layout;
  const wholeSheet = panels.length === 1 && panels[0]?.lengthMm === lengthMm;
  if (wholeSheet || lengthMm > shear.lengthMm) return 0;
  const left = panels.map(({ strips }) =>
    hundredth(widthMm - stock.sideTrimMm - strips.reduce((sum, { girthMm }) => sum + girthMm, 0)),
  );
  const shared = Math.min(...left);
  // What the other panels have left beyond it must still be nothing, or enough to cut off.
  const cuttable = left.every((mm) => mm - shared <= SAME_MM || mm - shared >= NARROWEST_CUT_MM);
  const sliver = shared < shear.minStripMm && cuttable ? shared : 0;
  const trim = hundredth(stock.sideTrimMm + sliver);
  const canBeCut = trim >= NARROWEST_CUT_MM && widthMm - trim >= shear.minStripMm;
  return canBeCut && !isLargeEnough(keep, trim, lengthMm) ? trim : 0;
}
