import type { z } from 'zod';
import type { FileKind } from '../shop/file-layout.ts';
import type { NamedKind } from '../shop/other-name.ts';

/** What a cell of a field says, by which it is read (core/import/read-cell.ts). */
export type Sort =
  /** A text by one of the nouns' own schemas. */
  | { readonly is: 'text'; readonly schema: z.ZodType<string> }
  | { readonly is: 'whole'; readonly min: number; readonly max: number }
  | { readonly is: 'number'; readonly min: number; readonly max: number }
  /** Read as millimetres above 0. @property zero it may be 0 */
  | { readonly is: 'length'; readonly zero?: true }
  /** Of a sheet; read as millimetres, shown finer than a length. */
  | { readonly is: 'thickness' }
  /** Read as whole cents. */
  | { readonly is: 'money' }
  /** One of a few, each with the words that stand for it, as `plainWords` writes them; read as its key. */
  | { readonly is: 'one-of'; readonly words: Readonly<Record<string, readonly string[]>> }
  /** A cross-section in our notation (core/part/notation.ts); read as that text in millimetres. */
  | { readonly is: 'profile' }
  /** Read as epoch seconds on the shop's wall clock. @property clock the time of a date that has none */
  | { readonly is: 'date'; readonly clock: string }
  | { readonly is: 'yes-no' }
  /** A row of the shop by its code, name or another name; read as its code. */
  | { readonly is: 'named'; readonly kind: Extract<NamedKind, 'part' | 'material' | 'colour' | 'machine'> }
  /** A gauge of the row's material: a label, or a thickness that is one's. */
  | { readonly is: 'gauge' };

/** One thing that a row of a file says. */
export interface Field {
  /** Our own name of it, in our own files and on screen: "quantity". */
  readonly name: string;
  readonly sort: Sort;
  /** Whether every row must say it, or the file as a whole (an order's first row): then it must have a column. */
  readonly needed: 'row' | 'file' | 'no';
  /** What files call its column besides, the likeliest first, as `plainWords` writes them (core/import/vocabulary.ts). */
  readonly words: readonly string[];
}

/** What files of a kind hold. */
export interface FileFields {
  readonly kind: FileKind;
  readonly fields: readonly Field[];
  /** The field without which a row is none: a row of sums lacks it. */
  readonly key: string;
}

/** A cell as it is understood. */
export type Value = string | number | boolean;

/** Of a row: what its fields say; a field that says nothing is missing. */
export type Values = Readonly<Record<string, Value | undefined>>;
