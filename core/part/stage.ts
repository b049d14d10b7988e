import { z } from 'zod';

/** The steps that a piece goes through, in the order of the work. */
export const stage = z.enum(['shear', 'brake']);
export type Stage = z.infer<typeof stage>;
export const STAGES: readonly Stage[] = stage.options;

/** What the machine of a stage is called. */
export const stageName: Readonly<Record<Stage, string>> = { shear: 'shear', brake: 'press brake' };

/** The same said shortly, where a sentence goes on with it: "B1 is no shear", "The shop has no brake". */
export const shortStageName = (of: Stage): string => (of === 'brake' ? 'brake' : stageName[of]);

/** The step as a heading. */
export const stepTitle: Readonly<Record<Stage, string>> = { shear: 'Shearing', brake: 'Bending' };

/** The step in a sentence: "1042/2 shearing". */
export const stepWord: Readonly<Record<Stage, string>> = { shear: 'shearing', brake: 'bending' };

/** What a piece is after the step. */
export const stepDone: Readonly<Record<Stage, string>> = { shear: 'sheared', brake: 'bent' };

/** What comes to a step: flat blanks as long as nothing is bent. */
export const comesAs = (to: Stage): 'blanks' | 'pieces' =>
  STAGES.indexOf(to) <= STAGES.indexOf('brake') ? 'blanks' : 'pieces';
