import type { Layout } from '../shop/file-layout.ts';
import { quoted } from '../quoted.ts';
import type { Answers } from './answers.ts';
import type { Field } from './field.ts';
import { fitOf, NEAR, readHeading, type Heading } from './heading.ts';
import { textAt } from './grid.ts';
import type { ColumnReading, Question } from './reading.ts';
import type { Recognised } from './recognise.ts';
import { suits, tells, type Looking } from './suits.ts';
import { plainWords } from './words.ts';

/** Which field a column is, and how that is known. */
export interface ColumnUse {
  readonly column: number;
  readonly title: string;
  readonly heading: Heading;
  readonly field: Field | null;
  readonly by: ColumnReading['by'];
  readonly toNote: boolean;
}

interface Proposal {
  readonly uses: readonly ColumnUse[];
  readonly questions: readonly Question[];
  readonly notes: readonly string[];
}

/** Which column each field is; what was given up or is not there. */
class Columns {
  readonly by = new Map<number, { readonly field: Field; readonly by: ColumnReading['by'] }>();
  readonly taken = new Set<string>();
  readonly torn = new Map<string, readonly number[]>();
  readonly notes: string[] = [];

  set(column: number, field: Field, by: ColumnReading['by']): void {
    this.by.set(column, { field, by });
    this.taken.add(field.name);
  }
  isFree = (column: number): boolean => !this.by.has(column);
  isOpen = ({ name }: Field): boolean => !this.taken.has(name) && !this.torn.has(name);
}

/**
 * Which column is which field: as it was said, as it was remembered of a file of this shape, as the headings say, as the
 * cells show. Two columns that fit a field equally well are asked about.
 */
export function proposeColumns(
  { titles, rows }: Recognised,
  fields: readonly Field[],
  asked: { readonly answers: Answers; readonly remembered: Layout | null } & Looking,
): Proposal {
  const { answers, remembered } = asked;
  const headings = titles.map((title) => readHeading(title.replace(/ \(\d+\)$/, '')));
  const file: File = {
    titles,
    headings,
    texts: titles.map((_, k) => rows.map(({ cells }) => textAt(cells, k))),
  };
  const columns = new Columns();
  takeNamed(columns, titles, fields, answers.columns ?? {}, 'said');
  takeNamed(columns, titles, fields, remembered?.columns ?? {}, 'remembered');
  takeOlder(columns, titles, fields);
  takeByHeading(columns, file, fields, asked);
  takeByContent(columns, file, fields, asked);
  const toNote = answers.toNote ?? remembered?.toNote ?? [];
  const note = new Set(toNote.map(plainWords));
  const uses = titles.map((title, column): ColumnUse => {
    const own = columns.by.get(column);
    return {
      column,
      title,
      heading: headings[column] ?? readHeading(title),
      field: own?.field ?? null,
      by: own?.by ?? null,
      toNote: !own && note.has(plainWords(title)),
    };
  });
  return { uses, questions: questionsOf(columns, fields, uses, answers, rows.length), notes: columns.notes };
}

interface File {
  readonly titles: readonly string[];
  readonly headings: readonly Heading[];
  /** The cells of each column. */
  readonly texts: readonly (readonly string[])[];
}

/** Our own files of before had other names; `weight` alone is everybody else's word for kilograms. */
function takeOlder(columns: Columns, titles: readonly string[], fields: readonly Field[]): void {
  const importance = fields.find(({ name }) => name === 'importance');
  const weight = titles.indexOf('weight');
  const isOurs = titles.includes('release') || titles.includes('overrun');
  if (importance && isOurs && weight >= 0 && columns.isFree(weight) && columns.isOpen(importance))
    columns.set(weight, importance, 'heading');
}

