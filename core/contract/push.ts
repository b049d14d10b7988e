import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { rowChange } from '../shop/row-change.ts';
import { askState } from './ask.ts';
import { cutsFound, cutState } from './cuts.ts';
import { searchState } from './search.ts';

/** What the host tells the screens unasked. */
export const push = z.discriminatedUnion('kind', [
  /**
   * The shop moved on to this revision by these changes; null: read it again. So does a screen that does not know the
   * revision before it.
   */
  z.strictObject({
    kind: z.literal('changes'),
    epoch: z.string(),
    revision: z.int(),
    changes: z.array(rowChange).nullable(),
  }),
  z.strictObject({ kind: z.literal('search'), state: searchState }),
  z.strictObject({ kind: z.literal('ask'), state: askState }),
  z.strictObject({ kind: z.literal('cut'), state: cutState }),
  z.strictObject({ kind: z.literal('cutsFound'), ...cutsFound.shape }),
  /** `app.status` has something new to tell: read it again. */
  z.strictObject({ kind: z.literal('notice') }),
  /** A menu entry was chosen. */
  z.strictObject({
    kind: z.literal('menu'),
    entry: z.enum([
      'import',
      'undo',
      'redo',
      'plan',
      'publish',
      'plans',
      'print',
      'settings',
      'first-minutes',
    ]),
  }),
]);
export type Push = DeepReadonly<z.infer<typeof push>>;
