import type { Hem } from './profile.ts';
import { KN_PER_TONNE, strengthShare, type Pressing } from './tonnage.ts';

/** A thickness, and what a hem takes in it. */
interface Row {
  readonly thicknessMm: number;
  /** Metric tonnes a metre. */
  readonly open: number;
  readonly closed: number;
}

/**
 * Tonnes a metre to make a hem in cold-rolled or stainless steel.
 * Source: Steve D. Benson, Press Brake Technology, SME 1997, p. 138, as quoted by encyclopedia pages on hemming; taken as
 * metric tonnes.
 */
const TABLE: readonly [Row, ...Row[]] = [
  { thicknessMm: 0.6, open: 9, closed: 23 },
  { thicknessMm: 0.8, open: 12, closed: 32 },
  { thicknessMm: 1.0, open: 15, closed: 40 },
  { thicknessMm: 1.2, open: 17, closed: 50 },
  { thicknessMm: 1.6, open: 24, closed: 63 },
  { thicknessMm: 2.0, open: 30, closed: 80 },
  { thicknessMm: 2.6, open: 55, closed: 90 },
  { thicknessMm: 3.2, open: 70, closed: 100 },
  { thicknessMm: 4.5, open: 105, closed: 200 },
];

export interface HemForce {
  readonly kn: number;
  /** The thickness lies outside the printed table: the force is carried on from its nearest row. */
  readonly beyondTable: boolean;
}

/** Tonnes a metre between two rows, on a straight line; outside them in proportion to the thickness. */
function tonnesPerM(made: 'open' | 'closed', thicknessMm: number): number {
  const above = TABLE.findIndex((row) => thicknessMm <= row.thicknessMm);
  const [low, high] = [TABLE[above - 1], TABLE[above]];
  if (low && high) {
    const share = (thicknessMm - low.thicknessMm) / (high.thicknessMm - low.thicknessMm);
    return low[made] + share * (high[made] - low[made]);
  }
  const nearest = high ?? TABLE.at(-1) ?? TABLE[0];
  return (nearest[made] * thicknessMm) / nearest.thicknessMm;
}

/**
 * Force to make a hem, in kN: the printed tonnes a metre, times its length and its tensile strength against mild steel.
 * Printed is one figure for cold-rolled and stainless; scaling by strength asks more of stainless, the safe side, and
 * less of aluminium (common practice, no source). What is not pressed flat takes the force of an open hem.
 */
export function hemForce(kind: Hem['kind'], { thicknessMm, lengthMm, tensileMpa }: Pressing): HemForce {
  const made = kind === 'closed' ? 'closed' : 'open';
  const first = TABLE[0].thicknessMm;
  const last = TABLE.at(-1)?.thicknessMm ?? first;
  return {
    kn: tonnesPerM(made, thicknessMm) * (lengthMm / 1000) * strengthShare(tensileMpa) * KN_PER_TONNE,
    beyondTable: thicknessMm < first || thicknessMm > last,
  };
}
