import type { Machine } from '../shop/machine.ts';
import { formatTonnes } from '../units/force.ts';
import { formatLength } from '../units/length.ts';
import { found, type Asked, type Found } from './finding.ts';
import { airBendKn, flattenHemKn, KN_PER_TONNE } from '../part/tonnage.ts';

/** Bending-force charts differ by a fifth either way. */
const CHART_SPREAD = 1.2;

/** Whether a brake's force bends the part, and flattens its hems. */
export function forceLimits(asked: Asked, machine: Machine): Found[] {
  const { tonnes } = machine;
  if (tonnes === null) return [];
  const { startHem, endHem } = asked.part.profile;
  const closed = [startHem, endHem].some((hem) => hem?.kind === 'closed');
  return [...bendForce(asked, machine, tonnes), ...(closed ? hemForce(asked, machine, tonnes) : [])];
}

function bendForce({ material, gauge, lengthMm, units }: Asked, machine: Machine, tonnes: number): Found[] {
  if (machine.dieOpeningMm === null) return [];
  const { thicknessMm } = gauge;
  const { tensileMpa } = material;
  const kn = airBendKn({ thicknessMm, lengthMm, tensileMpa, dieOpeningMm: machine.dieOpeningMm });
  const needs = kn / KN_PER_TONNE;
  if (needs * CHART_SPREAD <= tonnes) return [];
  const message = `Bending needs about ${formatTonnes(needs.toFixed(1))} over ${formatLength(lengthMm, units)}; ${machine.name} has ${formatTonnes(tonnes)}.`;
  return needs > tonnes
    ? [found('bending force', message, 'Use a wider V, a stronger machine or shorter pieces.')]
    : [found('bending force, margin', message, "Check the tool and machine makers' charts first.")];
}

function hemForce({ material, gauge, lengthMm, units }: Asked, machine: Machine, tonnes: number): Found[] {
  const { low, high } = flattenHemKn({
    thicknessMm: gauge.thicknessMm,
    lengthMm,
    tensileMpa: material.tensileMpa,
  });
  const [least, most] = [low / KN_PER_TONNE, high / KN_PER_TONNE];
  if (most <= tonnes) return [];
  return [
    found(
      least > tonnes ? 'hem flattening force' : 'hem flattening force, margin',
      `Flattening a hem needs ${least.toFixed(0)} to ${formatTonnes(most.toFixed(0))} over ${formatLength(lengthMm, units)}; ${machine.name} has ${formatTonnes(tonnes)}.`,
      'Leave the hem open, make shorter pieces, or flatten it on a stronger machine.',
    ),
  ];
}
