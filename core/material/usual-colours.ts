import { freeCode } from '../code.ts';

interface Colour {
  readonly id: string;
  readonly name: string;
  /** What a screen paints it with, "#2f5d3a". */
  readonly hex: string;
  readonly revision: number;
}

/** A sheet without paint has a colour as well: a line names one. */
export const BARE = 'Mill finish';

/** Plain colour names and how a screen paints them; our own, no supplier's card. */
export const USUAL_COLOURS: readonly (readonly [name: string, hex: string])[] = [
  [BARE, '#a8adb2'],
  ['White', '#f1f0ea'],
  ['Cream', '#e6dcc0'],
  ['Light grey', '#c3c6c6'],
  ['Grey', '#8b9093'],
  ['Dark grey', '#484c50'],
  ['Black', '#25272a'],
  ['Brown', '#5a4334'],
  ['Red', '#8f3029'],
  ['Green', '#3f5f46'],
  ['Blue', '#35557a'],
];
/** A name that is none of these, until someone picks its colour. */
const UNKNOWN_HEX = '#808080';

/** A new colour of that name. @param taken codes in use */
export const newColour = (name: string, taken: Iterable<string>): Colour => ({
  id: freeCode(name, taken),
  name,
  hex: USUAL_COLOURS.find(([usual]) => usual.toLowerCase() === name.toLowerCase())?.[1] ?? UNKNOWN_HEX,
  revision: 0,
});
