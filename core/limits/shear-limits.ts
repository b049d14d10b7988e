import type { Machine } from '../shop/machine.ts';
import { found, type Found } from './finding.ts';
import { formatBoth } from '../units/length.ts';

/** Long strips narrower than this come off the blade twisted: 2 in on 10 ft. */
const TWISTS_BELOW_MM = 50.8;
const TWISTS_FROM_LENGTH_MM = 3000;

/** Whether a shear can gauge and hold a blank of this girth. */
export function shearLimits(
  { girthMm, lengthMm }: { readonly girthMm: number; readonly lengthMm: number },
  machine: Machine,
): Found[] {
  const all: Found[] = [];
  const { minStripMm, backGaugeMm } = machine;
  if (minStripMm !== null && girthMm < minStripMm) {
    all.push(
      found(
        'minimum strip',
        `A girth of ${formatBoth(girthMm)} is under the ${formatBoth(minStripMm)} that the hold-downs of ${machine.name} grip safely.`,
        'Cut it on a machine made for narrow strips; never hold a short piece by hand.',
      ),
    );
  }
  if (backGaugeMm !== null && girthMm < backGaugeMm.min) {
    all.push(
      found(
        'back-gauge reach',
        `A girth of ${formatBoth(girthMm)} is nearer than the back gauge of ${machine.name} comes, ${formatBoth(backGaugeMm.min)}.`,
        'Gauge it from the front, or leave it as the piece that remains.',
      ),
    );
  }
  if (backGaugeMm !== null && girthMm > backGaugeMm.max) {
    all.push(
      found(
        'back-gauge reach',
        `A girth of ${formatBoth(girthMm)} is beyond the back gauge of ${machine.name}, ${formatBoth(backGaugeMm.max)}.`,
        'Cut the rest of the sheet off to size, so that this blank is the piece that remains.',
      ),
    );
  }
  if (girthMm < TWISTS_BELOW_MM && lengthMm >= TWISTS_FROM_LENGTH_MM) {
    all.push(
      found(
        'narrow strip',
        `A strip ${formatBoth(girthMm)} wide and ${formatBoth(lengthMm)} long is likely to twist and bow on the shear.`,
        'Lower the rake if it can be set, and check the first strip.',
      ),
    );
  }
  return all;
}
