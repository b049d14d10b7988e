import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code, durationS, instantS, lengthMm, name, note, revision } from '../fields.ts';
import { stage, STAGES } from '../part/stage.ts';

/** What a changeover can depend on. An operation carries the ones that matter to its stage. */
export const attribute = z.enum(['material', 'gauge', 'colour', 'profile', 'tools', 'hemming']);
export type Attribute = z.infer<typeof attribute>;
export const attributes = z.partialRecord(attribute, z.string().max(120));
export type Attributes = DeepReadonly<z.infer<typeof attributes>>;

/** Seconds lost between two operations that differ, per attribute, with exceptions for named pairs. */
export const changeoverRules = z.strictObject({
  /** `sum`: one person does the changes in turn. `max`: they are done side by side. */
  combine: z.enum(['sum', 'max']),
  attributes: z.partialRecord(attribute, durationS),
  exceptions: z
    .array(
      z.strictObject({ attribute, from: z.string().max(120), to: z.string().max(120), seconds: durationS }),
    )
    .max(2000, 'at most 2000'),
});
export type ChangeoverRules = DeepReadonly<z.infer<typeof changeoverRules>>;

export const machine = z.strictObject({
  id: code,
  name,
  stage,
  /** Longest piece it takes; null: any, on a bench or outside. */
  maxLengthMm: lengthMm.nullable(),
  /** Thickest mild steel it takes over its length; harder metal is derated by tensile strength. Null but for shear and brake. */
  maxThicknessMm: z.number().positive().max(50).nullable(),
  /** Brake force in metric tonnes; null for a shear. */
  tonnes: z.number().positive().max(5000).nullable(),
  /** Brake: the V opening usually set up; null for a shear. */
  dieOpeningMm: z.number().positive().max(500).nullable(),
  /** Brake: distance between the side frames; null: not known, or a shear. */
  betweenFramesMm: lengthMm.nullable(),
  /** Shear: how far the back gauge travels; null for a brake. */
  backGaugeMm: z.strictObject({ min: z.number().min(0), max: lengthMm }).nullable(),
  /** Shear: narrowest strip the hold-downs grip safely; null for a brake. */
  minStripMm: z.number().positive().max(1000).nullable(),
  crew: z.int().min(1).max(4),
  calendarId: code,
  changeover: changeoverRules,
  /** Time standards that differ from the stage's defaults (core/estimate/standards.ts lists them). */
  standards: z.record(z.string(), z.number().min(0).max(100_000)),
  /** Which edition of the usual times those follow that the shop has not set itself (core/estimate/standards.ts). */
  timesEdition: z.int().min(1).max(99),
  /** What is set up on the machine now: the first changeover starts from here. Null: unknown, first one free. */
  state: attributes.nullable(),
  revision,
});
export type Machine = DeepReadonly<z.infer<typeof machine>>;

/** The machines as work flows through the shop, shears before brakes, else in the shop's order. */
export const inWorkOrder = (machines: readonly Machine[]): Machine[] =>
  machines.toSorted((a, b) => STAGES.indexOf(a.stage) - STAGES.indexOf(b.stage));

/** A machine out of use from one instant to another, whatever its calendar says. */
export const downtime = z
  .strictObject({ id: code, machineId: code, from: instantS, to: instantS, reason: note, revision })
  .refine((d) => d.from < d.to, { message: 'must end after it starts', path: ['to'] });
export type Downtime = DeepReadonly<z.infer<typeof downtime>>;

/** People missing from one instant to another, where the shop counts the people at work (`settings.crewLimit`). */
export const absence = z
  .strictObject({
    id: code,
    people: z.int().min(1, 'at least one').max(500),
    from: instantS,
    to: instantS,
    reason: note,
    revision,
  })
  .refine((a) => a.from < a.to, { message: 'must end after it starts', path: ['to'] });
export type Absence = DeepReadonly<z.infer<typeof absence>>;
