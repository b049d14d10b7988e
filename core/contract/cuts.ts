import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import { code } from '../fields.ts';
import { lineId } from '../shop/order.ts';
import { cutStep, sheetGroup } from '../shop/stock.ts';
import { call, type OutputOf } from './call.ts';
import { jobFields, jobNamed } from './job.ts';

/** A run on the shear, computed beside the screens: the answer comes at once and gets better while it is worked on. */

const mm = z.number().min(0).max(1_000_000);
const count = z.int().min(0).max(1_000_000);
const cents = z.number().min(0).max(1e12);

const stock = {
  id: code,
  widthMm: mm,
  endTrimMm: mm,
  sideTrimMm: mm,
};

/** core/cutting/run.ts `RunInput`. */
export const runInput = z.strictObject({
  lines: z
    .array(
      z.strictObject({
        id: lineId,
        girthMm: mm,
        lengthMm: mm,
        quantity: count,
        overrun: count,
        due: z.number().nullable(),
      }),
    )
    .min(1)
    .max(2000),
  stock: z
    .array(
      z.discriminatedUnion('kind', [
        z.strictObject({
          kind: z.literal('sheet'),
          ...stock,
          lengthMm: mm,
          costCents: cents,
          available: count.nullable(),
          remnant: z.boolean(),
        }),
        z.strictObject({
          kind: z.literal('coil'),
          ...stock,
          lengthMm: z.number().min(0).max(1e9).nullable(),
          centsPerMetre: cents,
        }),
      ]),
    )
    .max(500),
  shear: z.strictObject({
    lengthMm: mm,
    backGaugeMm: z.strictObject({ min: mm, max: mm }),
    scribe: z.boolean(),
    minStripMm: mm,
    continuousFrom: z.int().min(1).nullable(),
  }),
  keep: z.strictObject({ widthMm: mm, lengthMm: mm, most: count, worth: z.number().min(0).max(1) }),
  work: z.strictObject({
    sheet: cents,
    feedAgain: cents,
    setting: cents,
    turn: cents,
    singleStroke: cents,
    continuousStroke: cents,
    line: cents,
  }),
  units: z.strictObject({ units: z.enum(['in', 'mm']), decimals: z.enum(['point', 'comma']) }),
});

const area = z.number().min(0);

/** core/cutting/plan.ts `CutPlan`. */
export const cutPlan = z.strictObject({
  groups: z.array(sheetGroup),
  steps: z.array(cutStep),
  lines: z.array(z.strictObject({ line: lineId, asked: count, cut: count, readyAfterStep: count })),
  counts: z.strictObject({
    sheets: count,
    feedsAgain: count,
    backGaugeMoves: count,
    turns: count,
    singleStrokes: count,
    continuousStrokes: count,
    trimCuts: count,
    blanksStacked: count,
    remnantsKept: count,
  }),
  costCents: cents,
  workCents: cents,
  remnantCents: cents,
  least: z
    .strictObject({
      sheets: z.array(sheetGroup.pick({ stockId: true, count: true, lengthMm: true, costCents: true })),
      workCents: cents,
      remnantCents: cents,
      settings: count,
      lineCuts: count,
    })
    .nullable(),
  lowerBoundCents: cents,
  status: z.enum(['optimal', 'feasible']),
  remnants: z.array(z.strictObject({ widthMm: mm, lengthMm: mm, pieces: count, kept: count })),
  areas: z.strictObject({ blanks: area, remnants: area, scrap: area, trim: area }),
  nearEqual: z.array(
    z.strictObject({ lines: z.tuple([lineId, lineId]).readonly(), differenceMm: z.number() }),
  ),
});

/** Where the work on one run stands. */
export const cutState = z.strictObject({
  ...jobFields,
  /** `runKey` of what is being cut: an answer holds for that very input. */
  key: z.string(),
  /** Best so far; null while there is none. */
  plan: cutPlan.nullable(),
});
export type CutState = DeepReadonly<z.infer<typeof cutState>>;

/** Work on a run; a newer one ends the older, whose best is kept. What was answered to the end already is not started again unless `again`. */
export const cutsSolve = call(
  'cuts.solve',
  z.strictObject({ input: runInput, seconds: z.number().min(0.1).max(600), again: z.boolean() }),
  jobNamed,
);
export const cutsStop = call('cuts.stop', jobNamed, z.strictObject({}));

/**
 * All runs of the plan that are not proven best are worked on by themselves, one after the other, while nobody asks for
 * anything else. `left` runs are still to be worked on.
 */
export const improving = z.strictObject({
  phase: z.enum(['waiting', 'running', 'finished', 'stopped']),
  left: count,
});
export type Improving = DeepReadonly<z.infer<typeof improving>>;

/** Let all runs be worked on, or stop that until it is wanted again, also after the next start. */
export const cutsImprove = call('cuts.improve', z.strictObject({ on: z.boolean() }), z.strictObject({}));

const answers = z.array(z.strictObject({ key: z.string(), plan: cutPlan }));

/** What was found for runs that nobody opened. */
export const cutsFound = z.strictObject({ improving, answers });
export type CutsFound = DeepReadonly<z.infer<typeof cutsFound>>;

/** The run that is being cut or was last, and the best answers to those asked about last, whoever asked. */
export const cutsRead = call(
  'cuts.read',
  z.strictObject({}),
  z.strictObject({
    state: cutState.nullable(),
    improving,
    answers,
  }),
);
export type CutAnswers = OutputOf<typeof cutsRead>;
