import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, instantS, revision } from '../fields.ts';

/** A figure of a machine that the shop took over from what its finished work shows, and what stood there before. */
export const learned = z.strictObject({
  /** Machine, figure and how often it was learned: "B1.hitLong.2". */
  id: z.string().regex(/^[A-Za-z0-9._-]{1,100}$/),
  machineId: code,
  /** A time standard (core/estimate/standards.ts), or an attribute of the changeover rules. */
  key: z.string().min(1).max(40),
  before: z.number().min(0),
  after: z.number().min(0),
  /** It lies between these with a probability of 90 %. */
  low: z.number().min(0),
  high: z.number().min(0),
  /** Finished operations it rests on. */
  observations: z.int().min(1),
  at: instantS,
  /** When the figure before was put back; null: never. */
  revertedAt: instantS.nullable(),
  revision,
});
export type Learned = DeepReadonly<z.infer<typeof learned>>;
