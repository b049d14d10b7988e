import type { Machine } from '../shop/machine.ts';
import { found, type Found } from './finding.ts';
import { formatLength, type Units } from '../units/length.ts';
import { TOO_NARROW_TO_HOLD } from '../part/too-narrow.ts';

/** Long strips narrower than this come off the blade twisted: 2 in on 10 ft. */
const TWISTS_BELOW_MM = 50.8;
const TWISTS_FROM_LENGTH_MM = 3000;

/**
 * Whether a shear can gauge and hold a blank of this girth. What is cut off falls behind the blade, loose, and must reach
 * the gauge; what remains in front must reach into the hold-downs (`minStripMm`).
 */
export function shearLimits(
  { girthMm, lengthMm }: { readonly girthMm: number; readonly lengthMm: number },
  machine: Machine,
  units: Units,
): Found[] {
  const size = (mm: number): string => formatLength(mm, units);
  const all: Found[] = [];
  const { minStripMm, backGaugeMm } = machine;
  if (minStripMm !== null && girthMm < minStripMm) {
    all.push(
      found(
        'minimum strip',
        `A girth of ${size(girthMm)} is under the ${size(minStripMm)} that the hold-downs of ${machine.name} grip safely: it could only fall loose behind the blade, never be what they hold.`,
        TOO_NARROW_TO_HOLD,
      ),
    );
  }
  if (backGaugeMm !== null && girthMm < backGaugeMm.min) {
    all.push(
      found(
        'back-gauge reach',
        `A girth of ${size(girthMm)} is nearer than the back gauge of ${machine.name} comes, ${size(backGaugeMm.min)}.`,
        TOO_NARROW_TO_HOLD,
      ),
    );
  }
  if (backGaugeMm !== null && girthMm > backGaugeMm.max) {
    all.push(
      found(
        'back-gauge reach',
        `A girth of ${size(girthMm)} is beyond the back gauge of ${machine.name}, ${size(backGaugeMm.max)}.`,
        'Cut the rest of the sheet off to size, so that this blank is the piece that remains.',
      ),
    );
  }
  if (girthMm < TWISTS_BELOW_MM && lengthMm >= TWISTS_FROM_LENGTH_MM) {
    all.push(
      found(
        'narrow strip',
        `A strip ${size(girthMm)} wide and ${size(lengthMm)} long is likely to twist and bow on the shear.`,
        'Lower the rake if it can be set, and check the first strip.',
      ),
    );
  }
  return all;
}
