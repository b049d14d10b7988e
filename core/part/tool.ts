import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, lengthMm, name, note, revision } from '../fields.ts';

export const toolKind = z.enum(['die', 'punch', 'hemming']);
export type ToolKind = z.infer<typeof toolKind>;

/** The widest V that is kept. Generous: it catches slips. */
export const MAX_OPENING_MM = 500;

/**
 * A press brake's tool: a die, a punch, or a pair that closes hems. What a kind does not have is null
 * (core/edit/tool-rules.ts says which it needs).
 */
export const tool = z.strictObject({
  id: code,
  name,
  kind: toolKind,
  /** Die: its V opening. */
  openingMm: z.number().positive('must be above 0').max(MAX_OPENING_MM).nullable(),
  /** Die: angle of its V. Punch: angle of its tip. Degrees between the two flanks. */
  angleDeg: z.number().min(20, 'at least 20°').max(180, 'at most 180°').nullable(),
  /** Punch: radius of its tip. */
  radiusMm: z.number().min(0, 'at least 0').max(500).nullable(),
  /** Punch: cut away behind its tip, so that a flange already bent up finds room. */
  gooseneck: z.boolean(),
  lengthMm,
  /** What it stands over its length, by its maker; null: not known. */
  ratingKnPerM: z.number().positive('must be above 0').max(20_000).nullable(),
  /** The brakes that it fits. One that fits several is shared: it is at one of them at a time. */
  machineIds: z.array(code).max(100),
  note,
  revision,
});
export type Tool = DeepReadonly<z.infer<typeof tool>>;
