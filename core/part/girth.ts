import type { GirthRule, Profile } from './profile.ts';
import { ok, type Result } from '../result.ts';
import { bendAllowance, setback } from './bend.ts';
import type { Forming } from './forming.ts';
import { hemDeduction, HITS_PER_HEM, hemWords } from './hem.ts';
import { bendShapes, hemFold, stripOf, type FoldShape } from './strip.ts';
import { writeFixed } from '../units/number.ts';

/** One row of how a girth was computed: a length as drawn, or what a bend adds (usually takes off, so negative). */
export interface GirthStep {
  readonly label: string;
  readonly addMm: number;
  /** Where a bend's figure comes from; null for a length as drawn. */
  readonly reason: string | null;
}

export interface Girth {
  readonly girthMm: number;
  /** They add up to `girthMm`. */
  readonly steps: readonly GirthStep[];
}

export interface GirthOptions extends Forming {
  /** `computed`, `computedByV`: with bend deductions. `outsideSum`: outside lengths added up, a habit on light gauge. */
  readonly rule: GirthRule;
}

/** Why a fold takes what it takes. */
function reasonOf({ rule, units }: GirthOptions, { measuredMm, kFactor }: FoldShape): string {
  if (rule === 'outsideSum') return 'outsides added up, nothing subtracted';
  return measuredMm === null
    ? `formula, K ${writeFixed(kFactor, 3, units)}`
    : `measured in your shop, K comes to ${writeFixed(kFactor, 3, units)}`;
}

function bendSteps(profile: Profile, options: GirthOptions): GirthStep[] {
  const { rule, ...forming } = options;
  return bendShapes(profile, forming).map((shape, i) => {
    const drawn = 2 * setback(profile.measured, shape);
    const takes = rule === 'outsideSum' ? 2 * setback('outside', shape) : bendAllowance(shape);
    return {
      label: `bend ${i + 1}, ${shape.angle}°`,
      addMm: takes - drawn,
      reason: reasonOf(options, shape),
    };
  });
}

function hemSteps(profile: Profile, options: GirthOptions): GirthStep[] {
  const { rule, ...forming } = options;
  return [profile.startHem, profile.endHem].flatMap((hem, i) => {
    if (hem === null) return [];
    const edge = i === 0 ? 'start' : 'end';
    const shape = hemFold(hem, forming);
    return [
      { label: `hem lip at the ${edge}`, addMm: hem.lengthMm, reason: null },
      {
        label: `fold of the ${edge} hem, ${hemWords(hem, forming)}`,
        addMm: rule === 'outsideSum' ? 0 : -hemDeduction(shape),
        reason: reasonOf(options, shape),
      },
    ];
  });
}

/**
 * The width of the flat blank (stretch-out): lengths as drawn, less what the bends take off, by the shop's own measured
 * deductions where there are some, else by the formula (core/part/bend.ts, core/part/hem.ts).
 * With rule `outsideSum` nothing is taken off the outside lengths (common practice on 24–26 gauge trim, no source):
 * simple, and a little long.
 * @returns millimetres and the steps that led to them; or issues naming flanges too short for their bends
 */
export function girth(profile: Profile, options: GirthOptions): Result<Girth> {
  const strip = stripOf(profile, options);
  if (!strip.ok) return strip;
  const flanges = profile.flangesMm.map((addMm, i) => ({ label: `flange ${i + 1}`, addMm, reason: null }));
  const steps = [...flanges, ...bendSteps(profile, options), ...hemSteps(profile, options)];
  return ok({ girthMm: steps.reduce((sum, step) => sum + step.addMm, 0), steps });
}

const hems = (profile: Profile): number => (profile.startHem ? 1 : 0) + (profile.endHem ? 1 : 0);

/** Strokes on a piece: one a bend, two a hem. */
export const hits = (profile: Profile): number => profile.bends.length + HITS_PER_HEM * hems(profile);
