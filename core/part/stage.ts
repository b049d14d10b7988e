import { z } from 'zod';

/**
 * The steps that a piece can go through, in the order of the work. Shearing is every piece's, bending that of every piece
 * with bends; the others are further steps, which a part asks for (core/part/further-step.ts) and a shop may lack.
 */
export const stage = z.enum(['shear', 'notch', 'brake', 'end', 'outside', 'pack']);
export type Stage = z.infer<typeof stage>;
export const STAGES: readonly Stage[] = stage.options;

export const furtherStage = stage.exclude(['shear', 'brake']);
export type FurtherStage = z.infer<typeof furtherStage>;
export const FURTHER_STAGES: readonly FurtherStage[] = furtherStage.options;
export const isFurther = (of: Stage): of is FurtherStage => of !== 'shear' && of !== 'brake';

/** What does the work of a stage: a machine, a bench, or somebody else's shop. */
export const stageName: Readonly<Record<Stage, string>> = {
  shear: 'shear',
  notch: 'notching bench',
  brake: 'press brake',
  end: 'end-work bench',
  outside: 'outside shop',
  pack: 'packing bench',
};

/** The same said shortly, where a sentence goes on with it: "B1 is no shear", "The shop has no brake". */
export const shortStageName = (of: Stage): string => (of === 'brake' ? 'brake' : stageName[of]);

/** The step as a heading. */
export const stepTitle: Readonly<Record<Stage, string>> = {
  shear: 'Shearing',
  notch: 'Notch or punch',
  brake: 'Bending',
  end: 'End work',
  outside: 'Outside work',
  pack: 'Packing',
};

/** The step in a sentence: "1042/2 shearing". */
export const stepWord: Readonly<Record<Stage, string>> = {
  shear: 'shearing',
  notch: 'notching',
  brake: 'bending',
  end: 'end work',
  outside: 'outside work',
  pack: 'packing',
};

/** What a piece is after the step. */
export const stepDone: Readonly<Record<Stage, string>> = {
  shear: 'sheared',
  notch: 'notched',
  brake: 'bent',
  end: 'worked at its ends',
  outside: 'worked outside',
  pack: 'packed',
};

/** What comes to a step: flat blanks as long as nothing is bent. */
export const comesAs = (to: Stage): 'blanks' | 'pieces' =>
  STAGES.indexOf(to) <= STAGES.indexOf('brake') ? 'blanks' : 'pieces';

/** Elsewhere any number of lines are at work at once: nobody waits there, nothing is changed over, nothing stands still. */
export const isElsewhere = (of: Stage): boolean => of === 'outside';

/** "A shear", "An outside shop": at the head of a sentence. @param name as it is to be called */
export const aStage = (of: Stage, name = shortStageName(of)): string =>
  `${/^[aeiou]/.test(name) ? 'An' : 'A'} ${name}`;
