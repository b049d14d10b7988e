import type { Machine } from '../shop/machine.ts';
import { formatLength, formatThickness, type Units } from '../units/length.ts';
import { setback, type BendShape } from '../part/bend.ts';
import { found, type Asked, type Found } from './finding.ts';
import { forceLimits } from './force-limits.ts';
import { formingIn, formingOf, type Forming } from '../part/forming.ts';
import { girth } from '../part/girth.ts';
import { leastRadiusMm } from '../part/min-radius.ts';
import { orderLimits } from './order-limits.ts';
import { airBendRadiusMm, formedRadiusMm } from '../part/radius.ts';
import { isFold, type Flat, type Piece } from '../part/strip.ts';
import type { Tool } from '../part/tool.ts';
import { writeNumber, writeFixed } from '../units/number.ts';

/** A flange must span the V from its middle to the shoulder: share of the opening, standard and acute dies. */
const MIN_FLANGE = { square: 0.7, acute: 1.1 };
const MAX_PHYSICAL_K = 0.5;
/** Blanks that differ by less are cut the same. */
const SAME_BLANK_MM = 0.1;

/** The least outside flange beside a fold. Sources: trade magazine design rules (0.70 V, 1.10 V acute; 2T + R). */
function minFlangeMm({ angle, radius, thickness }: BendShape, dieOpeningMm: number | null): number {
  const share = angle > 90 ? MIN_FLANGE.acute : MIN_FLANGE.square;
  return Math.max(2 * thickness + radius, share * (dieOpeningMm ?? 0));
}

function flangeLimits(strip: readonly Piece[], machine: Machine, units: Units): Found[] {
  return strip.flatMap((piece, i) => {
    if (isFold(piece)) return [];
    const beside = [strip[i - 1], strip[i + 1]].filter(isFold);
    const outside = beside.reduce((sum, fold) => sum + setback('outside', fold.shape), piece.lengthMm);
    const needs = Math.max(0, ...beside.map((fold) => minFlangeMm(fold.shape, machine.dieOpeningMm)));
    if (outside >= needs) return [];
    return [
      found(
        'minimum flange',
        `${nameOf(piece)} is ${formatLength(outside, units)} over the outside; the V of ${machine.name} needs ${formatLength(needs, units)}.`,
        'Use a narrower V, or make the flange longer.',
      ),
    ];
  });
}

const nameOf = (flat: Flat): string =>
  flat.kind === 'lip' ? `The hem lip on flange ${flat.number}` : `Flange ${flat.number}`;

/** Long trim is bent along the sheet, parallel to its rolling direction, where metal cracks first. */
const TEST_ALONG = 'prove it on a test piece bent along the rolling direction, as long trim is';

/** Whether the metal stands the radii that its bends really get: an air bend takes its radius from the V, not from the drawing. */
function radiusLimits(
  strip: readonly Piece[],
  { material, gauge, units }: Asked,
  machine: Machine,
  punch: Tool | null,
): Found[] {
  const least = leastRadiusMm(material, gauge.thicknessMm);
  const bends = strip.filter(isFold).filter(({ kind }) => kind === 'bend');
  const { dieOpeningMm, name } = machine;
  const made =
    dieOpeningMm === null
      ? bends.map(({ number, shape }) => ({ radius: shape.radius, what: `Bend ${number} has` }))
      : bends.slice(0, 1).map(() => ({
          radius: formedRadiusMm(dieOpeningMm, punch?.radiusMm ?? null, material),
          what: `The V of ${name} makes`,
        }));
  return made
    .filter(({ radius }) => radius < least - 1e-9)
    .map(({ radius, what }) =>
      found(
        'minimum radius',
        `${what} an inside radius of ${formatLength(radius, units)}; under ${formatLength(least, units)} ${material.name} creases or cracks.`,
        `Use a wider V or a radius punch, and ${TEST_ALONG}.`,
      ),
    );
}

/** A drawn radius off by this factor either way is another than the V makes. */
const OTHER_RADIUS = 2;

/** A drawn radius that V and punch do not give: the part would come out sharper or rounder, and the blank wrong. */
function dieRadius({ part, material, units }: Asked, machine: Machine, punch: Tool | null): Found[] {
  if (machine.dieOpeningMm === null) return [];
  const made = formedRadiusMm(machine.dieOpeningMm, punch?.radiusMm ?? null, material);
  const at = part.profile.bends.findIndex(
    ({ radiusMm }) => radiusMm !== null && (radiusMm > OTHER_RADIUS * made || radiusMm * OTHER_RADIUS < made),
  );
  const asked = part.profile.bends[at]?.radiusMm;
  if (asked == null) return [];
  return [
    found(
      'radius made by the V',
      `Bend ${at + 1} asks for an inside radius of ${formatLength(asked, units)}; the V of ${machine.name} makes about ${formatLength(made, units)}.`,
      asked > made
        ? 'Use a wider V or a radius punch, and check the blank with a test piece.'
        : 'Use a narrower V, or leave the radius to the V, and check the blank with a test piece.',
    ),
  ];
}

/** A V that is narrower creases the metal and overloads the tools; in a wider one the angle wanders. Shares of T. */
const V_PER_THICKNESS = { least: 6, most: 15 };

