import type { Machine } from '../shop/machine.ts';
import { setback, type BendShape } from './bend.ts';
import { COMMON_PRACTICE, finding, type Asked, type Finding } from './finding.ts';
import { formatBoth } from '../units/length.ts';
import { airBendRadiusMm } from './radius.ts';
import type { Flat, Fold, Piece } from './strip.ts';
import { airBendKn, flattenHemKn, KN_PER_TONNE } from './tonnage.ts';

/** A flange must span the V from its middle to the shoulder: share of the opening, standard and acute dies. */
const MIN_FLANGE = { square: 0.7, acute: 1.1 };
/** An air bend turns "sharp", the punch digging in, below this share of the thickness. */
const SHARP_RADIUS = 0.63;
/** Bending-force charts differ by a fifth either way. */
const CHART_SPREAD = 1.2;
const MAX_PHYSICAL_K = 0.5;

const isFold = (piece: Piece | undefined): piece is Fold => piece?.kind === 'bend' || piece?.kind === 'hem';

/** The least outside flange beside a fold. Sources: trade magazine design rules (0.70 V, 1.10 V acute; 2T + R). */
function minFlangeMm({ angle, radius, thickness }: BendShape, dieOpeningMm: number | null): number {
  const share = angle > 90 ? MIN_FLANGE.acute : MIN_FLANGE.square;
  return Math.max(2 * thickness + radius, share * (dieOpeningMm ?? 0));
}

function flangeLimits(strip: readonly Piece[], machine: Machine): Finding[] {
  return strip.flatMap((piece, i) => {
    if (isFold(piece)) return [];
    const beside = [strip[i - 1], strip[i + 1]].filter(isFold);
    const outside = beside.reduce((sum, fold) => sum + setback('outside', fold.shape), piece.lengthMm);
    const needs = Math.max(0, ...beside.map((fold) => minFlangeMm(fold.shape, machine.dieOpeningMm)));
    if (outside >= needs) return [];
    return [
      finding(
        'stop',
        'minimum flange',
        `${nameOf(piece)} is ${formatBoth(outside)} over the outside; the V of ${machine.name} needs ${formatBoth(needs)}.`,
        'Use a narrower V, or make the flange longer.',
        'trade magazine design rules: 0.70 of the V opening, 1.10 for an acute die, at least 2T + R',
      ),
    ];
  });
}

const nameOf = (flat: Flat): string =>
  flat.kind === 'lip' ? `The hem lip on flange ${flat.number}` : `Flange ${flat.number}`;

/**
 * Sources: steel and stainless, an air-forming article in the trade press (0.63 T); aluminium, Aluminum Design Manual
 * 2005, table 3-1, row 3003-H14 (0 up to 1/16 in, 1 T at 1/8 in).
 */
function radiusLimits(strip: readonly Piece[], { material, gauge }: Asked): Finding[] {
  const aluminium = material.metal === 'aluminium';
  const share = aluminium ? (gauge.thicknessMm > 1.6 ? 1 : 0) : SHARP_RADIUS;
  const least = share * gauge.thicknessMm;
  return strip
    .filter(isFold)
    .filter((fold) => fold.kind === 'bend' && fold.shape.radius < least - 1e-9)
    .map((fold) =>
      finding(
        'warning',
        'minimum radius',
        `Bend ${fold.number} has an inside radius of ${formatBoth(fold.shape.radius)}; under ${formatBoth(least)} it creases or cracks.`,
        'Open the radius, or bend a test piece across the rolling direction.',
        aluminium
          ? 'Aluminum Design Manual 2005, table 3-1, 3003-H14'
          : 'air-forming article in the trade press: sharp below 0.63 T',
      ),
    );
}

