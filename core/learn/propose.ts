import { fitFactors, type Fit, type Prior } from './fit.ts';
import { proportionalGroups } from './groups.ts';

/** What the records say about one figure of a machine. Seconds, or seconds per kilogram. */
export interface Proposal {
  readonly key: string;
  /** The figure in use: the shop's own, or the default. */
  readonly present: number;
  /** The figure that fits the records, to three digits; never negative. */
  readonly proposed: number;
  /** Between these with a probability of 90 % (normal approximation of the posterior of its logarithm). */
  readonly interval: readonly [low: number, high: number];
  /** Other figures that the records cannot tell from this one: all get the same factor. */
  readonly together: readonly string[];
  /** How many records this rests on. */
  readonly observations: number;
  /** Share of the fitted time of all records that this figure accounts for, 0 to 1. */
  readonly explained: number;
  /** Records with this figure in them that lie more than three times the usual scatter off; they hardly count. */
  readonly outliers: readonly string[];
}

/** A record's use of each figure: how often, and the whole time taken. */
export interface Use {
  readonly id: string;
  readonly counts: readonly number[];
  readonly seconds: number;
}

export const PRIOR: Prior = { together: 0.25, apart: 0.25 };
const OUTLIER = 3;
/** Two-sided 90 % of a normal distribution. */
const NINETY = 1.645;

/** Three digits: more than any fit knows, and what is shown is what is kept. */
const round = (value: number): number => Number(value.toPrecision(3));

interface Figure {
  readonly key: string;
  readonly present: number;
}

/**
 * Fits factors on figures to their uses and writes a proposal for each figure that occurs. A figure of zero stays zero:
 * the shop has said that it takes no time. Figures that occur in no record get no proposal.
 */
export function propose(figures: readonly Figure[], uses: readonly Use[], prior: Prior): Proposal[] {
  const groups = groupsOf(figures, uses);
  const rows = rowsOf(figures, groups, uses);
  const fit = fitFactors(rows, groups.length, prior);
  const fitted = rows.map(({ parts }) =>
    parts.reduce((sum, part, g) => sum + part * Math.exp(fit.logFactors[g]!), 0),
  );
  const total = fitted.reduce((sum, seconds) => sum + seconds, 0);
  const proposals = groups.flatMap((members, g) =>
    members.map((k): Proposal => {
      const { key, present } = figures[k]!;
      const within = uses.flatMap((use, i) => (use.counts[k]! > 0 ? [i] : []));
      const count = within.reduce((sum, i) => sum + uses[i]!.counts[k]!, 0);
      return {
        key,
        present,
        ...figuresOf(present, fit, g),
        together: members.filter((other) => other !== k).map((other) => figures[other]!.key),
        observations: within.length,
        explained: (count * present * Math.exp(fit.logFactors[g]!)) / total,
        outliers: within.filter((i) => Math.abs(fit.residuals[i]!) > OUTLIER).map((i) => uses[i]!.id),
      };
    }),
  );
  const place = new Map(figures.map(({ key }, k) => [key, k]));
  return proposals.sort((a, b) => place.get(a.key)! - place.get(b.key)!);
}

function figuresOf(present: number, fit: Fit, g: number): Pick<Proposal, 'proposed' | 'interval'> {
  const at = (errors: number): number =>
    round(present * Math.exp(fit.logFactors[g]! + errors * fit.logErrors[g]!));
  return { proposed: at(0), interval: [at(-NINETY), at(NINETY)] };
}

const groupsOf = (figures: readonly Figure[], uses: readonly Use[]): number[][] =>
  proportionalGroups(
    figures.map(({ present }, k) => (present > 0 ? uses.map((use) => use.counts[k]!) : uses.map(() => 0))),
  );

const rowsOf = (figures: readonly Figure[], groups: readonly (readonly number[])[], uses: readonly Use[]) =>
  uses.map(({ counts, seconds }) => ({
    parts: groups.map((members) => members.reduce((sum, k) => sum + counts[k]! * figures[k]!.present, 0)),
    seconds,
  }));
