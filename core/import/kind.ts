import type { Command, Remembered } from '../edit/command.ts';
import type { OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';
import type { FileFields } from './field.ts';
import type { RowState } from './reading.ts';
import type { ReadRow } from './read-rows.ts';

/** What the data file knows beside the living shop. */
export interface Past {
  /** A work order that is over and in the archive. */
  readonly order: (id: string) => boolean;
  /** Work on a line of this number is on record. */
  readonly line: (id: string) => boolean;
  /** The record of a finished operation. */
  readonly record: (id: string) => OperationRecord | null;
}

/** What rows of a kind are judged by. */
export interface JudgeContext {
  readonly shop: Shop;
  readonly now: Instant;
  readonly past: Past;
  /** Rows with cells that are wrong or wait: what they say besides is said all the same. */
  readonly unread: readonly ReadRow[];
  /** Rows that are meant as they are. */
  readonly accepted: ReadonlySet<number>;
}

/** What a row is to the shop. */
export interface JudgedRow {
  readonly state: Extract<RowState, 'new' | 'changed' | 'known'>;
  /** "line 1042/2" */
  readonly subject: string;
  /** What to know of it; ''. */
  readonly words: string;
  /** What stands in the shop now, by the field that changes it. */
  readonly was: Readonly<Record<string, string>>;
}

/** What is wrong with a cell of a row, or (field null) with the row. */
export interface RowIssue {
  readonly row: number;
  readonly field: string | null;
  readonly reason: string;
  /** It can be meant so. */
  readonly acceptable?: true;
}

export interface Judged {
  /** By row; a row with an issue may have none. */
  readonly rows: ReadonlyMap<number, JudgedRow>;
  readonly issues: readonly RowIssue[];
  /** What is to be said of the file. Whole sentences. */
  readonly notes: readonly string[];
  readonly missing: readonly { readonly id: string; readonly words: string }[];
  /** Takes what is new and changed; null: nothing is. */
  readonly command: ((fileName: string, remembered: Remembered) => Command) | null;
}

/** A kind of file: what its rows say, and what they are to the shop. */
export interface ImportKind {
  /** What of it a shop's files must and can say. */
  readonly fields: (shop: Shop) => FileFields;
  /** @param rows those whose cells can all be read, in the file's order */
  readonly judge: (rows: readonly ReadRow[], context: JudgeContext) => Judged;
}
