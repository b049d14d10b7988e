import { orderOfPart, type BendOrder, type PlacedStep } from '../part/bend-order.ts';
import { formingOf, type BlankBasis, type Forming } from '../part/forming.ts';
import { hemGapWords } from '../part/hem.ts';
import { houseVMm } from '../part/house-v.ts';
import type { Part } from '../part/part.ts';
import type { Profile } from '../part/profile.ts';
import { hemFold } from '../part/strip.ts';
import type { Gauge, Material } from '../material/material.ts';
import { times } from '../units/count.ts';
import { writeNumber } from '../units/number.ts';

/** A step of the brake in words, for screens and paper. */
export interface BendRow {
  readonly step: string;
  /** Which way the profile turns there as it is drawn: a bend's flange, a hem's lip. */
  readonly direction: 'up' | 'down';
  readonly angle: string;
  /** Which way the painted side looks on the die. */
  readonly paint: string;
  /** The edge at the back gauge. */
  readonly back: string;
  /** What is done with the piece before it; '' for nothing. */
  readonly before: string;
  readonly collides: boolean;
}

/** How a part is bent, the same in the editor, on paper and on the floor. */
export interface BendList {
  readonly order: BendOrder;
  readonly rows: readonly BendRow[];
  /** What to know of its hems, a sentence; usually empty. */
  readonly note: string;
}

const beforeIt = ({ flip, turn }: PlacedStep): string => {
  if (flip) return turn ? 'turn over and end for end' : 'turn over';
  return turn ? 'turn end for end' : '';
};

/** Degrees as typed: a tenth at most, so that the two add up to 180. */
const tenth = (angle: number): number => Math.round(angle * 10) / 10;
const degreesOf = (angle: number, { units }: Forming): string => `${writeNumber(angle, units.decimals, 1)}°`;
const bothAngles = (angle: number, forming: Forming): string =>
  `${degreesOf(angle, forming)} turned, ${degreesOf(180 - tenth(angle), forming)} included`;

/** A square corner reads the same both ways; others do not, so both are said. What closes a hem has a figure of its own. */
function angleOf({ step, angle }: PlacedStep, { startHem, endHem }: Profile, forming: Forming): string {
  const hem = step.endsWith('start hem') ? startHem : step.endsWith('end hem') ? endHem : null;
  if (angle < 180 || hem === null) return bothAngles(angle, forming);
  if (hem.kind === 'closed') return 'flat';
  const across = hemGapWords(hem, forming);
  if (hem.kind === 'open') return `to a gap of ${across}`;
  return `${degreesOf(hemFold(hem, forming).angle, forming)} turned, edge on the flange, eye ${across}`;
}

/** The steps of an order in words. */
export const bendRows = ({ steps }: BendOrder, profile: Profile, forming: Forming): BendRow[] =>
  steps.map((step) => ({
    step: step.step,
    direction: step.direction,
    angle: angleOf(step, profile, forming),
    paint: step.paintUp ? 'up' : 'down',
    back: step.back === 'start' ? 'first' : 'last',
    before: beforeIt(step),
    collides: step.collides,
  }));

const TEARDROP =
  'The blank of a teardrop hem is plain geometry, which metal follows only roughly: make a test piece first.';

/**
 * A part's bend list in a metal, in the house V of its gauge: so it is one list on every brake.
 * @returns no rows for a part that is sold flat
 */
export function bendListOf(
  part: Pick<Part, 'profile' | 'bendOrder'>,
  material: Pick<Material, 'metal' | 'tensileMpa' | 'kFactor' | 'deductions'>,
  gauge: Pick<Gauge, 'label' | 'thicknessMm' | 'vMm'>,
  basis: BlankBasis,
): BendList {
  const { profile } = part;
  const order = orderOfPart(part, houseVMm(gauge, basis));
  const isTeardrop = [profile.startHem, profile.endHem].some((hem) => hem?.kind === 'teardrop');
  return {
    order,
    rows: bendRows(order, profile, formingOf(material, gauge, basis)),
    note: isTeardrop ? TEARDROP : '',
  };
}

/** "Turned over once, end for end 2 times." */
export function movesSentence({ flips, turns }: BendOrder): string {
  if (flips + turns === 0) return 'Not turned at all.';
  const parts = [flips > 0 && `over ${times(flips)}`, turns > 0 && `end for end ${times(turns)}`];
  return `Turned ${parts.filter(Boolean).join(', ')}.`;
}
