import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';

/** What a shop makes of a rule: nothing, a word of warning, or no planning on that machine. */
export const verdict = z.enum(['off', 'warning', 'stop']);
export type Verdict = z.infer<typeof verdict>;

export const ruleName = z.enum([
  'length',
  'thickness',
  'thickness, margin',
  'tools',
  'tool rating',
  'minimum strip',
  'back-gauge reach',
  'narrow strip',
  'minimum flange',
  'minimum radius',
  'radius made by the V',
  'punch tip',
  'bending force',
  'bending force, margin',
  'hem flattening force',
  'hem flattening force, margin',
  'concentrated load',
  'concentrated load, margin',
  'V for the thickness',
  'bend order, collision',
  'bend order, handling',
  'other V measured',
  'K-factor',
]);
export type RuleName = z.infer<typeof ruleName>;

/** A shop's own verdicts, of the rules that it takes otherwise than `RULES` does. */
export const partRules = z.partialRecord(ruleName, verdict);
export type PartRules = DeepReadonly<z.infer<typeof partRules>>;

/** A rule about a part on a machine. The machine maker's manual and local code stand above each. */
export interface Rule {
  readonly verdict: Verdict;
  /** What it says, for the list in which a shop takes it otherwise. */
  readonly says: string;
  /** Where it comes from, in words of the shop; publications stand in comments here and in the docstrings of the rules. */
  readonly source: string;
}

const COMMON_PRACTICE = 'common practice, no source';
const PLATE = "the machine's record";

/** Every rule with the verdict it has until the shop says otherwise. */
export const RULES: Readonly<Record<RuleName, Rule>> = {
  length: { verdict: 'stop', says: 'The piece is longer than the machine takes.', source: PLATE },
  thickness: {
    verdict: 'stop',
    says: 'The metal is thicker, for its tensile strength, than the machine takes.',
    source:
      'force grows with thickness squared and with tensile strength, from the machine’s rating in mild steel',
  },
  tools: {
    verdict: 'stop',
    says: 'The brake has no tools on record for the part: a die of its V, a punch, a gooseneck or hemming tools.',
    source: 'the brake’s tools',
  },
  'tool rating': {
    verdict: 'stop',
    says: 'Bending or hemming loads a tool more than its maker allows.',
    // Source: force by length under the lower rating of punch and die, a trade article on tool limits.
    source: 'the tool’s own rating; the force by the usual formula',
  },
  'thickness, margin': {
    verdict: 'warning',
    says: 'The shear takes the metal by one rule for its strength, not by the more cautious one.',
    source:
      'between the rating in proportion to the root of the tensile strength and in proportion to the strength itself; plates lie between',
  },
  'minimum strip': {
    verdict: 'stop',
    says: 'The blank is narrower than the shear’s hold-downs grip.',
    source: `${PLATE}; the reason is ${COMMON_PRACTICE}`,
  },
  'back-gauge reach': {
    verdict: 'warning',
    says: 'The girth lies outside the back gauge’s travel.',
    source: PLATE,
  },
  'narrow strip': {
    verdict: 'warning',
    says: 'A long narrow strip twists and bows on the shear.',
    source: COMMON_PRACTICE,
  },
  'minimum flange': {
    verdict: 'stop',
    says: 'A flange is too short to span the V.',
    // Source: design rules of the trade press (core/limits/brake-limits.ts).
    source:
      '0.70 of the V opening, 1.10 for an acute die, at least two thicknesses and the inside radius: usual design rules',
  },
  'minimum radius': {
    verdict: 'warning',
    says: 'The V makes a tighter inside radius than the metal allows.',
    // Sources: an article of the trade press on air forming (0.63 T); Aluminum Design Manual 2005, table 3-1.
    source:
      'steel: sharp below 0.63 thicknesses; full-hard steel 2 thicknesses, common practice, no source; aluminium: published tables by alloy and temper',
  },
  'radius made by the V': {
    verdict: 'warning',
    says: 'The V makes another radius than the drawing asks for.',
    source:
      'air forming makes about 16 % of the V in mild steel, more in stronger steel, 21 % in stainless, 15 % in aluminium',
  },
  'punch tip': {
    verdict: 'warning',
    says: 'The punch’s tip is rounder than the radius that the V makes, so that the piece needs another blank than it is cut for.',
    source:
      'of the radius that the V makes and the tip of the punch the larger one stands; blanks are cut for the V alone, the same on every brake',
  },
  'bending force': {
    verdict: 'stop',
    says: 'Bending needs more force than the brake has.',
    // Source: core/part/tonnage.ts, 575 × T²/V tons a foot, 60 ksi.
    source: 'the usual formula: thickness squared by the V opening, with the length and the tensile strength',
  },
  'bending force, margin': {
    verdict: 'warning',
    says: 'Bending needs nearly the brake’s whole force.',
    source: 'the usual formula; makers’ charts differ by a fifth',
  },
  'hem flattening force': {
    verdict: 'stop',
    says: 'A hem needs more force than the brake has.',
    // Source: core/part/hem-force.ts, a table of nine thicknesses, open and closed.
    source: 'a published table of hem forces by thickness, in proportion to tensile strength',
  },
  'hem flattening force, margin': {
    verdict: 'warning',
    says: 'A hem needs nearly the brake’s whole force.',
    source: 'a published table of hem forces; rules differ by a fifth',
  },
  'concentrated load': {
    verdict: 'stop',
    says: 'The force on a short piece is more than the brake’s bed stands over that length.',
    // Source: core/part/concentrated-load.ts.
    source:
      'the full force belongs on no less than 60 % of the distance between the side frames, a published rule',
  },
  'concentrated load, margin': {
    verdict: 'warning',
    says: 'The force on a short piece is nearly what the bed stands over that length, or the distance between the side frames is not on record.',
    source:
      'the full force belongs on no less than 60 % of the distance between the side frames, a published rule; force charts differ by a fifth',
  },
  'V for the thickness': {
    verdict: 'warning',
    says: 'The V is under 6 or over 15 times the thickness of the metal.',
    // Source: dealers' V charts of 6 to 12 T for air bending and bottoming, up to 15 T for partial bending.
    source: 'usual die charts: 6 to 12 thicknesses, 15 at most',
  },
  'bend order, collision': {
    verdict: 'warning',
    says: 'In the given order, or in any, the piece runs into the tools.',
    source: `${COMMON_PRACTICE}: usual outlines of punch, die, ram and bed`,
  },
  'bend order, handling': {
    verdict: 'warning',
    says: 'The given order turns the piece more often than another.',
    source: COMMON_PRACTICE,
  },
  'other V measured': {
    verdict: 'warning',
    says: 'The blank is cut for another V, and your own measured deductions, or the radius it makes, differ.',
    source: 'measured in your shop, or the share of the V that air forming makes',
  },
  'K-factor': {
    verdict: 'warning',
    says: 'A K-factor above 0.5, typed or from a measured deduction, says the real radius is larger than drawn.',
    source: COMMON_PRACTICE,
  },
};
