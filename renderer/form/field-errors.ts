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
  for (const issue of parsed.error.issues) errors[issue.path.join('.')] ??= asSentence(issue.message);
  return errors;
}

/** A rule's refusals at the fields they name; `fieldOf` maps the rule's word to the form's key, '' when no field shows it. */
export function refusalErrors(
  issues: readonly Issue[],
  fieldOf: (problem: Issue) => string,
): FieldErrors {
  const errors: Record<string, string> = {};
  for (const problem of issues) {
    const key = fieldOf(problem);
    const sentence = `${problem.message} ${problem.advice}`.trim();
    errors[key] = errors[key] === undefined ? sentence : `${errors[key]} ${sentence}`;
  }
  return errors;
}
