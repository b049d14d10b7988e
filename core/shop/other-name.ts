import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { revision } from '../fields.ts';
import { MOST } from '../input-limits.ts';

/** What of the shop can be called by another name in the files that come in. */
export const namedKind = z.enum(['part', 'material', 'colour', 'gauge', 'machine', 'customer']);
export type NamedKind = z.infer<typeof namedKind>;

const text = z.string().trim().min(1, 'must not be empty').max(MOST.shortCellCharacters);

/** What a file calls something that the shop knows under a name of its own; said once, remembered for the next file. */
export const otherName = z.strictObject({
  /** Its kind, a colon, and the text as it is compared (`otherNameId`). */
  id: z.string().min(1).max(500),
  kind: namedKind,
  /** As the file writes it. */
  text,
  /** The code, label or customer's name that stands for it here. */
  oursId: text,
  revision,
});
export type OtherName = DeepReadonly<z.infer<typeof otherName>>;

/** The key of another name: upper and lower case and the width of gaps make no difference, accents and marks do. */
export const otherNameId = (kind: NamedKind, text: string): string =>
  `${kind}:${text.normalize('NFKC').trim().toLowerCase().replaceAll(/\s+/g, ' ')}`;