function openingForThickness({ gauge, units }: Asked, machine: Machine): Found[] {
  const { dieOpeningMm, name } = machine;
  if (dieOpeningMm === null) return [];
  const times = dieOpeningMm / gauge.thicknessMm;
  if (times >= V_PER_THICKNESS.least && times <= V_PER_THICKNESS.most) return [];
  return [
    found(
      'V for the thickness',
      `The V of ${name}, ${formatLength(dieOpeningMm, units)}, is ${writeFixed(times, 1, units)} times the metal’s ${formatThickness(gauge.thicknessMm, units)}; ${writeNumber(V_PER_THICKNESS.least, units.decimals)} to ${writeNumber(V_PER_THICKNESS.most, units.decimals)} times is usual.`,
      times < V_PER_THICKNESS.least
        ? 'Use a wider V: force and marks grow as it narrows.'
        : 'Use a narrower V: angle and radius wander in a wide one.',
    ),
  ];
}

/** What a part's blank comes to in a metal as it forms; null: the bends leave nothing of a flange. */
function widthOf({ part, girthRule: rule }: Asked, forming: Forming): number | null {
  const width = girth(part.profile, { ...forming, rule });
  return width.ok ? width.value.girthMm : null;
}

/** A tip that is rounder than what the V makes opens the bends that leave their radius to the V, for which the blank is cut. */
function roundTip(asked: Asked, machine: Machine, punch: Tool | null): Found[] {
  const { material, gauge, units } = asked;
  const { dieOpeningMm, name } = machine;
  const tipMm = punch?.radiusMm ?? 0;
  if (punch === null || dieOpeningMm === null) return [];
  const made = airBendRadiusMm(dieOpeningMm, material);
  if (tipMm <= made) return [];
  const cut = widthOf(asked, formingOf(material, gauge, asked));
  const here = widthOf(asked, { ...formingIn(material, gauge, dieOpeningMm, asked), radiusMm: tipMm });
  if (cut === null || here === null || Math.abs(cut - here) < SAME_BLANK_MM) return [];
  const [tip, byV, blank, needs] = [tipMm, made, cut, here].map((mm) => formatLength(mm, units));
  return [
    found(
      'punch tip',
      `The tip of ${punch.name} on ${name} has a radius of ${tip}; the V alone makes ${byV}. Bends open to the tip: the blank is cut ${blank} wide and would have to be ${needs}.`,
      'Use a sharper punch, draw the radius on the part, or measure the deduction with this punch.',
    ),
  ];
}

/** The one blank is cut for one V; measured deductions or the radius that it makes may say that this machine's V needs another. */
function otherV(asked: Asked, machine: Machine): Found[] {
  const { material, gauge, girthRule, units } = asked;
  const measured = material.deductions.length > 0;
  if (!measured && girthRule !== 'computedByV') return [];
  const cut = widthOf(asked, formingOf(material, gauge, asked));
  const here = widthOf(asked, formingIn(material, gauge, machine.dieOpeningMm, asked));
  if (cut === null || here === null || Math.abs(cut - here) < SAME_BLANK_MM) return [];
  return [
    found(
      'other V measured',
      `The blank is cut ${formatLength(cut, units)} wide, for another V; by ${measured ? 'your measured deductions' : 'the radius that its V makes'} ${machine.name} needs ${formatLength(here, units)}.`,
      'Set up the V that the blank is cut for, or expect the last flange to differ.',
    ),
  ];
}

function kFactor(strip: readonly Piece[], { material, units }: Asked): Found[] {
  const measured = strip.filter(isFold).filter((fold) => fold.shape.measuredMm !== null);
  const odd = measured.find(({ shape }) => shape.kFactor > MAX_PHYSICAL_K || shape.kFactor < 0);
  const advice = 'Measure a test piece and correct the radius, the deduction or the K-factor.';
  if (odd)
    return [
      found(
        'K-factor',
        `Your measured deduction for ${odd.shape.angle}° makes the K-factor ${writeFixed(odd.shape.kFactor, 2, units)}; between 0 and ${writeNumber(MAX_PHYSICAL_K, units.decimals)} is usual.`,
        advice,
      ),
    ];
  if (material.kFactor <= MAX_PHYSICAL_K) return [];
  return [
    found(
      'K-factor',
      `The K-factor of ${material.name} is ${writeNumber(material.kFactor, units.decimals)}; above ${writeNumber(MAX_PHYSICAL_K, units.decimals)} the real radius is larger than the drawn one.`,
      advice,
    ),
  ];
}

/**
 * Whether a brake can form the strip: flanges long enough for the V, radii not too tight, force, order, blank.
 * @param punch the one that is set up for it; null: none is on record
 */
export function brakeLimits(
  strip: readonly Piece[],
  asked: Asked,
  machine: Machine,
  punch: Tool | null,
): Found[] {
  if (!strip.some(isFold)) return [];
  return [
    ...flangeLimits(strip, machine, asked.units),
    ...radiusLimits(strip, asked, machine, punch),
    ...dieRadius(asked, machine, punch),
    ...roundTip(asked, machine, punch),
    ...openingForThickness(asked, machine),
    ...forceLimits(asked, machine),
    ...orderLimits(asked, machine),
    ...otherV(asked, machine),
    ...kFactor(strip, asked),
  ];
}
