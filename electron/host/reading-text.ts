import type { Answers } from '../../core/import/answers.ts';
import type { Field } from '../../core/import/field.ts';
import { importKinds } from '../../core/import/kinds.ts';
import type { ColumnReading, Question, Reading, RowReading } from '../../core/import/reading.ts';
import { quoted } from '../../core/quoted.ts';
import type { Shop } from '../../core/shop/state.ts';
import { counted } from '../../core/units/count.ts';

/** What the command line says about how a file was read: its columns, what was left out, what is asked, what is wrong. */

const UNITS: Readonly<Record<string, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  m: 'metres',
  in: 'inches',
  ft: 'feet',
};
const FROM = {
  heading: 'as its heading says',
  said: 'as was said',
  remembered: 'as was said before',
  shop: 'the shop’s own, where a figure names none',
} as const;
const ORDERS = { dmy: 'day before month', mdy: 'month before day', ymd: 'year first' } as const;

/** Which column is which field and how it is read, then what was noticed and left out. */
export function columnsText(
  { fileName, header, columns, notes, questions }: Reading,
  { every = {} }: Answers,
): string[] {
  const used = columns.filter(({ field, toNote }) => field !== null || toNote);
  const width = Math.min(30, Math.max(0, ...used.map(({ title }) => title.length)));
  const line = (title: string, is: string): string => `  ${title.padEnd(width)} → ${is}`;
  return [
    `${fileName}, its columns named in row ${header}:`,
    ...used.map((column) => {
      const isAsked = questions.some(({ is, field }) => is === 'units' && field === column.field);
      return line(column.title, columnWords(isAsked ? { ...column, unitFrom: null } : column));
    }),
    ...Object.entries(every).map(([field, text]) => line('(every row)', `${field} “${text}”`)),
    ...notes.map((note) => `  ${note}`),
  ];
}

function columnWords({ field, by, unit, unitFrom, decimals, dates }: ColumnReading): string {
  if (field === null) return 'note, under its heading';
  const inUnit = unit !== null && unitFrom !== null && !(field === 'gauge' && unitFrom === 'shop');
  return [
    field,
    ...(inUnit ? [`in ${UNITS[unit] ?? unit} (${FROM[unitFrom]})`] : []),
    ...(decimals ? [`decimals behind a ${decimals}`] : []),
    ...(dates ? [ORDERS[dates]] : []),
    ...(by === 'alike' || by === 'content' ? ['by what it looks like: please check'] : []),
  ].join(', ');
}

/** So many questions or cells of a kind are told one by one. */
const TOLD = 30;

const few = (texts: readonly string[], what: string): string[] => [
  ...texts.slice(0, TOLD),
  ...(texts.length > TOLD ? [`  and ${counted(texts.length - TOLD, what)} more`] : []),
];

/** Each open question, with the option that answers it. */
export const questionsText = ({ questions }: Reading, shop: Shop): string[] =>
  few(
    questions.map((question) => `  ${question.words}\n    ${optionFor(question, shop)}`),
    'question',
  );

function optionFor(question: Question, shop: Shop): string {
  switch (question.is) {
    case 'column':
      return columnOption(question, shop);
    case 'decimals':
    case 'dates':
      return question.meanings
        .map(({ when, means }) => `--${question.is} ${when} (then it is ${means})`)
        .join(', or ');
    case 'units':
      return `${question.meanings.map(({ when, means }) => `--units ${when} (then it is ${means})`).join(', or ')}, or name the unit in the file’s heading`;
    case 'same': {
      const [first, ...others] = question.choices.map(({ id }) => id);
      const or = others.length > 0 ? ` (or ${others.join(', ')} or any other)` : '';
      return `--same ${asTyped(`${question.text}=${first ?? 'OURS'}`)}${or}`;
    }
  }
}

function columnOption({ field, titles }: Extract<Question, { is: 'column' }>, shop: Shop): string {
  const own = importKinds.orders.fields(shop).fields.find(({ name }) => name === field);
  const columns = `--columns ${asTyped(`${field}=${titles[0] ?? 'HEADING'}`)}`;
  const none =
    own?.needed === 'no'
      ? `--columns ${asTyped(`${field}=`)} where it has none`
      : `--every ${asTyped(`${field}=${exampleOf(own, shop)}`)}`;
  const others = titles.length > 1 ? ` (the columns: ${quoted(titles)})` : '';
  return `${columns}${others}, or ${none}`;
}

/** One of the shop's own where the field names such. */
const exampleOf = (field: Field | undefined, shop: Shop): string =>
  (field?.sort.is === 'named' ? shop[field.sort.kind][0]?.id : undefined) ?? 'TEXT';

/** A text as one types it behind an option. */
const asTyped = (text: string): string => `"${text.replaceAll(/["\\$`]/g, (mark) => `\\${mark}`)}"`;

/** The cells and rows that are wrong, each with its row number and reason. */
export const wrongText = ({ rows }: Reading): string[] =>
  few(rows.filter(({ state }) => state === 'wrong').flatMap(issuesOf), 'wrong cell');

export const issuesOf = ({ row, words, cells }: RowReading): string[] => [
  ...(words === '' ? [] : [`  row ${row}: ${words}`]),
  ...cells.flatMap(({ field, issue }) => (issue === undefined ? [] : [`  row ${row}, ${field}: ${issue}`])),
];

/** Every row as it is understood, for people. */
export const rowsText = ({ rows }: Reading): string[] =>
  rows
    .filter(({ state }) => state !== 'wrong')
    .toSorted((a, b) => a.row - b.row)
    .map(
      ({ row, cells }) =>
        `  row ${row}: ${cells.flatMap(({ field, read }) => (read === '' ? [] : [`${field} ${read}`])).join(', ')}`,
    );
