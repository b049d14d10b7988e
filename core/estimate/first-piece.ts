import type { Attribute, Attributes, Machine } from '../shop/machine.ts';
import { standard, TIMES_EDITION, type Timed } from './standards.ts';

/**
 * A first piece is formed, measured and adjusted where a brake was set up otherwise before: for another profile, metal,
 * gauge or tools. It belongs to that changeover and is timed once with it, whatever else changes; another colour or
 * another line of the same needs none. The first edition of the usual times counted one with every line.
 * Common practice, no source.
 */
export const FIRST_PIECE_AFTER: readonly Attribute[] = ['profile', 'material', 'gauge', 'tools'];

/** What the engine knows it by: an attribute that changes when one of those does. */
export const FIRST_PIECE = 'first piece';

const withChangeover = ({ stage, timesEdition }: Pick<Machine, 'stage' | 'timesEdition'>): boolean =>
  stage === 'brake' && timesEdition >= TIMES_EDITION;

/** Whole seconds that a changeover of a brake takes for its first piece; 0 where that is timed otherwise or takes none. */
export const firstPieceSeconds = (machine: Timed): number =>
  withChangeover(machine) ? Math.round(standard(machine, 'firstPiece')) : 0;

/** How many first pieces are timed with each line of a brake. */
export const firstPiecesALine = (machine: Pick<Machine, 'stage' | 'timesEdition'>): number =>
  withChangeover(machine) ? 0 : 1;

/** The value of that attribute; null while something of it is not known, which then costs nothing. */
export function firstPieceValue(attributes: Attributes, hasTools: boolean): string | null {
  const { profile, material, gauge, tools } = attributes;
  if (profile === undefined || material === undefined || gauge === undefined) return null;
  if (hasTools && tools === undefined) return null;
  return [profile, material, gauge, tools ?? ''].join(' | ');
}
