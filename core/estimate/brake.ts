import type { Blank } from '../part/blank.ts';
import { orderOfPart } from '../part/bend-order.ts';
import { hits } from '../part/girth.ts';
import type { Machine } from '../shop/machine.ts';
import type { Part } from '../part/part.ts';
import { MM_PER_FOOT } from '../units/length.ts';
import { estimateOf, peopleFor, reason, type Estimate } from './estimate.ts';
import { firstPiecesALine } from './first-piece.ts';
import { standard, type Timed } from './standards.ts';

interface BrakeWork {
  readonly part: Pick<Part, 'profile' | 'bendOrder'>;
  readonly blank: Blank;
  readonly quantity: number;
  readonly machine: Timed & Pick<Machine, 'crew' | 'dieOpeningMm'>;
}

/** To a thousandth of a foot, so that 72 in turned to millimetres is still 6 ft. */
const feetOf = (lengthMm: number): number => Math.round((lengthMm / MM_PER_FOOT) * 1000) / 1000;

/** Long pieces take longer to present to the tools (common practice, no source). */
function hitKey(lengthMm: number): string {
  const feet = feetOf(lengthMm);
  if (feet < 2) return 'hitShort';
  return feet <= 6 ? 'hitMedium' : 'hitLong';
}

/** A long piece is swung round in a wide arc; turned over it rolls about its length, however long (common practice, no source). */
const turnKey = (lengthMm: number): string => (feetOf(lengthMm) <= 6 ? 'turn' : 'turnLong');

/**
 * Machine time to bend a line's pieces, changeover left out. Flips and turns are those of the order in which the part
 * is bent (core/part/bend-order.ts).
 * @returns whole seconds with their reasons
 */
export function estimateBrake({ part, blank, quantity, machine }: BrakeWork): Estimate {
  const { flips, turns } = orderOfPart(part, machine.dieOpeningMm);
  const each = (key: string): number => standard(machine, key);
  return estimateOf(machine, peopleFor(machine, [blank]), [
    reason('first piece: form, measure, adjust', firstPiecesALine(machine), each('firstPiece')),
    reason('pick up and put down', quantity, each('pickUp') + each('putDown')),
    reason('handling by weight, per piece', quantity, each('handlingPerKg') * blank.weightKg),
    reason('hit', quantity * hits(part.profile), each(hitKey(blank.lengthMm))),
    reason('turn over', quantity * flips, each('flip')),
    reason('turn end for end', quantity * turns, each(turnKey(blank.lengthMm))),
    reason('bundle and label', each('bundleOnClock'), each('bundle')),
  ]);
}
