/**
 * Trouble that a user can cause comes back as data; only bugs throw.
 * A problem names what (subject), which field, which rule or limit, and what to do about it.
 */
export interface Problem {
  /** The thing in the user's words, e.g. "line 1042/2", "machine B1", "row 14". */
  readonly subject: string;
  /** The field or column, e.g. "quantity". */
  readonly field: string;
  /** A whole sentence: what is wrong with which value, and the limit. */
  readonly message: string;
  /** What to do about it, a whole sentence. */
  readonly advice: string;
}

export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

export const good = <T>(value: T): Result<T> => ({ ok: true, value });
export const bad = (...problems: Problem[]): Result<never> => ({ ok: false, problems });
/** Shorthand for one refused field. */
export const problem = (subject: string, field: string, message: string, advice: string): Problem => ({
  subject,
  field,
  message,
  advice,
});
/** Problems as one text for a message or a terminal line. */
export const sentence = (problems: readonly Problem[]): string =>
  problems.map((p) => `${p.message} ${p.advice}`.trim()).join(' ');
