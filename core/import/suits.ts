import { dateReadings } from '../time/date-text.ts';
import { readProfile } from '../part/notation.ts';
import { parseLength } from '../units/length.ts';
import { readingsOf } from '../units/number.ts';
import type { Field } from './field.ts';
import type { Names } from './names.ts';
import { withoutPieces } from './pieces.ts';

/** What a column's cells are looked at by. */
export interface Looking {
  readonly names: Names;
  /** "2026-11-30" */
  readonly today: string;
}

/** Whether a text could be a field's, in some style or other. */
export function couldBe(text: string, { sort }: Field, { names, today }: Looking): boolean {
  switch (sort.is) {
    case 'whole':
      return readingsOf(withoutPieces(text)).some(({ value }) => value >= sort.min && value <= sort.max);
    case 'number':
      return readingsOf(text).some(({ value }) => value >= sort.min && value <= sort.max);
    case 'thickness':
    case 'length': {
      const length = parseLength(text, { units: 'mm', decimals: null });
      return length.ok || length.issues[0]?.meanings !== undefined;
    }
    case 'date':
      return dateReadings(text, today).length > 0;
    case 'money':
      return readingsOf(text).length > 0;
    case 'profile': {
      const profile = readProfile(text, { units: 'mm', decimals: null });
      return profile.ok || profile.issues[0]?.meanings !== undefined;
    }
    case 'named':
      return names.find(sort.kind, text) !== null;
    default:
      return true;
  }
}

/** So many cells tell what a column holds. */
const LOOKED_AT = 50;
/** Share of the cells that may be mistakes. */
const MOST_WRONG = 0.5;

/** Whether a column's cells speak against a field: most of them could not be one. Names may be unknown still. */
export function suits(texts: readonly string[], field: Field, looking: Looking): boolean {
  const some = texts.filter((text) => text !== '').slice(0, LOOKED_AT);
  if (some.length === 0 || field.sort.is === 'named') return true;
  return some.filter((text) => !couldBe(text, field, looking)).length <= some.length * MOST_WRONG;
}

/** Whether all that a column holds is a field's, and could hardly be another's. */
export function tells(texts: readonly string[], field: Field, looking: Looking): boolean {
  const some = texts.filter((text) => text !== '').slice(0, LOOKED_AT);
  return some.length > 0 && some.every((text) => couldBe(text, field, looking));
}
