import type { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';
import type { Conflict } from '../result.ts';

/**
 * One request the screens can make: a name, what goes in, what comes out. The same value is used by every host
 * (IPC, loopback HTTP, command line) and by the screens, so that both sides are checked by one schema.
 */
export interface Call<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> {
  readonly name: string;
  readonly input: I;
  readonly output: O;
}

export const call = <I extends z.ZodType, O extends z.ZodType>(
  name: string,
  input: I,
  output: O,
): Call<I, O> => ({
  name,
  input,
  output,
});

/** What the asker of a request hands in, and what the answerer reads once it was checked. */
export type InputOf<C extends Call> = DeepReadonly<z.input<C['input']>>;
export type CheckedInputOf<C extends Call> = DeepReadonly<z.output<C['input']>>;
/** What the answerer returns; core's own values will do, for nobody changes them. */
export type AnswerOf<C extends Call> = DeepReadonly<z.input<C['output']>>;
/** What the asker gets. */
export type OutputOf<C extends Call> = DeepReadonly<z.output<C['output']>>;

/**
 * Why a request was refused. `bad-input`: it does not fit the schema. `refused`: a rule of the shop speaks against it.
 * `conflict`: someone else changed the row first. `busy`: another job is going. `unavailable`: this host cannot do it, or the
 * data file cannot be reached or written now.
 * `damaged`: the data file cannot be used. `forbidden`: an unknown sender. `internal`: a bug; details are in the log.
 */
export type ErrorCode =
  'bad-input' | 'refused' | 'conflict' | 'busy' | 'unavailable' | 'damaged' | 'forbidden' | 'internal';

/** What crosses the border: errors keep code and sentence, a conflict both versions of its rows, and nothing else. */
export type Reply<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: ReplyError };

export interface ReplyError {
  readonly code: ErrorCode;
  readonly message: string;
  readonly conflicts?: readonly Conflict[];
}
