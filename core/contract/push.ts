import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { rowKinds } from '../shop/state.ts';
import { askState } from './ask.ts';
import { cutState } from './cuts.ts';
import { searchState } from './search.ts';

/** What the host tells the screens unasked. */
export const push = z.discriminatedUnion('kind', [
  /** Rows of these kinds changed: read them again. */
  z.strictObject({
    kind: z.literal('changed'),
    rows: z.array(z.enum(Object.keys(rowKinds) as [keyof typeof rowKinds])),
  }),
  z.strictObject({ kind: z.literal('search'), state: searchState }),
  z.strictObject({ kind: z.literal('ask'), state: askState }),
  z.strictObject({ kind: z.literal('cut'), state: cutState }),
  /** A menu entry was chosen. */
  z.strictObject({
    kind: z.literal('menu'),
    entry: z.enum(['import', 'undo', 'redo', 'plan', 'print', 'settings']),
  }),
]);
export type Push = DeepReadonly<z.infer<typeof push>>;
