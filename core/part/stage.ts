import { z } from 'zod';

/** The steps that a piece goes through, in the order of the work. */
export const stage = z.enum(['shear', 'brake']);
export type Stage = z.infer<typeof stage>;
export const STAGES: readonly Stage[] = stage.options;

/** What the machine of a stage is called. */
export const stageName: Readonly<Record<Stage, string>> = { shear: 'shear', brake: 'press brake' };
