import { blankOf, type Blank } from '../../../../core/part/blank.ts';
import { drawProfile, type Drawing } from '../../../../core/part/drawing.ts';
import type { Finding } from '../../../../core/limits/finding.ts';
import { formingOf, blankBasisOf } from '../../../../core/part/forming.ts';
import { girth, hits, type GirthStep } from '../../../../core/part/girth.ts';
import { materialCost, type MaterialCost } from '../../../../core/part/material-cost.ts';
import { checkPart } from '../../../../core/limits/limits.ts';
import type { Gauge, Material } from '../../../../core/material/material.ts';
import { part as partSchema, type Part } from '../../../../core/part/part.ts';
import { sentence } from '../../../../core/result.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { bendListOf, type BendList } from '../../../../core/report/bend-words.ts';
import { routingOf } from '../../../../core/planning/routing.ts';

export interface MachineFindings {
  readonly machineName: string;
  readonly findings: readonly Finding[];
}

/** What a part comes to in one metal. */
export interface PartFigures {
  readonly drawing: Drawing;
  readonly blank: Blank;
  /** The metal's cost in the stock kept; null when none of it is. */
  readonly cost: MaterialCost | null;
  readonly steps: readonly GirthStep[];
  readonly hits: number;
  readonly bends: BendList;
  /** One a machine that the part passes, shears first. */
  readonly machines: readonly MachineFindings[];
}

/**
 * A part's figures while it is being typed.
 * @returns the figures, or a sentence that says what is still missing
 */
export function partFigures(shop: Shop, part: Part, material: Material, gauge: Gauge): PartFigures | string {
  const profile = partSchema.shape.profile.safeParse(part.profile);
  if (!profile.success || !(part.lengthMm > 0))
    return 'The drawing and the figures appear when every length and angle is given.';
  const basis = blankBasisOf(shop);
  const forming = formingOf(material, gauge, basis);
  const drawing = drawProfile(profile.data, forming);
  if (!drawing.ok) return sentence(drawing.issues);
  const width = girth(profile.data, { ...forming, rule: basis.girthRule });
  if (!width.ok) return sentence(width.issues);
  const blank = blankOf({ id: part.id, lengthMm: part.lengthMm }, part, material, gauge, basis);
  if (!blank.ok) return sentence(blank.issues);
  const { partRules } = shop.settings;
  const asked = { material, gauge, lengthMm: part.lengthMm, partRules, ...basis };
  const machines = routingOf(part).flatMap((stage) =>
    shop.machine.filter((machine) => machine.stage === stage),
  );
  return {
    drawing: drawing.value,
    blank: blank.value,
    cost: materialCost(blank.value, shop.sheet, material.id, gauge.label),
    steps: width.value.steps,
    hits: hits(profile.data),
    bends: bendListOf(part, material, gauge, basis),
    machines: machines.map((machine) => ({
      machineName: machine.name,
      findings: checkPart(part, asked, machine),
    })),
  };
}
