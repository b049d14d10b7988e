import type { z } from 'zod';
import type { Issue } from '../../core/result.ts';

/** Sentences by field; a nested field's key is its path joined by dots, "gauges.0.label". '' is the form as a whole. */
export type FieldErrors = Readonly<Record<string, string>>;

/** What zod would say in its own words, said for people. Schemas with a message of their own keep it. */
function plainWords(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.expected === 'int') return 'Must be a whole number';
      return issue.expected === 'number' ? 'Needs a number' : 'Needs a value';
    case 'too_small':
      return issue.inclusive === false
        ? `Must be above ${issue.minimum}`
        : `Must be at least ${issue.minimum}`;
    case 'too_big':
      return issue.inclusive === false
        ? `Must be below ${issue.maximum}`
        : `Must be at most ${issue.maximum}`;
    default:
      return 'Does not fit here';
  }
}

/** Fields kept in millimetres, megapascals or kilograms: a limit in them says nothing to a shop that types inches. */
const KEPT_IN_OTHER_UNITS = /(Mm|Mpa|PerM2)$/;

/** Complaints about such a field without the figure, but for nought, which is the same in all units. */
function unitless(issue: z.core.$ZodIssue): string {
  const limit = issue.code === 'too_big' || issue.code === 'too_small' ? issue : null;
  if (limit?.origin !== 'number') return issue.message;
  if (!issue.path.some((key) => KEPT_IN_OTHER_UNITS.test(String(key)))) return issue.message;
  if (limit.code === 'too_big') return 'Is too large';
  return limit.minimum === 0 ? issue.message : 'Is too small';
}

const asSentence = (words: string): string => {
  const text = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?]$/.test(text) ? text : `${text}.`;
};

/**
 * What a schema has against a form's entries, the first complaint of each field.
 * @returns no keys when the entries can be saved
 */
export function fieldErrors(schema: z.ZodType, entries: unknown): FieldErrors {
  const parsed = schema.safeParse(entries, { error: plainWords });
  if (parsed.success) return {};
  const errors: Record<string, string> = {};
  for (const issue of parsed.error.issues) errors[issue.path.join('.')] ??= asSentence(unitless(issue));
  return errors;
}

/** A rule's refusals at the fields they name; `fieldOf` maps the rule's word to the form's key, '' when no field shows it. */
export function refusalErrors(issues: readonly Issue[], fieldOf: (problem: Issue) => string): FieldErrors {
  const errors: Record<string, string> = {};
  for (const problem of issues) {
    const key = fieldOf(problem);
    const sentence = `${problem.message} ${problem.advice}`.trim();
    errors[key] = errors[key] === undefined ? sentence : `${errors[key]} ${sentence}`;
  }
  return errors;
}
