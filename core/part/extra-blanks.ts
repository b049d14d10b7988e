import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';

/** Blanks that are cut beyond the pieces asked for, since some of them become no good piece. */
export const extraBlanks = z.strictObject({
  /** Blanks a line to set a brake up with; a part without bends needs none. */
  setUp: z.int('must be a whole number').min(0, 'at least 0').max(20, 'at most 20'),
  /** Share of the pieces that is usually spoiled. */
  scrapShare: z.number().min(0, 'at least 0 %').max(0.5, 'at most 50 %'),
});
export type ExtraBlanks = DeepReadonly<z.infer<typeof extraBlanks>>;

/** Exactly as many blanks as pieces. */
export const NO_EXTRA_BLANKS: ExtraBlanks = { setUp: 0, scrapShare: 0 };

/** One piece to set up a profile with, 2 % spoiled: the low end of 2 to 5 %. Common practice, no source. */
export const USUAL_EXTRA_BLANKS: ExtraBlanks = { setUp: 1, scrapShare: 0.02 };
