import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { girthRule } from '../part/profile.ts';
import { partRules } from '../part/rules.ts';
import { extraBlanks, USUAL_EXTRA_BLANKS } from '../part/extra-blanks.ts';
import { lengthMm, name, revision } from '../fields.ts';
import { stockKnows } from '../material/lot.ts';

/** How the plan's quality terms are weighed against one another; each term is in seconds, that of stock in money. */
export const objectiveWeights = z.strictObject({
  /** A second a line ends after its due date, times the order's importance. */
  lateness: z.number().min(0).max(1000),
  /** A second a machine spends changing over. */
  changeover: z.number().min(0).max(1000),
  /** A second a line spends between its release and its end. */
  flow: z.number().min(0).max(1000),
  /** A second a line's end moves from the plan as it is. */
  stability: z.number().min(0).max(1000),
  /** Stock worth a hundred (10,000 cents), in hours: what joining two runs may cost to save it (core/planning/join-runs.ts). */
  material: z.number().min(0).max(1000),
});
export type ObjectiveWeights = DeepReadonly<z.infer<typeof objectiveWeights>>;

/**
 * What a new shop begins with: an hour of changeover weighs as much as ten hours of one usual line's lateness, since it
 * pushes back everything behind it. On the demo shop this halves the changeovers for 2 % more weighted lateness. Stock
 * worth a hundred weighs as an hour of changeover does, about what an hour of a machine and its crew costs (our own figure).
 */
export const defaultWeights: ObjectiveWeights = {
  lateness: 1,
  changeover: 10,
  flow: 0.001,
  stability: 0.02,
  material: 10,
};

/** What an offcut must measure to be worth keeping, and how many of one size are. */
const remnantRule = z.strictObject({ widthMm: lengthMm, lengthMm, most: z.int().min(0).max(10_000) });
export type RemnantRule = DeepReadonly<z.infer<typeof remnantRule>>;

/** The shop itself: one row. */
export const settings = z.strictObject({
  id: z.literal('shop'),
  name,
  /** IANA name, e.g. "America/Chicago". */
  timeZone: z.string().min(1),
  units: z.enum(['in', 'mm']),
  /** ISO 4217 code of all amounts; null: not said yet, amounts stand without one. */
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'a code of three letters, like USD')
    .nullable(),
  weights: objectiveWeights,
  /** Operations that start within these hours stay where they are when the plan is improved. */
  frozenHours: z.number().min(0).max(336),
  /** Share of a line's blanks after which the brake may start; 1 waits for the whole line. */
  transferShare: z.number().min(0.05, 'at least 0.05').max(1, 'at most 1'),
  /** People per open hour shared by all machines; null: enough for all. */
  crewLimit: z.int().min(1).max(500).nullable(),
  /** How the blank is computed from the drawn flanges. */
  girthRule,
  /** Rules about parts on machines that this shop takes otherwise than core/part/rules.ts does. */
  partRules,
  /** `always`: floor and paper follow the queues as they are. `byHand`: they follow what was published last. */
  publishing: z.enum(['always', 'byHand']),
  /** A second folder for backups, a network drive perhaps; null: none. */
  backupFolder: z.string().min(1).max(1000).nullable(),
  /** Whether the floor screen asks who runs an operation; while it is off no name is kept. */
  askWho: z.boolean(),
  /** The decimal mark that the shop writes. */
  decimals: z.enum(['point', 'comma']),
  /** Which offcuts are kept, and how many of a size at most; null: not said, the usual sizes count (core/cutting). */
  remnants: remnantRule.nullable(),
  /** Blanks cut beyond the pieces of a line, for parts that say nothing else. */
  extraBlanks,
  /** By what the shop tells sheets of one metal apart; a line is then cut from one lot. null: it does not. */
  stockKnows: stockKnows.nullable(),
  /** Whether a line whose metal is on its way starts when it is expected, not before; otherwise it is planned at once and said to lack metal. */
  awaitMetal: z.boolean(),
  /** Steps of the set-up that were done or skipped. */
  setUpDone: z.array(z.string().min(1).max(40)).max(20),
  revision,
});
export type Settings = DeepReadonly<z.infer<typeof settings>>;

/** Starting values of a new shop; the Settings screen changes each. Common practice, no source. */
export const newSettings: Omit<Settings, 'name' | 'timeZone' | 'units'> = {
  id: 'shop',
  weights: defaultWeights,
  frozenHours: 0,
  transferShare: 1,
  currency: null,
  crewLimit: null,
  girthRule: 'computedByV',
  partRules: {},
  publishing: 'always',
  backupFolder: null,
  askWho: false,
  decimals: 'point',
  remnants: null,
  extraBlanks: USUAL_EXTRA_BLANKS,
  stockKnows: null,
  awaitMetal: true,
  setUpDone: [],
  revision: 0,
};
