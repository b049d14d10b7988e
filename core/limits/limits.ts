import type { Machine } from '../shop/machine.ts';
import { metalWords } from '../shop/metal-name.ts';
import type { Issue } from '../result.ts';
import { brakeLimits } from './brake-limits.ts';
import { found, judged, type Asked, type Finding, type Found } from './finding.ts';
import { formingOf } from '../part/forming.ts';
import { formatLength, formatThickness } from '../units/length.ts';
import { girth, hits } from '../part/girth.ts';
import { MILD_STEEL_MPA } from '../part/radius.ts';
import { shearLimits } from './shear-limits.ts';
import { setUpFor, toolLimits } from './tool-limits.ts';
import { isFurther } from '../part/stage.ts';
import { stripOf } from '../part/strip.ts';

/**
 * Thickest metal of a given strength that a machine rated in mild steel takes: rated × √(60 ksi / UTS), never more than
 * rated for soft metal.
 * Source: shearing force grows with T² and with strength (freely published shear charts); a cautious shop uses 60/UTS.
 */
export const deratedThicknessMm = (ratedMm: number, tensileMpa: number): number =>
  ratedMm * Math.min(1, Math.sqrt(MILD_STEEL_MPA / tensileMpa));

/**
 * The same by the cautious rule, in proportion to strength. Shear makers' plates lie between the two: one takes 1.6, 1.2 and
 * 0.8 mm of metal of 400, 600 and 800 MPa.
 */
export const cautiousThicknessMm = (ratedMm: number, tensileMpa: number): number =>
  ratedMm * Math.min(1, MILD_STEEL_MPA / tensileMpa);

function capacity({ material, gauge, lengthMm, units }: Asked, machine: Machine): Found[] {
  const all: Found[] = [];
  if (machine.maxLengthMm !== null && lengthMm > machine.maxLengthMm) {
    all.push(
      found(
        'length',
        `A piece of ${formatLength(lengthMm, units)} is longer than ${machine.name} takes, ${formatLength(machine.maxLengthMm, units)}.`,
        'Choose a longer machine or make the piece in two lengths.',
      ),
    );
  }
  return [...all, ...thickness({ material, gauge, units }, machine)];
}

/** A tenth of a micron of grace, so that metal of exactly the rated thickness passes. */
const GRACE_MM = 1e-4;

function thickness(
  { material, gauge, units }: Pick<Asked, 'material' | 'gauge' | 'units'>,
  machine: Machine,
): Found[] {
  const { name, stage, maxThicknessMm } = machine;
  if (maxThicknessMm === null) return [];
  const limit = deratedThicknessMm(maxThicknessMm, material.tensileMpa);
  const cautious = cautiousThicknessMm(maxThicknessMm, material.tensileMpa);
  const metal = `${metalWords({ gauge: gauge.label, material: material.name })} is ${formatThickness(gauge.thicknessMm, units)} thick`;
  if (gauge.thicknessMm > limit + GRACE_MM)
    return [
      found(
        'thickness',
        `${metal}; ${name} takes ${formatThickness(limit, units)} of that metal.`,
        'Choose a stronger machine or a lighter gauge.',
      ),
    ];
  // A brake's force is worked out for the bend itself (core/limits/force-limits.ts).
  if (stage !== 'shear' || gauge.thicknessMm <= cautious + GRACE_MM) return [];
  return [
    found(
      'thickness, margin',
      `${metal}; ${name} takes ${formatThickness(cautious, units)} to ${formatThickness(limit, units)} of that metal, by the rule that its plate follows.`,
      'Look on the machine plate for metal of that strength before it is cut.',
    ),
  ];
}

const impossible = (issues: readonly Issue[]): Finding[] =>
  issues.map(({ message, advice }) => ({
    severity: 'stop',
    rule: 'geometry',
    message,
    advice,
    source: 'tangent lines of the bends would cross',
  }));

/** What the machine's stage has against the part. */
function stageLimits(asked: Asked, machine: Machine): Finding[] {
  const { part, lengthMm, girthRule: rule, partRules, material, gauge } = asked;
  const forming = formingOf(material, gauge, asked);
  if (machine.stage === 'shear') {
    const width = girth(part.profile, { ...forming, rule });
    return width.ok
      ? judged(shearLimits({ girthMm: width.value.girthMm, lengthMm }, machine, asked.units), partRules)
      : impossible(width.issues);
  }
  if (isFurther(machine.stage)) return [];
  const strip = stripOf(part.profile, forming);
  if (!strip.ok) return impossible(strip.issues);
  const brake = setUpFor(asked, machine);
  const tools = hits(part.profile) === 0 ? [] : toolLimits(brake, asked);
  const punch = brake.choice?.set?.punch ?? null;
  return judged([...tools, ...brakeLimits(strip.value, asked, brake.machine, punch)], partRules);
}

/**
 * Every rule that a part breaks or brushes against on a machine: length, thickness, and per stage strip width and
 * back-gauge reach, or flanges, radii, force and bend order. Each as the shop takes it: stop, warning or off
 * (core/part/rules.ts). It informs; the machine maker's manual and local code decide.
 * @returns findings, stops first; empty when nothing speaks against it
 */
export function checkPart(part: Asked['part'], asked: Omit<Asked, 'part'>, machine: Machine): Finding[] {
  const all: Asked = { part, ...asked };
  return [...judged(capacity(all, machine), asked.partRules), ...stageLimits(all, machine)].toSorted(
    (a, b) => Number(a.severity === 'warning') - Number(b.severity === 'warning'),
  );
}
