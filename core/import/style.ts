import type { Layout } from '../shop/file-layout.ts';
import type { LengthUnits } from '../units/length.ts';
import { readProfile } from '../part/notation.ts';
import { parseLength, unitNamed } from '../units/length.ts';
import { parseMoney } from '../units/money.ts';
import { readingsOf, readNumber, readWhole, type DecimalMark } from '../units/number.ts';
import { dateOrders, readDateText, type DateOrder } from '../time/date-text.ts';
import type { Meaning, Result } from '../result.ts';
import type { Answers } from './answers.ts';
import type { Field, Sort } from './field.ts';
import { hasFraction, isBareFigure } from './bare-figure.ts';
import type { Cell } from './grid.ts';
import { withoutPieces } from './pieces.ts';
import type { ColumnUse } from './propose.ts';
import type { ColumnStyle } from './cell-read.ts';
import type { ColumnReading } from './reading.ts';

/**
 * How a column's cells are read. Only the column's own cells, and what was said of it, tell: a cell that can be read one
 * way only shows how the others are meant. Where none does, or two contradict, it is asked once.
 */
export interface SettledStyle {
  readonly style: ColumnStyle;
  readonly unitFrom: ColumnReading['unitFrom'];
  /** The first cell that can mean two things while nothing says which. */
  readonly open: Open | null;
}

/** What must be asked of a column, with the first cell that shows it. */
type Open = { readonly row: number; readonly text: string } & (
  | { readonly is: 'decimals' | 'dates'; readonly meanings: readonly Meaning[] }
  | { readonly is: 'units'; readonly meanings: readonly UnitMeaning[] }
);

/** In which unit a bare figure is. */
interface UnitMeaning {
  readonly when: LengthUnits;
  readonly means: string;
}

interface Asked {
  readonly answers: Answers;
  readonly remembered: Layout | null;
  readonly units: LengthUnits;
  /** "2026-11-30" */
  readonly today: string;
}

type Cells = readonly { readonly row: number; readonly cell: Cell }[];
type Texts = readonly { readonly row: number; readonly text: string }[];

export function settleStyle(field: Field, use: ColumnUse | null, cells: Cells, asked: Asked): SettledStyle {
  const { unit, unitFrom } = unitOf(field, use, asked);
  const plain: ColumnStyle = {
    unit,
    unitOpen: false,
    decimals: null,
    settled: false,
    dates: null,
    thickness: isThickness(use),
  };
  const texts = textsOnce(cells);
  if (field.sort.is === 'date') return { ...settleDates(field, texts, plain, asked), unitFrom };
  const odd =
    field.sort.is === 'length' && unitFrom === 'shop' && unit === 'mm' ? inchesOf(texts) : undefined;
  if (odd)
    return {
      style: { ...plain, unitOpen: true },
      unitFrom,
      open: { ...odd, is: 'units', meanings: unitMeanings(odd.text) },
    };
  return { ...settleDecimals(field, texts, plain, asked), unitFrom };
}

/** A bare fraction, where nothing says that it is inches. */
const inchesOf = (texts: Texts): Texts[number] | undefined =>
  texts.find(
    ({ text }) =>
      hasFraction(text) && isBareFigure(text) && parseLength(text, { units: 'in', decimals: null }).ok,
  );

const unitMeanings = (text: string): UnitMeaning[] =>
  (['mm', 'in'] as const).map((when) => ({ when, means: `${text} ${when}` }));

/** The first cell of each text that nobody but a reader knows the meaning of: a spreadsheet's own numbers are exact. */
function textsOnce(cells: Cells): Texts {
  const first = new Map<string, number>();
  for (const { row, cell } of cells)
    if (cell.number === undefined && cell.text !== '' && !first.has(cell.text)) first.set(cell.text, row);
  return [...first].map(([text, row]) => ({ row, text }));
}

/** Bare figures under "Dicke" or "thickness" are thicknesses, under "gauge" numbers of gauges. */
const isThickness = (use: ColumnUse | null): boolean =>
  use !== null && (use.heading.unit !== null || !/\b(?:ga|gage|gauges?|calibre)\b/.test(use.heading.name));

