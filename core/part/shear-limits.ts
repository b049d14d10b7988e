import type { Machine } from '../shop/machine.ts';
import { COMMON_PRACTICE, finding, type Finding } from './finding.ts';
import { formatBoth } from '../units/length.ts';

/** Long strips narrower than this come off the blade twisted: 2 in on 10 ft. */
const TWISTS_BELOW_MM = 50.8;
const TWISTS_FROM_LENGTH_MM = 3000;

/** Whether a shear can gauge and hold a blank of this girth. */
export function shearLimits(
  { girthMm, lengthMm }: { readonly girthMm: number; readonly lengthMm: number },
  machine: Machine,
): Finding[] {
  const findings: Finding[] = [];
  const { minStripMm, backGaugeMm } = machine;
  if (minStripMm !== null && girthMm < minStripMm) {
    findings.push(
      finding(
        'stop',
        'minimum strip',
        `A girth of ${formatBoth(girthMm)} is under the ${formatBoth(minStripMm)} that the hold-downs of ${machine.name} grip safely.`,
        'Cut it on a machine made for narrow strips; never hold a short piece by hand.',
        "the machine's record; the reason is common practice, no source",
      ),
    );
  }
  if (backGaugeMm !== null && girthMm < backGaugeMm.min) {
    findings.push(
      finding(
        'warning',
        'back-gauge reach',
        `A girth of ${formatBoth(girthMm)} is nearer than the back gauge of ${machine.name} comes, ${formatBoth(backGaugeMm.min)}.`,
        'Gauge it from the front, or leave it as the piece that remains.',
        "the machine's record",
      ),
    );
  }
  if (backGaugeMm !== null && girthMm > backGaugeMm.max) {
    findings.push(
      finding(
        'warning',
        'back-gauge reach',
        `A girth of ${formatBoth(girthMm)} is beyond the back gauge of ${machine.name}, ${formatBoth(backGaugeMm.max)}.`,
        'Cut the rest of the sheet off to size, so that this blank is the piece that remains.',
        "the machine's record",
      ),
    );
  }
  if (girthMm < TWISTS_BELOW_MM && lengthMm >= TWISTS_FROM_LENGTH_MM) {
    findings.push(
      finding(
        'warning',
        'narrow strip',
        `A strip ${formatBoth(girthMm)} wide and ${formatBoth(lengthMm)} long is likely to twist and bow on the shear.`,
        'Lower the rake if it can be set, and check the first strip.',
        COMMON_PRACTICE,
      ),
    );
  }
  return findings;
}
