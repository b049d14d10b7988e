import { FIRST_PIECE_AFTER, firstPieceSeconds } from '../estimate/first-piece.ts';
import { attribute, type Attribute, type Machine } from '../shop/machine.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Prior } from './fit.ts';
import { byTime } from './observation.ts';
import { PRIOR, propose, type Proposal, type Use } from './propose.ts';

/** A timed changeover: which attributes changed, named exceptions left out, and how long it took. */
export interface ChangeoverObservation {
  /** The operation that it led to. */
  readonly id: string;
  readonly machineId: string;
  readonly at: number;
  readonly kinds: readonly Attribute[];
  readonly seconds: number;
}

type Learner = Pick<Machine, 'id' | 'changeover' | 'stage' | 'standards' | 'timesEdition'>;
interface Figure {
  readonly key: string;
  readonly present: number;
  /** It is met once where any of these changed. */
  readonly after: readonly Attribute[];
}

/** Changes done side by side: who takes longest is found again with each fit; a few rounds settle it. */
const ROUNDS = 10;

/**
 * Changeover seconds per kind of change that fit what was timed on one machine, whole seconds. Exceptions for named
 * pairs are not learned; leave their changeovers out. An attribute without a figure, or with zero, stays as it is.
 * Where changes are done side by side, a changeover speaks for the change that takes longest in it.
 * A first piece, where it belongs to the changeover, is one more kind, met once whatever made it necessary.
 * @param observations any order; those of other machines, and those with no such change, do not matter
 * @returns a proposal per attribute that was seen to change; or why there is none, and then the rules stay as they are
 */
export function learnChangeover(
  machine: Learner,
  observations: readonly ChangeoverObservation[],
  prior: Prior = PRIOR,
): Result<Proposal[]> {
  const { combine, attributes } = machine.changeover;
  const figures = attribute.options.flatMap((key): Figure[] =>
    attributes[key] ? [{ key, present: attributes[key], after: [key] }] : [],
  );
  const first = firstPieceSeconds(machine);
  if (first > 0) figures.push({ key: 'firstPiece', present: first, after: FIRST_PIECE_AFTER });
  const costly = (o: ChangeoverObservation): boolean => figures.some((figure) => isMet(figure, o));
  const own = observations.filter((o) => o.machineId === machine.id).sort(byTime);
  const trouble = own.flatMap(troubleIn);
  if (trouble.length > 0) return err(...trouble);
  const timed = own.filter((o) => costly(o) && o.seconds > 0);
  if (timed.length === 0)
    return err(
      issue(
        `machine ${machine.id}`,
        'changeover',
        `No changeover of machine ${machine.id} has been timed yet, so there is nothing to learn from.`,
        'Its changeover rules stay as they are; look again when some work is done.',
      ),
    );
  const usesWith = (now: readonly number[]): Use[] => timed.map((o) => useOf(o, figures, now, combine));
  let now = figures.map((f) => f.present);
  let proposals: Proposal[] = [];
  for (let round = 0; round < (combine === 'max' ? ROUNDS : 1); round++) {
    proposals = propose(figures, usesWith(now), prior);
    now = figures.map((f) => proposals.find((p) => p.key === f.key)?.proposed ?? f.present);
  }
  return ok(proposals.map(wholeSeconds));
}

function troubleIn({ id, at, seconds }: ChangeoverObservation): Issue[] {
  if (Number.isFinite(at) && Number.isFinite(seconds) && seconds >= 0) return [];
  const message = `The changeover before ${id} took ${seconds} s at ${at}, which no changeover can.`;
  return [
    issue(`record ${id}`, 'changeover', message, 'Correct or remove the record; the rules stay as they are.'),
  ];
}

const isMet = ({ after }: Figure, { kinds }: ChangeoverObservation): boolean =>
  after.some((kind) => kinds.includes(kind));

/** Side by side, the longest change counts once, shared by all that take as long. */
function useOf(
  observation: ChangeoverObservation,
  figures: readonly Figure[],
  now: readonly number[],
  combine: 'sum' | 'max',
): Use {
  const { id, seconds } = observation;
  const changed = figures.map((figure) => isMet(figure, observation));
  if (combine === 'sum') return { id, counts: changed.map(Number), seconds };
  const longest = Math.max(...now.filter((_, k) => changed[k]));
  const ties = changed.filter((is, k) => is && now[k] === longest).length;
  return { id, counts: changed.map((is, k) => (is && now[k] === longest ? 1 / ties : 0)), seconds };
}

const wholeSeconds = (p: Proposal): Proposal => ({
  ...p,
  proposed: Math.round(p.proposed),
  interval: [Math.round(p.interval[0]), Math.round(p.interval[1])],
});
