import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code } from '../fields.ts';
import { furtherStage } from './stage.ts';

/** A step of a part's routing besides shearing and bending. Where it stands among them is its stage's matter. */
export const furtherStep = z
  .strictObject({
    stage: furtherStage,
    /** The one bench, person or outside shop that does it; null: any of the stage. */
    placeId: code.nullable(),
    /** Machine time of one piece; null: by the standard of where it is done. Never of outside work. */
    secondsPerPiece: z.number().min(0, 'must not be negative').max(100_000, 'at most 100,000 s').nullable(),
    /** Outside work: days that the pieces are away, those on which the outside shop is open; null: as that shop's standard says. */
    days: z.int('must be whole days').min(1, 'at least one day').max(365, 'at most 365 days').nullable(),
    /** What is to be done, for who does it. */
    note: z.string().max(200, 'at most 200 characters'),
  })
  .refine(({ stage, secondsPerPiece }) => stage !== 'outside' || secondsPerPiece === null, {
    message: 'outside work takes days, not seconds for each piece',
    path: ['secondsPerPiece'],
  })
  .refine(({ stage, days }) => stage === 'outside' || days === null, {
    message: 'only outside work takes days',
    path: ['days'],
  });
export type FurtherStep = DeepReadonly<z.infer<typeof furtherStep>>;

/** The further steps of a part: each stage at most once, in any order. */
export const furtherSteps = z
  .array(furtherStep)
  .max(furtherStage.options.length)
  .refine((steps) => new Set(steps.map(({ stage }) => stage)).size === steps.length, {
    message: 'name each step once',
  });
