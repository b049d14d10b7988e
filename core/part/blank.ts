import type { Gauge, Material } from '../material/material.ts';
import type { Part } from './part.ts';
import { err, ok, type Result } from '../result.ts';
import { formingOf, type BlankBasis } from './forming.ts';
import { girth } from './girth.ts';

/** The flat piece before bending; figures for one piece. */
export interface Blank {
  readonly girthMm: number;
  readonly lengthMm: number;
  readonly areaM2: number;
  readonly weightKg: number;
  readonly thicknessMm: number;
}

/**
 * The blank that one piece of an order line is bent from.
 * @param gauge the material's own record: stated thickness and weight, not the table's
 * @param basis how the shop computes blanks (core/part/forming.ts `blankBasisOf`)
 * @returns one piece's sizes; or problems named by line and part
 */
export function blankOf(
  line: { readonly id: string; readonly lengthMm: number },
  part: Pick<Part, 'id' | 'profile'>,
  material: Pick<Material, 'metal' | 'tensileMpa' | 'kFactor' | 'deductions'>,
  gauge: Gauge,
  basis: BlankBasis,
): Result<Blank> {
  const width = girth(part.profile, { ...formingOf(material, gauge, basis), rule: basis.girthRule });
  if (!width.ok) {
    return err(...width.issues.map((p) => ({ ...p, subject: `line ${line.id}, part ${part.id}` })));
  }
  const { girthMm } = width.value;
  const areaM2 = (girthMm * line.lengthMm) / 1e6;
  return ok({
    ...{ girthMm, lengthMm: line.lengthMm, areaM2 },
    ...{ weightKg: areaM2 * gauge.kgPerM2, thicknessMm: gauge.thicknessMm },
  });
}
