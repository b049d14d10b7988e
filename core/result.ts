/**
 * Trouble that a user can cause comes back as data; only bugs throw.
 * An issue names what (subject), which field, which rule or limit, and what to do about it.
 */
export interface Issue {
  /** The thing in the user's words, e.g. "line 1042/2", "machine B1", "row 14". */
  readonly subject: string;
  /** The field or column, e.g. "quantity". */
  readonly field: string;
  /** A whole sentence: what is wrong with which value, and the limit. */
  readonly message: string;
  /** What to do about it, a whole sentence. */
  readonly advice: string;
  /** Of a row that was changed since it was read: both versions. */
  readonly conflict?: Conflict;
  /** Of a text that can mean several things: each, so that one can be chosen. */
  readonly meanings?: readonly Meaning[];
}

/** One of the things a text can mean. */
export interface Meaning {
  /** What would settle it: the mark before decimals, the order of day, month and year. */
  readonly when: 'point' | 'comma' | 'dmy' | 'mdy' | 'ymd';
  /** In the words of a screen: "1234 mm", "Fri 4 Dec 2026". */
  readonly means: string;
}

/** What was to be saved of a row, and what stands there since; null: removed. Nothing of either is lost. */
export interface Conflict {
  /** A kind of row (core/shop/state.ts). */
  readonly kind: string;
  readonly id: string;
  readonly mine: object | null;
  readonly theirs: object | null;
}

export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: readonly Issue[] };

export const ok = <T>(value: T): Result<T> => ({ ok: true, value });
export const err = (...issues: Issue[]): Result<never> => ({ ok: false, issues });
/** Shorthand for one refused field. */
export const issue = (subject: string, field: string, message: string, advice: string): Issue => ({
  subject,
  field,
  message,
  advice,
});
/** Issues as one text for a message or a terminal line. */
export const sentence = (issues: readonly Issue[]): string =>
  issues.map((p) => `${p.message} ${p.advice}`.trim()).join(' ');
