import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { isOrderOf } from './bend-steps.ts';
import { extraBlanks } from './extra-blanks.ts';
import { furtherSteps } from './further-step.ts';
import { flangeMm, profile, type Profile } from './profile.ts';
import { code, lengthMm, name, note, revision } from '../fields.ts';

/**
 * The same shape in several sizes. One part is the pattern; each of its sizes is a part of its own, so that orders can
 * name it, with the pattern's profile but for the named dimensions.
 */
export const family = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('pattern'),
    /** A named dimension sets the length of one flange, or of several alike; flanges are counted from 1. */
    dimensions: z
      .array(
        z.strictObject({
          name: z.string().trim().min(1, 'needs a name').max(20, 'at most 20 characters'),
          flanges: z.array(z.int().min(1).max(30)).min(1, 'needs a flange'),
        }),
      )
      .min(1, 'needs a dimension')
      .max(8),
    /** A length for each dimension, in their order. */
    sizes: z.array(z.strictObject({ partId: code, name, lengthsMm: z.array(flangeMm) })).max(60),
  }),
  z.strictObject({ is: z.literal('size'), of: code }),
]);
export type Family = DeepReadonly<z.infer<typeof family>>;

/** A piece to make. A part without bends or hems is sold flat and skips the brake. */
export const part = z
  .strictObject({
    id: code,
    name,
    profile,
    /** Usual piece length; an order line may ask for another. */
    lengthMm,
    /** The brake's steps in the shop's own order (names as in core/part/bend-steps.ts); null: as core/part/bend-order.ts finds. */
    bendOrder: z
      .array(z.string().regex(/^(bend \d{1,2}|(fold|close) (start|end) hem)$/))
      .max(40)
      .nullable(),
    family: family.nullable(),
    /** Blanks to set up and spare ones, where they are not the shop's usual. */
    extraBlanks: extraBlanks.nullable(),
    /** What it needs besides shearing and bending. */
    steps: furtherSteps,
    note,
    revision,
  })
  .refine(({ bendOrder, profile: shape }) => bendOrder === null || isOrderOf(shape, bendOrder), {
    message: 'must name every step of the profile once, and fold a hem before it is closed',
    path: ['bendOrder'],
  })
  .refine(({ family: kin, profile: shape }) => kin?.is !== 'pattern' || flangesFit(kin, shape), {
    message: 'each dimension must name flanges of the profile, and no flange belongs to two',
    path: ['family'],
  })
  .refine(({ id, family: kin }) => kin?.is !== 'pattern' || sizesFit(kin, id), {
    message: 'each size needs a code of its own and a length for every dimension',
    path: ['family'],
  });
export type Part = DeepReadonly<z.infer<typeof part>>;

type Pattern = Extract<Family, { is: 'pattern' }>;

function flangesFit({ dimensions }: Pattern, { flangesMm }: Profile): boolean {
  const named = dimensions.flatMap(({ flanges }) => flanges);
  return new Set(named).size === named.length && named.every((flange) => flange <= flangesMm.length);
}

function sizesFit({ dimensions, sizes }: Pattern, id: string): boolean {
  const codes = [id, ...sizes.map(({ partId }) => partId)];
  return (
    new Set(codes).size === codes.length &&
    sizes.every(({ lengthsMm }) => lengthsMm.length === dimensions.length)
  );
}
