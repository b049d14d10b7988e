import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';

/** What a profile can have at most: flanges, and millimetres of each. Generous: they catch slips. */
export const MOST_OF_A_PROFILE = {
  flanges: 30,
  flangeMm: 5000,
  lipMm: 100,
  gapMm: 50,
  radiusMm: 500,
} as const;

/**
 * A full fold along an edge, made in two hits: pressed flat (closed), left with a gap (open), or folded on until the lip's
 * edge touches the flange (teardrop).
 */
export const hem = z
  .strictObject({
    kind: z.enum(['closed', 'open', 'teardrop']),
    /** Outside length of the folded lip. */
    lengthMm: z.number().positive().max(MOST_OF_A_PROFILE.lipMm),
    /** Which way the lip folds, up or down as the bends do. */
    direction: z.enum(['up', 'down']),
    /** Clear space inside the fold: between lip and flange of an open hem, across the eye of a teardrop; left out: one thickness. */
    gapMm: z.number().positive('must be above 0').max(MOST_OF_A_PROFILE.gapMm).optional(),
  })
  .refine(({ kind, gapMm }) => kind !== 'closed' || gapMm === undefined, {
    message: 'a closed hem has no gap',
    path: ['gapMm'],
  });
export type Hem = DeepReadonly<z.infer<typeof hem>>;

export const bend = z.strictObject({
  /** Degrees turned through (a square corner is 90); not the included angle. */
  angle: z.number().gt(0, 'above 0°').lt(180, 'below 180°; use a hem for a full fold'),
  direction: z.enum(['up', 'down']),
  /** Inside radius; null takes the radius the shop's die makes (core/part). */
  radiusMm: z.number().min(0).max(MOST_OF_A_PROFILE.radiusMm).nullable(),
});

export const flangeMm = z.number().positive('must be above 0').max(MOST_OF_A_PROFILE.flangeMm);

/**
 * A cross-section: flanges in order, a bend between each two, perhaps a hem on either edge.
 * Mirroring or reversing it changes neither girth nor hits.
 */
export const profile = z
  .strictObject({
    flangesMm: z.array(flangeMm).min(1, 'needs at least one flange').max(MOST_OF_A_PROFILE.flanges),
    bends: z.array(bend),
    startHem: hem.nullable(),
    endHem: hem.nullable(),
    /** How the flange lengths are given: over the outside, inside, or to the apex (mold line) of the bends. */
    measured: z.enum(['outside', 'inside', 'apex']),
    paintedSide: z.enum(['up', 'down']),
  })
  .refine((p) => p.bends.length === p.flangesMm.length - 1, {
    message: 'needs exactly one bend between each two flanges',
    path: ['bends'],
  });
export type Profile = DeepReadonly<z.infer<typeof profile>>;

/**
 * How the blank is worked out from the drawn flanges: with bend deductions, where a bend that names no radius takes one
 * thickness (`computed`) or the radius that the V makes (`computedByV`); or outside lengths added up.
 */
export const girthRule = z.enum(['computed', 'computedByV', 'outsideSum']);
export type GirthRule = z.infer<typeof girthRule>;
