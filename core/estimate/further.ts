import type { Machine } from '../shop/machine.ts';
import { DAY } from '../units/duration.ts';
import { estimateOf, reason, type Estimate } from './estimate.ts';
import { standard, type Timed } from './standards.ts';

interface BenchWork {
  readonly machine: Timed & Pick<Machine, 'crew'>;
  readonly quantity: number;
  /** What the part says of its own; null: by the bench's standard. */
  readonly secondsPerPiece: number | null;
}

/** Time of a further step at a bench or by a person: getting ready once a line, and each piece. Whole seconds with their reasons. */
export const estimateBench = ({ machine, quantity, secondsPerPiece }: BenchWork): Estimate =>
  estimateOf(machine, { people: machine.crew, heavyBy: [] }, [
    reason('get ready and clear away', 1, standard(machine, 'perLine')),
    reason('each piece', quantity, secondsPerPiece ?? standard(machine, 'perPiece')),
  ]);

/**
 * How long pieces are away for outside work: whole days, counted on the days on which the outside shop is open, however
 * many pieces there are. Nobody of the shop is at work on them.
 * @param days what the part says of its own; null: by the outside shop's standard
 */
export function estimateAway(machine: Timed, days: number | null): Estimate {
  const away = reason('days away', days ?? standard(machine, 'days'), DAY);
  return { seconds: away.seconds, people: 0, heavyBy: [], reasons: [away] };
}