/** @param named titles by field; '' says that the file has no such column */
function takeNamed(
  columns: Columns,
  titles: readonly string[],
  fields: readonly Field[],
  named: Layout['columns'],
  by: 'said' | 'remembered',
): void {
  for (const field of fields) {
    const title = named[field.name];
    if (title === undefined || !columns.isOpen(field)) continue;
    if (title === '') {
      columns.taken.add(field.name);
      continue;
    }
    const exact = titles.indexOf(title);
    const column = exact >= 0 ? exact : titles.findIndex((one) => plainWords(one) === plainWords(title));
    if (column >= 0 && columns.isFree(column)) columns.set(column, field, by);
    else if (by === 'said')
      columns.notes.push(
        `There is no free column “${title}” for the ${field.name}; the columns are ${quoted(titles)}.`,
      );
  }
}

/** Best fits first. Of columns that fit a field equally well, none is taken; cells that could not be it speak against one. */
function takeByHeading(
  columns: Columns,
  { headings, titles, texts }: File,
  fields: readonly Field[],
  looking: Looking,
): void {
  const fits = headings
    .flatMap((heading, column) =>
      fields.flatMap((field) => {
        const fit = columns.isFree(column) && columns.isOpen(field) ? fitOf(heading, field) : null;
        return fit === null ? [] : [{ column, field, fit, odd: !suits(texts[column] ?? [], field, looking) }];
      }),
    )
    .filter(({ fit, odd }) => fit < NEAR || !odd)
    .sort((a, b) => Number(a.odd) - Number(b.odd) || a.fit - b.fit || a.column - b.column);
  for (const { column, field, fit, odd } of fits) {
    if (!columns.isFree(column) || !columns.isOpen(field)) continue;
    const equal = fits.filter(
      (other) =>
        other.field === field && other.fit === fit && other.odd === odd && columns.isFree(other.column),
    );
    if (equal.length > 1)
      columns.torn.set(
        field.name,
        equal.map((one) => one.column),
      );
    else columns.set(column, field, fit < NEAR ? 'heading' : 'alike');
  }
  for (const { column, field, fit, odd } of fits)
    if (fit < NEAR && !odd && columns.isFree(column) && !columns.torn.get(field.name)?.includes(column))
      columns.notes.push(
        `“${titles[column]}” could be the ${field.name} too; another column is read as that.`,
      );
}

/** What no row can do without, and one column alone holds. */
function takeByContent(columns: Columns, { texts }: File, fields: readonly Field[], looking: Looking): void {
  for (const field of fields) {
    const { is } = field.sort;
    if (field.needed === 'no' || !columns.isOpen(field) || (is !== 'named' && is !== 'date')) continue;
    const those = texts.flatMap((own, column) =>
      columns.isFree(column) && tells(own, field, looking) ? [column] : [],
    );
    if (those.length === 1) columns.set(those[0]!, field, 'content');
  }
}

function questionsOf(
  columns: Columns,
  fields: readonly Field[],
  uses: readonly ColumnUse[],
  { every = {} }: Answers,
  rows: number,
): Question[] {
  const free = uses.filter(({ field, toNote }) => field === null && !toNote).map(({ title }) => title);
  const has = (name: string): boolean =>
    uses.some(({ field }) => field?.name === name) || (every[name] ?? '') !== '';
  return fields.flatMap((field): Question[] => {
    const { name } = field;
    const torn = columns.torn.get(name)?.map((column) => uses[column]!.title);
    const asked = { is: 'column', id: `column:${name}`, field: name, rows } as const;
    // A length that is not found would be the part's own: a heading with a unit may be one.
    const measured =
      name === 'length' && !columns.taken.has(name) && !has(name)
        ? uses
            .filter(({ field: own, toNote, heading }) => own === null && !toNote && heading.unit !== null)
            .map(({ title }) => title)
        : [];
    if (torn) return [{ ...asked, titles: torn, words: `Which column is the ${name}: ${quoted(torn)}?` }];
    if (measured.length > 0)
      return [
        {
          ...asked,
          titles: measured,
          words: `Is one of these the ${name}: ${quoted(measured)}? Say which, or that none is: then each part has its own.`,
        },
      ];
    if (field.needed === 'no' || has(name)) return [];
    return [
      {
        ...asked,
        titles: free,
        words: `Which column is the ${name}? No heading says so. If the file has none, give one ${name} for every row.`,
      },
    ];
  });
}
