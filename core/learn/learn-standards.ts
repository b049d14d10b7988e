import type { Machine } from '../shop/machine.ts';
import { err, ok, issue, type Result } from '../result.ts';
import { standard } from '../estimate/standards.ts';
import { timeStandards } from './counts.ts';
import type { Prior } from './fit.ts';
import { readObservations, type Observation } from './observation.ts';
import { PRIOR, propose, type Proposal } from './propose.ts';

type Learner = Pick<Machine, 'id' | 'stage' | 'standards' | 'timesEdition'>;

/**
 * The time standards of one machine that fit its finished operations. The allowance stays: records cannot tell a slow
 * standard from a large allowance. A fitted standard is of the usual (median) time; how far actual times spread about
 * it is `spreadOf`'s matter.
 * @param observations any order; those of other machines do not matter
 * @param prior how far the present figures may be off before records speak, as standard deviations of log factors;
 *   with few records a proposal stays near the present figure
 * @returns a proposal per standard that takes time and occurs, in the order of the work; or why there is none (nothing
 *   finished yet, a record that cannot be, times that have nothing to do with the estimates), and then the standards
 *   stay as they are
 */
export function learnStandards(
  machine: Learner,
  observations: readonly Observation[],
  prior: Prior = PRIOR,
): Result<Proposal[]> {
  if (!(prior.apart > 0 && prior.together >= 0 && prior.apart + prior.together < Infinity))
    return err(
      issue(
        `machine ${machine.id}`,
        'prior',
        `Standards cannot be held near their present figures by ${prior.together} and ${prior.apart}.`,
        'Give a number from 0 on and one above 0.',
      ),
    );
  const read = readObservations(machine, observations);
  if (!read.ok) return read;
  const { usable, blank } = read.value;
  const figures = timeStandards(machine).map(({ key }) => ({ key, present: standard(machine, key) }));
  const worked = 1 + standard(machine, 'allowance');
  const uses = usable.map(({ id, counts, actualSeconds }) => ({
    id,
    counts: figures.map(({ key }) => counts[key] ?? 0),
    seconds: actualSeconds / worked,
  }));
  const untimed = observations.filter((o) => o.machineId === machine.id && blank.includes(o.id));
  const withUntimed = (p: Proposal): Proposal => ({
    ...p,
    outliers: [...p.outliers, ...untimed.flatMap((o) => ((o.counts[p.key] ?? 0) > 0 ? [o.id] : []))].sort(),
  });
  return ok(propose(figures, uses, prior).map(withUntimed));
}

/** The machine's standards with proposals taken; what is not proposed stays. */
export const standardsWith = (
  machine: Pick<Machine, 'standards'>,
  proposals: readonly Pick<Proposal, 'key' | 'proposed'>[],
): Machine['standards'] => ({
  ...machine.standards,
  ...Object.fromEntries(proposals.map((p) => [p.key, p.proposed])),
});
