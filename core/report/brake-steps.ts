import { gaugedAt } from '../part/back-gauge.ts';
import { formingOf, type BlankBasis } from '../part/forming.ts';
import type { Part } from '../part/part.ts';
import type { Gauge, Material } from '../material/material.ts';
import { formatCutLength } from '../units/length.ts';
import { bendListOf, type BendRow } from './bend-words.ts';

/** One step of the brake, for the person who makes it. */
export interface BrakeStep extends BendRow {
  /** What lies at the back gauge, "Flange 2 at the gauge"; '' where nothing is gauged. */
  readonly gauged: string;
  /** Bend line to the stops, figures apart from their unit; '' without a figure. */
  readonly figures: string;
  readonly unit: string;
  /** What to know of that figure, a sentence; '' for nothing. */
  readonly note: string;
}

const SLANTS = 'It slants at the stops: set the gauge by a test piece.';
const NOT_GAUGED = 'Closed under flat tools, not gauged.';

/** A part's bend list, step by step, with what lies at the gauge. @returns none for a part that is sold flat */
export function brakeSteps(
  part: Pick<Part, 'profile' | 'bendOrder'>,
  material: Pick<Material, 'metal' | 'tensileMpa' | 'kFactor' | 'deductions'>,
  gauge: Pick<Gauge, 'label' | 'thicknessMm' | 'vMm'>,
  basis: BlankBasis,
): BrakeStep[] {
  const { order, rows } = bendListOf(part, material, gauge, basis);
  const gauged = gaugedAt(order, part.profile, formingOf(material, gauge, basis));
  const { units } = basis.units;
  return rows.map((row, n) => {
    const { what, mm } = gauged[n]!;
    return {
      ...row,
      gauged: what === '' ? '' : `${what.charAt(0).toUpperCase()}${what.slice(1)} at the gauge`,
      figures: mm === null ? '' : formatCutLength(mm, basis.units).replace(` ${units}`, ''),
      unit: units,
      note: what === '' ? NOT_GAUGED : mm === null ? SLANTS : '',
    };
  });
}
