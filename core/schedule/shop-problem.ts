import { z } from 'zod';
import { faultOf, isTakenWord } from '../input-limits.ts';
import { err, ok, issue, type Result } from '../result.ts';
import type { ProblemInput, Schedule } from './problem.ts';

/** An id or the name of an attribute: they are looked up. */
const word = z.string().refine((text) => !isTakenWord(text), 'this word cannot be a name');
const attributes = z.record(word, z.string());
const seconds = z.number();
const changeover = z.object({
  combine: z.enum(['sum', 'max']).default('sum'),
  attributes: z.record(word, seconds).default({}),
  exceptions: z.array(z.object({ attribute: word, from: z.string(), to: z.string(), seconds })).optional(),
  pairs: z
    .object({
      attribute: word,
      values: z.array(z.string()),
      seconds: z.array(z.array(seconds)),
      initial: z.array(seconds).optional(),
    })
    .optional(),
});
const shopProblem = z.object({
  format: z.literal('shop-problem/1'),
  name: z.string(),
  machines: z.array(
    z.object({
      id: word,
      stage: z.string(),
      initial: attributes.nullish(),
      changeover: changeover.nullish(),
    }),
  ),
  jobs: z.array(
    z.object({
      id: word,
      release: z.number().default(0),
      due: z.number().nullish(),
      weight: z.number().default(1),
      operations: z.array(
        z.object({
          stage: z.string(),
          seconds,
          machines: z.array(z.string()).optional(),
          attributes: attributes.optional(),
          holds: z.array(word).optional(),
        }),
      ),
    }),
  ),
  objective: z.object({
    weightedTardiness: z.number().default(0),
    changeover: z.number().default(0),
    makespan: z.number().default(0),
    flowTime: z.number().default(0),
  }),
  sameOrder: z.boolean().optional(),
  partOf: z.record(word, z.array(word)).optional(),
  bestKnown: z.number().nullish(),
  bestKnownIsOptimal: z.boolean().optional(),
});

/** Of a file that is wrong all over, so many places are told. */
const MOST_TOLD = 20;

/** A problem file: what to schedule, and the best objective known for it, if any. */
export interface ShopProblem {
  readonly input: ProblemInput;
  readonly bestKnown: number | null;
}

/**
 * Reads a parsed `shop-problem/1` value. Fields it does not know are left aside; an operation's id is made of its job's
 * id, "#" and its position from 1; time runs from 0 without calendars.
 * @returns the problem as input (not yet validated: `buildProblem` does), or where its shape is wrong
 */
export function readShopProblem(raw: unknown): Result<ShopProblem> {
  const fault = faultOf(raw, { values: Infinity });
  if (fault)
    return err(
      issue(
        'problem file',
        '',
        `The problem file cannot be read: ${fault}.`,
        'Correct it to shop-problem/1.',
      ),
    );
  const read = shopProblem.safeParse(raw);
  if (!read.success)
    return err(
      ...read.error.issues
        .slice(0, MOST_TOLD)
        .map(({ path, message }) =>
          issue(
            'problem file',
            path.join('.'),
            `The problem file is wrong at ${path.join('.') || 'its top'}: ${message}.`,
            'Correct it to shop-problem/1.',
          ),
        ),
    );
  const file = read.data;
  const input: ProblemInput = {
    name: file.name,
    now: 0,
    sameOrder: file.sameOrder ?? false,
    partOf: file.partOf ?? {},
    objective: { ...file.objective, stability: 0 },
    machines: file.machines.map((machine) => ({
      id: machine.id,
      stage: machine.stage,
      initial: machine.initial ?? null,
      changeover: machine.changeover ?? null,
      open: null,
    })),
    jobs: file.jobs.map((job) => ({
      id: job.id,
      release: job.release,
      due: job.due ?? null,
      weight: job.weight,
      operations: job.operations.map(({ machines, ...operation }, k) => ({
        ...operation,
        id: `${job.id}#${k + 1}`,
        ...(machines && { machines: machines.map((id) => ({ id })) }),
      })),
    })),
  };
  return ok({ input, bestKnown: file.bestKnown ?? null });
}

/** A schedule as the result of a problem file: name, objective, terms, and a row an operation. */
export function writeShopResult(name: string, schedule: Schedule) {
  const { weightedTardiness, changeover: changeovers, makespan, flowTime } = schedule.terms;
  return {
    name,
    objective: schedule.objective,
    terms: { weightedTardiness, changeover: changeovers, makespan, flowTime },
    operations: schedule.operations.map(({ job, index, machine, changeoverStart, start, end }) => ({
      job,
      index,
      machine,
      changeoverStart,
      start,
      end,
    })),
  };
}
