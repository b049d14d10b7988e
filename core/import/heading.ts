import { unitNamed, type LengthUnit } from '../units/length.ts';
import type { Field } from './field.ts';
import { keystrokes, plainWords } from './words.ts';

/** A heading in its two parts. */
export interface Heading {
  /** Its name as `plainWords` writes it: "lange" of "Länge (mm)". */
  readonly name: string;
  /** "mm", "ft"; null: it names none. */
  readonly unit: LengthUnit | null;
}

/** Reads a heading: a unit stands in brackets, after a comma or slash, after "in" or "en", or as its last word. */
export function readHeading(text: string): Heading {
  const [, before = '', inside = ''] = /^(.*?)\s*[([{]\s*([^()[\]{}]+?)\s*[)\]}]\s*$/.exec(text) ?? [];
  const bracketed = unitNamed(inside);
  if (bracketed !== null) return { name: plainWords(before), unit: bracketed };
  const [, name = '', last = ''] =
    /^(.*\S)(?:\s*[,;/:]\s*|\s+(?:in|en|à|a)\s+|[\s_-]+)([a-z"']+\.?)\s*$/i.exec(text) ?? [];
  const unit = unitNamed(last);
  // "Len in in" and "Longueur en m" have a small word before their unit.
  const own = plainWords(name.replace(/\s+(?:in|en|à)$/i, ''));
  if (unit !== null && own !== '') return { name: own, unit };
  return { name: plainWords(text), unit: null };
}

/** How well a heading fits a field: 0 is best, `NEAR` and above is only alike and wants a look; null: not at all. */
export function fitOf({ name }: Heading, field: Field): number | null {
  if (name === '') return null;
  const exact = field.words.indexOf(name);
  if (name === plainWords(field.name)) return 0;
  if (exact >= 0) return exact;
  const near = field.words.findIndex((word) => isAlike(name, word));
  return near < 0 ? null : NEAR + near;
}

/** From here on a heading is only like the field's words. */
export const NEAR = 1000;
/** Words shorter than this have too many neighbours. */
const LONG = 5;

/** Words that make another thing of the one beside them: an order date is no order, a coil width no coil. */
const OTHER_THINGS =
  /\b(?:date|datum|fecha|time|zeit|price|preis\w*|\w*preis|prix|precio|total|amount|kg|lbs?|weight|gewicht|poids|peso|width|breite|\w+breite|largeur|ancho|description|\w*bezeichnung|designation|by|par|von|por)\b/;

/** One slip of the keyboard, or the word among others: "quantty", "planned length". */
function isAlike(name: string, word: string): boolean {
  if (word.length < LONG) return false;
  if (` ${name} `.includes(` ${word} `)) return !OTHER_THINGS.test(` ${name} `.replace(` ${word} `, ' '));
  return Math.abs(name.length - word.length) <= 1 && keystrokes(name, word) <= 1;
}
