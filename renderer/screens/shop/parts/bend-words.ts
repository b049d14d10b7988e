import type { BendOrder, PlacedStep } from '../../../../core/part/bend-order.ts';
import type { Profile } from '../../../../core/part/profile.ts';
import { times } from '../../../../core/units/count.ts';

/** A step of the brake in words, for screens and paper. */
interface BendRow {
  readonly step: string;
  readonly angle: string;
  /** Which way the painted side looks on the die. */
  readonly paint: string;
  /** The edge at the back gauge. */
  readonly back: string;
  /** What is done with the piece before it; '' for nothing. */
  readonly before: string;
  readonly collides: boolean;
}

const beforeIt = ({ flip, turn }: PlacedStep): string => {
  if (flip) return turn ? 'turn over and end for end' : 'turn over';
  return turn ? 'turn end for end' : '';
};

/** Degrees as typed: a tenth at most, so that the two add up to 180. */
const bothAngles = (angle: number): string => {
  const turned = Math.round(angle * 10) / 10;
  return `${turned}° turned, ${Math.round((180 - turned) * 10) / 10}° included`;
};

/** A square corner reads the same both ways; others do not, so both are said. A hem that stays open is closed onto a spacer of its gap. */
function angleOf({ step, angle }: PlacedStep, { startHem, endHem }: Profile): string {
  const hem = step.endsWith('start hem') ? startHem : step.endsWith('end hem') ? endHem : null;
  if (angle < 180 || hem === null) return bothAngles(angle);
  return hem.kind === 'closed' ? 'flat' : 'to its gap';
}

export const bendRows = ({ steps }: BendOrder, profile: Profile): BendRow[] =>
  steps.map((step) => ({
    step: step.step,
    angle: angleOf(step, profile),
    paint: step.paintUp ? 'up' : 'down',
    back: step.back === 'start' ? 'first' : 'last',
    before: beforeIt(step),
    collides: step.collides,
  }));

/** "Turned over once, end for end 2 times." */
export function movesSentence({ flips, turns }: BendOrder): string {
  if (flips + turns === 0) return 'Not turned at all.';
  const parts = [flips > 0 && `over ${times(flips)}`, turns > 0 && `end for end ${times(turns)}`];
  return `Turned ${parts.filter(Boolean).join(', ')}.`;
}
