import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, gaugeLabel } from '../fields.ts';
import { lineId } from '../shop/order.ts';
import { call } from './call.ts';

/** What can be printed; each has a print route of the same name in the screens. */
const printable = z.discriminatedUnion('what', [
  /** The dispatch list of one machine, or of all (one page run a machine). */
  z.strictObject({
    what: z.literal('dispatch'),
    machineId: code.nullable(),
    days: z.int().min(1).max(28),
    /** With a drawing of each part that a brake makes. */
    drawings: z.boolean(),
  }),
  /** A part's drawing with its bend list, in the metal chosen on screen; null: the one that it is asked in most. */
  z.strictObject({
    what: z.literal('part'),
    partId: code,
    metal: z.strictObject({ materialId: code, gauge: gaugeLabel }).nullable(),
  }),
  /** The same for an order line, with its pieces, colour and due date. */
  z.strictObject({ what: z.literal('traveller'), lineId }),
  /** The steps of one run on the shear; with its sheets drawn. */
  z.strictObject({ what: z.literal('cutting'), runId: lineId, drawings: z.boolean() }),
  /** What to buy by when. */
  z.strictObject({ what: z.literal('purchases') }),
]);
export type Printable = DeepReadonly<z.infer<typeof printable>>;

/**
 * Make a PDF and let the user say where it goes; `path` null when they changed their mind.
 * `unavailable` in a browser, whose own print dialog does it.
 */
export const printPdf = call('print.pdf', printable, z.strictObject({ path: z.string().nullable() }));
