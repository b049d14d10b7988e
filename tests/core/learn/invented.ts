import { standard } from '../../../core/estimate/standards.ts';
import { secondsOf, timeStandards, type Counts } from '../../../core/learn/counts.ts';
import type { Observation } from '../../../core/learn/observation.ts';
import type { Rng } from '../../../core/rng.ts';
import type { Machine } from '../../../core/shop/machine.ts';

/** Invented floors whose true standards are known, so that learning can be held against them. */

export type Learner = Pick<Machine, 'id' | 'stage' | 'standards' | 'timesEdition'>;
export const brake: Learner = { id: 'B1', stage: 'brake', standards: {}, timesEdition: 1 };
export const SCATTER = 0.25;
const WILD = 0.05;

/** Standard normal (Box and Muller, 1958). */
export const normal = (rng: Rng): number =>
  Math.sqrt(-2 * Math.log(1 - rng.next())) * Math.cos(2 * Math.PI * rng.next());

/** A machine whose every time standard is off the present figure by its own factor, within [1/1.6, 1.6]. */
export function trueOf(machine: Learner, rng: Rng): Learner {
  const off = timeStandards(machine).map(
    ({ key }) => [key, standard(machine, key) * 1.6 ** (2 * rng.next() - 1)] as const,
  );
  const standards = Object.fromEntries(off);
  // Nothing could tell these apart: they are met together, so they are off together.
  standards['putDown'] = (standards['pickUp']! * 2) / 3;
  standards['bundle'] = (standards['firstPiece']! * 300) / 360;
  return { ...machine, standards };
}

/** Work of very different kinds: one piece or hundreds, one hit or ten, short or long. */
export function someCounts(rng: Rng): Counts {
  const quantity = Math.ceil(400 ** rng.next());
  const hits = 1 + rng.below(10);
  const length = ['hitShort', 'hitMedium', 'hitLong'][rng.below(3)]!;
  return {
    firstPiece: 1,
    bundle: 1,
    pickUp: quantity,
    putDown: quantity,
    handlingPerKg: quantity * (0.5 + 8 * rng.next()),
    [length]: quantity * hits,
    flip: quantity * rng.below(3),
    turn: quantity * rng.below(3),
  };
}

/** A brake whose shop times hits from pick-up to put-down, so that its work is made of few standards. */
export const plainBrake: Learner = {
  ...brake,
  standards: { pickUp: 0, putDown: 0, handlingPerKg: 0 },
};

/** Its work, of three kinds: trials of a piece or two, long runs of short pieces, and of long ones. */
export function plainCounts(rng: Rng): Counts {
  const kind = rng.below(3);
  const quantity = kind === 0 ? 1 + rng.below(2) : 150 + rng.below(250);
  const hits = 6 + rng.below(7);
  return {
    firstPiece: 1,
    bundle: 1,
    [kind === 2 ? 'hitLong' : 'hitShort']: quantity * hits,
  };
}

/** Finished operations of a machine: true time × log-normal scatter, a few wild (3 to 10 times as long). */
export function finished(
  truth: Learner,
  count: number,
  rng: Rng,
  work: (rng: Rng) => Counts = someCounts,
): Observation[] {
  return Array.from({ length: count }, (_, k) => {
    const counts = work(rng);
    const wild = rng.next() < WILD ? 3 + 7 * rng.next() : 1;
    const actual = secondsOf(truth, counts) * Math.exp(SCATTER * normal(rng)) * wild;
    return {
      id: `${1000 + k}/1:brake`,
      machineId: truth.id,
      at: 1_800_000_000 + 3600 * k,
      counts,
      actualSeconds: Math.round(actual),
    };
  });
}