/** What has a unit, and what has decimals. */
const MEASURED: readonly Sort['is'][] = ['length', 'thickness', 'gauge', 'profile'];
const FIGURES: readonly Sort['is'][] = ['whole', 'number', 'money', ...MEASURED];

function unitOf(
  { name, sort }: Field,
  use: ColumnUse | null,
  { answers, remembered, units }: Asked,
): { unit: ColumnStyle['unit']; unitFrom: ColumnReading['unitFrom'] } {
  if (!MEASURED.includes(sort.is)) return { unit: units, unitFrom: null };
  const said = unitNamed(answers.units?.[name] ?? '');
  if (said) return { unit: said, unitFrom: 'said' };
  if (use?.heading.unit) return { unit: use.heading.unit, unitFrom: 'heading' };
  const kept = unitNamed(remembered?.units[name] ?? '');
  return kept ? { unit: kept, unitFrom: 'remembered' } : { unit: units, unitFrom: 'shop' };
}

function settleDecimals(
  field: Field,
  texts: Texts,
  plain: ColumnStyle,
  { answers, remembered }: Asked,
): Omit<SettledStyle, 'unitFrom'> {
  const { name, sort } = field;
  const said = answers.decimals?.[name];
  const settled = (decimals: DecimalMark) => ({ style: { ...plain, decimals, settled: true }, open: null });
  if (said) return settled(said);
  if (!FIGURES.includes(sort.is)) return { style: plain, open: null };
  const marks = new Set<DecimalMark>();
  let open: SettledStyle['open'] = null;
  for (const { row, text } of texts) {
    const read = readFigure(text, field, plain);
    // What is no number says nothing of how numbers are written.
    if (read.ok) for (const mark of marksOf(text, sort)) marks.add(mark);
    const meanings = read.ok ? undefined : read.issues[0]?.meanings;
    if (meanings) open ??= { is: 'decimals', row, text, meanings };
  }
  if (!open) return { style: plain, open };
  const [mark, ...others] = marks;
  if (mark && others.length === 0) return settled(mark);
  const kept = remembered?.decimals[name];
  return kept && !mark ? settled(kept) : { style: plain, open };
}

/** The marks that a cell shows: each step of a profile may show one. */
const marksOf = (text: string, { is }: Sort): DecimalMark[] =>
  (is === 'profile' ? text.split(/[\s;|:]+/) : [text]).flatMap((one) => markOf(one) ?? []);

/** The decimal mark of one who writes a text so, where only one could. */
function markOf(text: string): DecimalMark | null {
  const figure = /^[^\d.,]*?([\d.,'’ \u00a0\u202f\u2009]*\d)(?![\d\s]*\/)/.exec(text)?.[1]?.trim() ?? '';
  const [mark, ...others] = new Set(readingsOf(figure).map((one) => one.mark));
  return others.length === 0 ? (mark ?? null) : null;
}

function readFigure(text: string, { sort }: Field, style: ColumnStyle): Result<unknown> {
  const measured = { ...style, units: style.unit };
  switch (sort.is) {
    case 'whole':
      return readWhole(withoutPieces(text), style);
    case 'number':
      return readNumber(text, style);
    case 'money':
      return parseMoney(text, style);
    case 'profile':
      return readProfile(text, measured);
    default:
      return parseLength(text, measured);
  }
}

function settleDates(
  field: Field,
  texts: Texts,
  plain: ColumnStyle,
  { answers, remembered, today }: Asked,
): Omit<SettledStyle, 'unitFrom'> {
  const settled = (dates: DateOrder) => ({ style: { ...plain, dates }, open: null });
  const said = answers.dates?.[field.name];
  if (said) return settled(said);
  const sure = new Set<DateOrder>();
  let open: SettledStyle['open'] = null;
  for (const { row, text } of texts) {
    const [order, ...more] = dateOrders(text, today);
    if (order && more.length === 0) sure.add(order);
    if (open || more.length === 0) continue;
    const read = readDateText(text, { order: null, today });
    const meanings = read.ok ? undefined : read.issues[0]?.meanings;
    if (meanings) open = { is: 'dates', row, text, meanings };
  }
  if (!open) return { style: plain, open };
  const [order, ...others] = sure;
  if (order && others.length === 0) return settled(order);
  const kept = remembered?.dates[field.name];
  return kept && !order ? settled(kept) : { style: plain, open };
}
