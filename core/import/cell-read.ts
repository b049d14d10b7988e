import type { Material } from '../material/material.ts';
import type { Meaning } from '../result.ts';
import type { NamedKind } from '../shop/other-name.ts';
import type { Shop } from '../shop/state.ts';
import type { DateOrder } from '../time/date-text.ts';
import type { Instant } from '../units/brand.ts';
import type { LengthUnit } from '../units/length.ts';
import type { NumberStyle } from '../units/number.ts';
import type { Value } from './field.ts';
import type { Names } from './names.ts';

/** How the cells of a column are read. */
export interface ColumnStyle extends NumberStyle {
  /** The unit of bare figures. */
  readonly unit: LengthUnit;
  /** It is asked in which unit bare figures are: until then they wait. */
  readonly unitOpen: boolean;
  /** The order of day, month and year; null: not known. */
  readonly dates: DateOrder | null;
  /** Bare figures of a gauge column are thicknesses, since its heading says so. */
  readonly thickness: boolean;
}

/** What came of a cell. */
export type CellRead =
  | { readonly is: 'empty' }
  /** @property shows as people see it: "Fri 4 Dec 2026 17:00" */
  | { readonly is: 'read'; readonly value: Value; readonly shows: string }
  | { readonly is: 'wrong'; readonly reason: string }
  /** It can mean two things: which one is asked for the whole column. */
  | { readonly is: 'open'; readonly meanings: readonly Meaning[] }
  /** The shop does not know it: which of its own it is, is asked for the whole file. */
  | {
      readonly is: 'unknown';
      readonly what: NamedKind;
      readonly choices: readonly { readonly id: string; readonly name: string }[];
    }
  /** It can be read once another cell of the row can. */
  | { readonly is: 'later' };

/** What a cell is read against. */
export interface CellContext {
  readonly shop: Shop;
  readonly names: Names;
  readonly now: Instant;
  /** The row's material; null: none, or not known yet. */
  readonly material: Material | null;
}