/** A drawn radius that the V cannot give: the part would come out sharper and the blank wrong. */
function dieRadius({ part, material }: Asked, machine: Machine): Finding[] {
  if (machine.dieOpeningMm === null) return [];
  const made = airBendRadiusMm(machine.dieOpeningMm, material.metal);
  const at = part.profile.bends.findIndex(({ radiusMm }) => radiusMm !== null && radiusMm > 2 * made);
  const asked = part.profile.bends[at]?.radiusMm;
  if (asked == null) return [];
  return [
    finding(
      'warning',
      'radius made by the V',
      `Bend ${at + 1} asks for an inside radius of ${formatBoth(asked)}; the V of ${machine.name} makes about ${formatBoth(made)}.`,
      'Use a wider V or a radius punch, and check the blank with a test piece.',
      'the 20 % rule of air forming: 16 % of the V in mild steel, 21 % in stainless, 15 % in aluminium',
    ),
  ];
}

function bendForce({ material, gauge, lengthMm }: Asked, machine: Machine, tonnes: number): Finding[] {
  if (machine.dieOpeningMm === null) return [];
  const { thicknessMm } = gauge;
  const { tensileMpa } = material;
  const kn = airBendKn({ thicknessMm, lengthMm, tensileMpa, dieOpeningMm: machine.dieOpeningMm });
  const needs = kn / KN_PER_TONNE;
  if (needs * CHART_SPREAD <= tonnes) return [];
  const over = needs > tonnes;
  return [
    finding(
      over ? 'stop' : 'warning',
      'bending force',
      `Bending needs about ${needs.toFixed(1)} t over ${formatBoth(lengthMm)}; ${machine.name} has ${tonnes} t.`,
      over
        ? 'Use a wider V, a stronger machine or shorter pieces.'
        : "Check the tool and machine makers' charts first.",
      '575 × T²/V tons a foot, 60 ksi; charts differ by a fifth',
    ),
  ];
}

function hemForce({ material, gauge, lengthMm }: Asked, machine: Machine, tonnes: number): Finding[] {
  const { low, high } = flattenHemKn({
    thicknessMm: gauge.thicknessMm,
    lengthMm,
    tensileMpa: material.tensileMpa,
  });
  const [least, most] = [low / KN_PER_TONNE, high / KN_PER_TONNE];
  if (most <= tonnes) return [];
  return [
    finding(
      least > tonnes ? 'stop' : 'warning',
      'hem flattening force',
      `Flattening a hem needs ${least.toFixed(0)} to ${most.toFixed(0)} t over ${formatBoth(lengthMm)}; ${machine.name} has ${tonnes} t.`,
      'Leave the hem open, make shorter pieces, or flatten it on a stronger machine.',
      "2.5 air bends (hem design guide) up to 300 T tons a foot (die maker's rule of thumb)",
    ),
  ];
}

/** Whether a brake can form the strip: flanges long enough for the V, radii not too tight, force within its rating. */
export function brakeLimits(strip: readonly Piece[], asked: Asked, machine: Machine): Finding[] {
  const folds = strip.filter(isFold);
  if (folds.length === 0) return [];
  const closed = [asked.part.profile.startHem, asked.part.profile.endHem].some(
    (hem) => hem?.kind === 'closed',
  );
  const findings = [
    ...flangeLimits(strip, machine),
    ...radiusLimits(strip, asked),
    ...dieRadius(asked, machine),
  ];
  if (machine.tonnes !== null) {
    findings.push(...bendForce(asked, machine, machine.tonnes));
    if (closed) findings.push(...hemForce(asked, machine, machine.tonnes));
  }
  if (asked.material.kFactor > MAX_PHYSICAL_K) {
    findings.push(
      finding(
        'warning',
        'K-factor',
        `The K-factor of ${asked.material.name} is ${asked.material.kFactor}; above ${MAX_PHYSICAL_K} the real radius is larger than the drawn one.`,
        'Measure a test piece and correct the radius or the K-factor.',
        COMMON_PRACTICE,
      ),
    );
  }
  return findings;
}
