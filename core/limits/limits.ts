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
import { stripOf } from '../part/strip.ts';

/**
 * Thickest metal of a given strength that a machine rated in mild steel takes: rated × √(60 ksi / UTS), never more than
 * rated for soft metal.
 * Source: shearing force grows with T² and with strength (freely published shear charts); a cautious shop uses 60/UTS.
 */
export const deratedThicknessMm = (ratedMm: number, tensileMpa: number): number =>
  ratedMm * Math.min(1, Math.sqrt(MILD_STEEL_MPA / tensileMpa));

function capacity({ material, gauge, lengthMm, units }: Asked, machine: Machine): Found[] {
  const all: Found[] = [];
  if (lengthMm > machine.maxLengthMm) {
    all.push(
      found(
        'length',
        `A piece of ${formatLength(lengthMm, units)} is longer than ${machine.name} takes, ${formatLength(machine.maxLengthMm, units)}.`,
        'Choose a longer machine or make the piece in two lengths.',
      ),
    );
  }
  const limit = deratedThicknessMm(machine.maxThicknessMm, material.tensileMpa);
  // A tenth of a micron of grace, so that metal of exactly the rated thickness passes.
  if (gauge.thicknessMm > limit + 1e-4) {
    all.push(
      found(
        'thickness',
        `${metalWords({ gauge: gauge.label, material: material.name })} is ${formatThickness(gauge.thicknessMm, units)} thick; ${machine.name} takes ${formatThickness(limit, units)} of that metal.`,
        'Choose a stronger machine or a lighter gauge.',
      ),
    );
  }
  return all;
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
  const strip = stripOf(part.profile, forming);
  if (!strip.ok) return impossible(strip.issues);
  const brake = setUpFor(asked, machine);
  const tools = hits(part.profile) === 0 ? [] : toolLimits(brake, asked);
  return judged([...tools, ...brakeLimits(strip.value, asked, brake.machine)], partRules);
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
