import { LONGEST } from '../fields.ts';
import { MOST } from '../input-limits.ts';
import { sentence, type Result } from '../result.ts';
import { formatDayYearAndClock, toInstant, wallParts } from '../time/wall.ts';
import { readDateText } from '../time/date-text.ts';
import { MAX_THICKNESS_MM } from '../material/material.ts';
import { readProfile, writeProfile } from '../part/notation.ts';
import { formatLength, formatThickness, parseLength } from '../units/length.ts';
import { formatAmount, parseMoney } from '../units/money.ts';
import { readNumber, readWhole, writeNumber } from '../units/number.ts';
import type { Field, Value } from './field.ts';
import type { CellContext, CellRead, ColumnStyle } from './cell-read.ts';
import { isBareFigure } from './bare-figure.ts';
import { readGauge } from './gauge-cell.ts';
import type { Cell } from './grid.ts';
import type { Names } from './names.ts';
import { withoutPieces } from './pieces.ts';
import { plainWords } from './words.ts';

const read = (value: Value, shows = String(value)): CellRead => ({ is: 'read', value, shows });
const wrong = (reason: string): CellRead => ({ is: 'wrong', reason });

/** A refusal as a cell shows it; one of two meanings is asked. */
function ofResult<T extends Value>(result: Result<T>, show: (value: T) => string): CellRead {
  if (result.ok) return read(result.value, show(result.value));
  const meanings = result.issues[0]?.meanings;
  return meanings ? { is: 'open', meanings } : wrong(sentence(result.issues));
}

/** Reads a cell by the rule of its field. */
export function readCell(cell: Cell, field: Field, style: ColumnStyle, context: CellContext): CellRead {
  const text = cell.text.trim();
  if (text === '') return { is: 'empty' };
  const { sort, name } = field;
  if (sort.is === 'text') return readText(text, name, sort.schema);
  if (sort.is === 'profile') return readShape(text, style, context);
  // What is far too long is not looked at, nor repeated.
  if (text.length > MOST.shortCellCharacters)
    return wrong(
      `The ${name} is ${text.length} characters long; at most ${MOST.shortCellCharacters} can be read.`,
    );
  const exact: ColumnStyle =
    cell.number === undefined ? style : { ...style, decimals: 'point', settled: true };
  const { decimals } = context.shop.settings;
  switch (sort.is) {
    case 'whole':
      return ofResult(readWhole(withoutPieces(text), exact, name, sort), String);
    case 'number':
      return ofResult(readNumber(text, exact, name, sort), (value) => writeNumber(value, decimals));
    case 'length':
      return readLength(text, sort, exact, context);
    case 'thickness':
      return readThickness(text, exact, context);
    case 'money':
      return ofResult(parseMoney(text, exact), (cents) => formatAmount(cents, decimals));
    case 'one-of':
      return readOneOf(text, name, sort.words);
    case 'date':
      return readDate(text, sort.clock, style, context);
    case 'yes-no':
      return readYesNo(text);
    case 'named':
      return readName(text, sort.kind, context.names);
    case 'gauge':
      return readGauge(text, exact, context);
  }
}

function readText(
  text: string,
  name: string,
  schema: Extract<Field['sort'], { is: 'text' }>['schema'],
): CellRead {
  const fits = schema.safeParse(text);
  if (fits.success) return read(fits.data);
  return wrong(
    `“${text.slice(0, 60)}” is no ${name}: ${fits.error.issues[0]?.message ?? 'it cannot be read'}.`,
  );
}

function readLength(
  text: string,
  { zero }: Extract<Field['sort'], { is: 'length' }>,
  style: ColumnStyle,
  { shop }: CellContext,
): CellRead {
  const { units } = shop.settings;
  if (style.unitOpen && isBareFigure(text)) return { is: 'open', meanings: [] };
  const length = parseLength(text, { ...style, units: style.unit });
  if (length.ok && (length.value > 50_000 || (length.value <= 0 && !zero)))
    return wrong(
      `A length must be ${zero ? 'at least' : 'above'} 0 and at most ${LONGEST[units]}, not ${text}.`,
    );
  return ofResult(length, (mm) => formatLength(mm, shop.settings));
}

function readThickness(text: string, style: ColumnStyle, { shop }: CellContext): CellRead {
  const thickness = parseLength(text, { ...style, units: style.unit });
  if (thickness.ok && (thickness.value <= 0 || thickness.value > MAX_THICKNESS_MM))
    return wrong(
      `A sheet’s thickness must be above 0 and at most ${formatThickness(MAX_THICKNESS_MM, shop.settings)}, not ${text}.`,
    );
  return ofResult(thickness, (mm) => formatThickness(mm, shop.settings));
}

/** A profile travels as its text, in millimetres with points whatever the shop writes. */
function readShape(text: string, style: ColumnStyle, { shop: { settings } }: CellContext): CellRead {
  const profile = readProfile(text, { ...style, units: style.unit });
  if (!profile.ok) return ofResult<never>(profile, String);
  return read(writeProfile(profile.value, PROFILE_STYLE), writeProfile(profile.value, settings));
}

/** How `readCell` writes a profile for those who read its value. */
export const PROFILE_STYLE = { units: 'mm', decimals: 'point' } as const;

function readOneOf(
  text: string,
  name: string,
  words: Extract<Field['sort'], { is: 'one-of' }>['words'],
): CellRead {
  const plain = plainWords(text);
  const found = Object.keys(words).find((key) => plain === plainWords(key) || words[key]!.includes(plain));
  if (found !== undefined) return read(found);
  return wrong(`“${text}” is no ${name}. Write ${Object.keys(words).join(' or ')}.`);
}

function readDate(text: string, clock: string, style: ColumnStyle, { shop, now }: CellContext): CellRead {
  const { timeZone } = shop.settings;
  const found = readDateText(text, { order: style.dates, today: wallParts(now, timeZone).date });
  if (!found.ok) return ofResult<never>(found, String);
  const at = toInstant(found.value.date, found.value.clock ?? clock, timeZone);
  return read(at, formatDayYearAndClock(at, timeZone));
}

/** English, German, French, Spanish; a cross or a tick is a yes. */
const YES = [
  'yes',
  'y',
  'true',
  '1',
  'x',
  'rush',
  '✓',
  'ja',
  'j',
  'oui',
  'o',
  'si',
  'sí',
  'wahr',
  'vrai',
  'eilt',
];
const NO = ['no', 'n', 'false', '0', '-', 'nein', 'non', 'falsch', 'faux'];

function readYesNo(text: string): CellRead {
  const plain = text.toLowerCase();
  if (YES.includes(plain)) return read(true, 'yes');
  return NO.includes(plain)
    ? read(false, 'no')
    : wrong(`“${text}” is neither yes nor no. Write yes, no, or leave it empty.`);
}

function readName(
  text: string,
  kind: Extract<Field['sort'], { is: 'named' }>['kind'],
  names: Names,
): CellRead {
  const row = names.find(kind, text);
  if (row) return read(row.id, kind === 'part' || kind === 'machine' ? row.id : row.name);
  return { is: 'unknown', what: kind, choices: names.nearest(kind, text) };
}
