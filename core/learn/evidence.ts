import type { Machine } from '../shop/machine.ts';
import { err, ok, issue, type Result } from '../result.ts';
import { secondsOf } from './counts.ts';
import { learnStandards, standardsWith } from './learn-standards.ts';
import { readObservations, type Observation } from './observation.ts';
import { median } from './robust.ts';
import type { Proposal } from './propose.ts';

type Learner = Pick<Machine, 'id' | 'stage' | 'standards' | 'timesEdition'>;

/** One point of the chart "estimate against actual", whole and broken seconds as they come. */
export interface Evidence {
  readonly id: string;
  readonly actual: number;
  readonly present: number;
  readonly proposed: number;
}

/** What each finished operation of a machine took, and what the present and the proposed standards say, by time. */
export function evidenceOf(
  machine: Learner,
  observations: readonly Observation[],
  proposals: readonly Proposal[],
): Result<Evidence[]> {
  const read = readObservations(machine, observations);
  if (!read.ok) return read;
  const learned = { ...machine, standards: standardsWith(machine, proposals) };
  return ok(
    read.value.usable.map(({ id, counts, actualSeconds }) => ({
      id,
      actual: actualSeconds,
      present: secondsOf(machine, counts),
      proposed: secondsOf(learned, counts),
    })),
  );
}

/** How well operations that learning had not seen were foretold. */
export interface LateChange {
  /** Operations learned from, and the later ones foretold. */
  readonly learnedFrom: number;
  readonly foretold: number;
  /** Median of |estimate − actual| / actual over the foretold: with the present standards, and with the learned. */
  readonly before: number;
  readonly after: number;
}

const FEWEST = 9;

/**
 * What learning would have brought: learns from the first two thirds of a machine's operations, foretells the last.
 * @returns errors as shares; or why it cannot be told (`learnStandards`' reasons, or fewer than nine operations)
 */
export function lateChange(machine: Learner, observations: readonly Observation[]): Result<LateChange> {
  const read = readObservations(machine, observations);
  if (!read.ok) return read;
  const { usable } = read.value;
  if (usable.length < FEWEST)
    return err(
      issue(
        `machine ${machine.id}`,
        'records',
        `Machine ${machine.id} has ${usable.length} finished operations: too few to try what was learned on others.`,
        `Look again when there are ${FEWEST}.`,
      ),
    );
  const early = usable.slice(0, Math.floor((usable.length * 2) / 3));
  const late = usable.slice(early.length);
  const learned = learnStandards(machine, early);
  if (!learned.ok) return learned;
  const changed = { ...machine, standards: standardsWith(machine, learned.value) };
  const error = (by: Learner): number =>
    median(late.map((o) => Math.abs(secondsOf(by, o.counts) - o.actualSeconds) / o.actualSeconds));
  return ok({
    learnedFrom: early.length,
    foretold: late.length,
    before: error(machine),
    after: error(changed),
  });
}
