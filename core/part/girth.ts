import type { Profile } from '../shop/part.ts';
import { good, type Result } from '../shop/result.ts';
import type { Settings } from '../shop/settings.ts';
import { bendAllowance, setback } from './bend.ts';
import { hemDeduction, HITS_PER_HEM } from './hem.ts';
import { bendShapes, stripOf, type Forming } from './strip.ts';

/** One row of how a girth was reckoned: a length as drawn, or what a bend adds (usually takes off, so negative). */
export interface GirthStep {
  readonly label: string;
  readonly addMm: number;
}

export interface Girth {
  readonly girthMm: number;
  /** They add up to `girthMm`. */
  readonly steps: readonly GirthStep[];
}

export interface GirthOptions extends Forming {
  /** `computed`: with bend deductions. `outsideSum`: outside lengths added up, a habit on light gauge. */
  readonly rule: Settings['girthRule'];
}

function bendSteps(profile: Profile, { rule, ...forming }: GirthOptions): GirthStep[] {
  return bendShapes(profile, forming).map((shape, i) => {
    const drawn = 2 * setback(profile.measured, shape);
    const takes = rule === 'computed' ? bendAllowance(shape) : 2 * setback('outside', shape);
    return { label: `bend ${i + 1}, ${shape.angle}°`, addMm: takes - drawn };
  });
}

function hemSteps(profile: Profile, { rule, thicknessMm, kFactor }: GirthOptions): GirthStep[] {
  return [profile.startHem, profile.endHem].flatMap((hem, i) => {
    if (hem === null) return [];
    const edge = i === 0 ? 'start' : 'end';
    const addMm = rule === 'computed' ? -hemDeduction(hem.kind, thicknessMm, kFactor) : 0;
    return [
      { label: `hem lip at the ${edge}`, addMm: hem.lengthMm },
      { label: `fold of the ${edge} hem, ${hem.kind}`, addMm },
    ];
  });
}

/**
 * The width of the flat blank (stretch-out): lengths as drawn, less what the bends take off.
 * With rule `outsideSum` nothing is taken off the outside lengths (common practice on 24–26 gauge trim, no source):
 * simple, and a little long.
 * @returns millimetres and the steps that led to them; or problems naming flanges too short for their bends
 */
export function girth(profile: Profile, options: GirthOptions): Result<Girth> {
  const strip = stripOf(profile, options);
  if (!strip.ok) return strip;
  const flanges = profile.flangesMm.map((addMm, i) => ({ label: `flange ${i + 1}`, addMm }));
  const steps = [...flanges, ...bendSteps(profile, options), ...hemSteps(profile, options)];
  return good({ girthMm: steps.reduce((sum, step) => sum + step.addMm, 0), steps });
}

const hems = (profile: Profile): number => (profile.startHem ? 1 : 0) + (profile.endHem ? 1 : 0);

/** Strokes on a piece: one a bend, two a hem. */
export const hits = (profile: Profile): number => profile.bends.length + HITS_PER_HEM * hems(profile);

/**
 * How often the piece is turned over: bends and hems read from edge to edge, once for each change between up and down
 * (common practice, no source).
 */
export function flips(profile: Profile): number {
  const folds = [profile.startHem, ...profile.bends, profile.endHem].filter((fold) => fold !== null);
  return folds.filter((fold, i) => i > 0 && fold.direction !== folds[i - 1]?.direction).length;
}

/**
 * How often the piece is turned end for end: once when it is bent from both edges, as a piece with two or more bends
 * or hems is; a single one needs no turn (common practice, no source).
 */
export const turns = (profile: Profile): number => (profile.bends.length + hems(profile) >= 2 ? 1 : 0);
