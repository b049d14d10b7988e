import { z } from 'zod';
import type { DeepReadonly } from '../deep-readonly.ts';

/**
 * What prefinished sheet is painted with. The same colour of another paint system, or of another dye lot, does not match
 * on a wall, so a line is cut from one. Words of the trade; which of them a supplier sells is common practice, no source.
 */
export const paintSystem = z.enum(['polyester', 'siliconePolyester', 'polyurethane', 'pvdf', 'plastisol']);
export type PaintSystem = z.infer<typeof paintSystem>;

export const PAINT_WORDS: Readonly<Record<PaintSystem, string>> = {
  polyester: 'polyester',
  siliconePolyester: 'silicone polyester',
  polyurethane: 'polyurethane',
  pvdf: 'PVDF',
  plastisol: 'plastisol',
};

/** Whether protective film is on it, which stays on while it is sheared and bent. */
export const film = z.enum(['with', 'without']);
export type Film = z.infer<typeof film>;

/** What tells sheets of one metal apart, as it stands on a stock row, and as a line asks for it. */
export const lotFields = {
  /** The dye lot as it stands on the bundle; '': not on record, of a line: any. */
  lot: z.string().trim().max(40, 'at most 40 characters'),
  /** null: not on record; of a line: any. */
  paint: paintSystem.nullable(),
  /** null: not on record; of a line: either. */
  film: film.nullable(),
};

/** Sheets that look alike: one dye lot, one paint system, with film or without. */
export const lot = z.strictObject(lotFields);
export type Lot = DeepReadonly<z.infer<typeof lot>>;

/** Nothing on record. */
export const NO_LOT: Lot = { lot: '', paint: null, film: null };

/** What a shop keeps of its sheets. */
export const stockKnows = z.strictObject({ lot: z.boolean(), paint: z.boolean(), film: z.boolean() });
export type StockKnows = DeepReadonly<z.infer<typeof stockKnows>>;

/** Of a sheet or a line what the shop keeps; what it does not keep tells nothing apart. */
export const lotOf = (knows: StockKnows, of: Lot): Lot => ({
  lot: knows.lot ? of.lot : '',
  paint: knows.paint ? of.paint : null,
  film: knows.film ? of.film : null,
});

export const sameLot = (a: Lot, b: Lot): boolean =>
  a.lot === b.lot && a.paint === b.paint && a.film === b.film;

/** A text that is equal for equal lots, and sorts them: those on record by their names. */
export const lotKey = ({ lot: name, paint, film }: Lot): string => JSON.stringify([name, paint, film]);

/** Whether sheets of a lot are what is asked for: all that is asked stands on record of them. */
export const suits = (asked: Lot, has: Lot): boolean =>
  (asked.lot === '' || asked.lot === has.lot) &&
  (asked.paint === null || asked.paint === has.paint) &&
  (asked.film === null || asked.film === has.film);

/** "lot M-2231, PVDF, with film"; '' where nothing is on record. */
export const lotWords = ({ lot: name, paint, film }: Lot): string =>
  [name !== '' && `lot ${name}`, paint !== null && PAINT_WORDS[paint], film !== null && `${film} film`]
    .filter(Boolean)
    .join(', ');
