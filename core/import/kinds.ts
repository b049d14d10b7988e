import { z } from 'zod';
import { colourFiles } from './colours.ts';
import { finishedFiles } from './finished.ts';
import { machineFiles } from './machines.ts';
import { materialFiles } from './materials.ts';
import { partFiles } from './parts.ts';
import { sheetFiles } from './sheets.ts';
import { stockFiles } from './stock.ts';
import type { ImportKind } from './kind.ts';
import { orderFiles } from './orders.ts';
import { toolFiles } from './tools.ts';

/** The kinds of files that are read, by name. A new kind is added here. */
export const importKinds = {
  orders: orderFiles,
  finished: finishedFiles,
  parts: partFiles,
  materials: materialFiles,
  colours: colourFiles,
  sheets: sheetFiles,
  stock: stockFiles,
  machines: machineFiles,
  tools: toolFiles,
} as const satisfies Readonly<Record<string, ImportKind>>;

/** Their names, for requests. */
export const importKind = z.enum(Object.keys(importKinds) as [keyof typeof importKinds]);
export type ImportKindName = z.infer<typeof importKind>;
