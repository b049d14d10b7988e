import { z } from 'zod';
import { finishedFiles } from './finished.ts';
import type { ImportKind } from './kind.ts';
import { orderFiles } from './orders.ts';

/** The kinds of files that are read, by name. A new kind is added here. */
export const importKinds = { orders: orderFiles, finished: finishedFiles } as const satisfies Readonly<
  Record<string, ImportKind>
>;

/** Their names, for requests. */
export const importKind = z.enum(Object.keys(importKinds) as [keyof typeof importKinds]);
export type ImportKindName = z.infer<typeof importKind>;
